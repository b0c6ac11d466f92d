using System.Text.Json;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using static KitWorks.Kits.Tests.ExampleShop;

namespace KitWorks.Kits.Tests;

/// <summary>A kit is a value: made twice it is the same, and what was written down comes back.</summary>
public sealed class KitValueTests
{
    static readonly Oblong LongHall = new() { Fold = 6, Bays = 1, Size = new Size.LongestStrut(Mm(1524)) };

    public static TheoryData<Design> Designs() =>
    [
        SixMetreDome(),
        SixMetreDome() with { HubSystem = Plate, Cover = new(2, "bare"), MaxStrutTypes = 9 },
        Of(new Dome { Lattice = Lattice.Class2(4), Cut = CutOf("rows:4"), Up = Up.Face, FlatBase = true, Size = new Size.Fits(Mm(5000), null, Mm(4000)) }),
        Of(LongHall),
    ];

    [Theory, MemberData(nameof(Designs))]
    public void Make_WhenTwice_GivesTheSameKit(Design design) =>
        Assert.Equal(JsonSerializer.Serialize(Made(design)), JsonSerializer.Serialize(Made(design)));

    [Theory, MemberData(nameof(Designs))]
    public void Make_WhenWrittenAsJson_ReadsBackWhole(Design design)
    {
        foreach (var options in new[] { JsonSerializerOptions.Default, JsonSerializerOptions.Web })
        {
            var kit = Made(design);
            var json = JsonSerializer.Serialize(kit, options);
            var read = JsonSerializer.Deserialize<Kit>(json, options)!;

            Assert.Equal(json, JsonSerializer.Serialize(read, options));
            Assert.Equal((kit.DesignId, kit.Engine, kit.Design, kit.Totals), (read.DesignId, read.Engine, read.Design, read.Totals));
            Assert.Equal(kit.Frame.Shelter, read.Frame.Shelter);
            Assert.Equal((kit.Frame.RadiusMm, kit.Frame.BaseSpreadMm, kit.Frame.Dimensions), (read.Frame.RadiusMm, read.Frame.BaseSpreadMm, read.Frame.Dimensions));
            Assert.Equal(kit.Frame.Nodes, read.Frame.Nodes);
            Assert.Equal(kit.Frame.Struts, read.Frame.Struts);
            Assert.Equal(kit.Frame.Panels, read.Frame.Panels);
            Assert.Equal(kit.Frame.Families, read.Frame.Families);
            Assert.Equal(kit.Frame.PanelKinds.SelectMany(k => k.Families), read.Frame.PanelKinds.SelectMany(k => k.Families));
            Assert.Equal(kit.Frame.Base, read.Frame.Base);
            Assert.Equal(kit.Parts, read.Parts);
            KitChecks.Hold(read, Wares);
        }
    }

    [Fact]
    public void Make_WhenTheSawStepsOtherwise_GivesAnotherKitOfTheSameDesign()
    {
        var coarse = Made(SixMetreDome(), With(new Workshop { SawStep = Mm(5) }));

        Assert.NotEqual(SixMetreKit.StrutTypes.Select(t => t.CutLength), coarse.StrutTypes.Select(t => t.CutLength));
        Assert.NotEqual(JsonSerializer.Serialize(SixMetreKit), JsonSerializer.Serialize(coarse));
        Assert.Equal(SixMetreKit.DesignId, coarse.DesignId);
    }
}
