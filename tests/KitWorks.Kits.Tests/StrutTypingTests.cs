using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using static KitWorks.Kits.Tests.ExampleShop;

namespace KitWorks.Kits.Tests;

public sealed class StrutTypingTests
{
    // At 8V two families lie 2.5e-5 of the radius apart: 0.1 mm at a radius of 4 m.
    [Fact]
    public void Make_WhenFamiliesRoundToOneSetting_ShareAType()
    {
        var kit = Made(Dome(8, "1/2", new Size.FloorDiameter(Mm(8000))));
        var shared = kit.StrutTypes.Where(t => t.Families.Length > 1).ToList();

        Assert.NotEmpty(shared);
        Assert.True(kit.StrutTypes.Length < kit.Frame.Families.Length);
        Assert.All(shared, t =>
        {
            var families = t.Families.Select(f => kit.Frame.Families[f]).ToList();
            Assert.Equal(families.Sum(f => f.Count), t.Count);
            Assert.InRange(t.SpacingMm, families.Min(f => f.SpacingMm), families.Max(f => f.SpacingMm));
            Assert.InRange(families.Max(f => f.SpacingMm) - families.Min(f => f.SpacingMm), 0.01, 0.5);
        });
        KitChecks.Hold(kit, Wares);
    }

    [Fact]
    public void Make_WhenTheSawIsFinest_KeepsFamiliesApartThatItCanTellApart()
    {
        var design = Dome(8, "1/2", new Size.FloorDiameter(Mm(8000)));
        var (fine, coarse) = (Made(design, With(new Workshop { SawStep = Mm(0.1) })), Made(design, With(new Workshop { SawStep = Mm(5) })));

        Assert.True(fine.StrutTypes.Length > Made(design).StrutTypes.Length);
        Assert.True(coarse.StrutTypes.Length < Made(design).StrutTypes.Length);
    }

    [Theory]
    [InlineData(0.1, 1008.9), InlineData(0.5, 1009), InlineData(1, 1009), InlineData(2, 1008), InlineData(5, 1010), InlineData(10, 1010)]
    public void Make_WhenTheSawHasAStep_SetsItToTheNearest(double step, double setting)
    {
        var types = Made(Dome(3, "5/8", new Size.LongestStrut(Mm(1008.9))), With(new Workshop { SawStep = Mm(step) })).StrutTypes;

        Assert.Equal(Mm(setting), types[^1].CutLength);
    }

    [Theory]
    [InlineData(Ring, 30), InlineData(Plate, 80)]
    public void Make_WhenHubsHaveAnAllowance_CutsTwiceThatOff(string hubSystem, double less)
    {
        var type = Made(Dome(1, "rows:1", new Size.LongestStrut(Mm(1500))) with { HubSystem = hubSystem }).StrutTypes.Single();

        Assert.Equal((1500 + less, Mm(1500)), (Math.Round(type.SpacingMm, 9), type.CutLength));
    }

    [Fact]
    public void Make_WhenAStrutIsLongerThanTheStock_NamesTheSize()
    {
        var refusal = Refused(Dome(1, "rows:2", new Size.LongestStrut(Mm(3048.5))));

        Assert.Equal(("design.strut-too-long", "shelter/size"), (refusal.Code, Assert.Single(refusal.Errors).Field));
        Assert.Contains("3048.5 mm", refusal.Detail, StringComparison.Ordinal);
        Assert.Contains("3048 mm", refusal.Detail, StringComparison.Ordinal);
        Assert.Equal(Mm(3048), Made(Dome(1, "rows:2", new Size.LongestStrut(Mm(3048)))).StrutTypes[0].CutLength);
    }

    [Fact]
    public void Make_WhenStockIsTrimmed_RefusesWhatNoLongerFits()
    {
        var trimmed = With(new Workshop { EndTrim = Mm(10) });

        Assert.Equal("design.strut-too-long", Refused(Dome(1, "rows:2", new Size.LongestStrut(Mm(3038.5))), trimmed).Code);
        Assert.Equal(25, Made(Dome(1, "rows:2", new Size.LongestStrut(Mm(3038))), trimmed).CutPlan.StockLengths.Single().Count);
    }

    [Fact]
    public void Make_WhenAStrutIsTooShortToCut_NamesTheSize()
    {
        var refusal = Refused(Dome(1, "rows:2", new Size.LongestStrut(Mm(49.5))));

        Assert.Equal(("design.strut-too-short", "shelter/size"), (refusal.Code, Assert.Single(refusal.Errors).Field));
        Assert.Contains("49.5 mm", refusal.Detail, StringComparison.Ordinal);
        Assert.Equal(Mm(50.5), Made(Dome(1, "rows:2", new Size.LongestStrut(Mm(50.5)))).StrutTypes[0].CutLength);
    }

    [Fact]
    public void Make_WhenTheShelterIsRefused_NamesTheFieldUnderTheShelter()
    {
        Assert.Equal("shelter/cut", Refused(Dome(3, "3/7", new Size.Radius(Mm(3000)))).Errors[0].Field);
        Assert.Equal("shelter/size/radius", Refused(Dome(3, "5/8", new Size.Radius(Mm(0)))).Errors[0].Field);
    }

    [Fact]
    public void Make_WhenFewerTypesAreAskedForThanNeeded_SaysHowMany()
    {
        var refusal = Refused(SixMetreDome() with { MaxStrutTypes = 2 });

        Assert.Equal(("design.strut-types", "maxStrutTypes"), (refusal.Code, refusal.Errors[0].Field));
        Assert.Contains("3 is the fewest", refusal.Detail, StringComparison.Ordinal);
        Assert.Equal(3, Made(SixMetreDome() with { MaxStrutTypes = 3 }).StrutTypes.Length);
    }

    // Rounding first to tenths and then to the step took 1000.46 mm to 1000.5 mm and on to 1001 mm.
    [Fact]
    public void Make_WhenJustUnderHalfAStep_DoesNotRoundTwice()
    {
        var kit = Made(Dome(3, "5/8", new Size.Radius(Mm(RadiusFor(1000.46)))), With(new Workshop { SawStep = Mm(1) }));

        Assert.Equal(1000.46, kit.StrutTypes[1].SpacingMm - 30, 0.01);
        Assert.Equal(Mm(1000), kit.StrutTypes[1].CutLength);

        static double RadiusFor(double cut) =>
            (cut + 30) / Frame.Build(SixMetreDome().Shelter).Value.Families[1].ChordFactor!.Value;
    }
}
