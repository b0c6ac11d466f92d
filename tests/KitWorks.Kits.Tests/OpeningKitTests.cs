using System.Text.Json;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Packing;
using KitWorks.Statics.Loads;
using static KitWorks.Kits.Tests.ExampleShop;

namespace KitWorks.Kits.Tests;

/// <summary>A kit follows its openings. How they are framed is common practice, no source.</summary>
public sealed class OpeningKitTests
{
    static ShopCatalog Shop { get; } = Wares with
    {
        StrutStocks =
        [
            new()
            {
                Code = "pipe", Sku = "pipe-3m", Name = "Pipe", StockLength = Mm(3048), OutsideDiameter = Mm(33.4), Wall = Mm(3.4), GramsPerMetre = 476,
                ModulusMPa = 2900, LongTermModulusMPa = 965, StrengthMPa = 48.3,
            },
        ],
        Screening = new() { LoadSets = [new() { Name = "garden", PersonN = 445 }] },
    };

    static Design Open(params Opening[] openings) => SixMetreDome() with { Openings = openings };

    [Fact]
    public void Make_WithADoorAndAVent_CountsWhatTheyTakeAndWhatTheyBring()
    {
        var (plain, kit) = (Made(SixMetreDome(), Shop), Made(Open(new Door(), new Vent()), Shop));
        var (door, vent) = (kit.Openings[0], kit.Openings[1]);

        // The door swaps one hub for two feet, and four struts for two posts and two sills; the vent takes a panel. What lies double comes on top.
        Assert.Equal(plain.Totals.Hubs + 1, kit.Totals.Hubs);
        Assert.Equal(plain.Totals.Struts + 1 + 3, kit.Totals.Struts);
        Assert.Equal(2 * kit.Totals.Struts, kit.Totals.Ties);
        Assert.Equal(plain.Totals.Panels - 3 + 2 - 1, kit.Totals.Panels);
        Assert.Equal(plain.Totals.Stakes + 1, kit.Totals.Stakes);
        Assert.True(kit.Totals.CoverMaterialM2 < plain.Totals.CoverMaterialM2);

        var doubled = door.Doubled.Concat(vent.Doubled).Select(id => kit.Frame.Struts[id]).ToList();
        foreach (var type in kit.StrutTypes)
            Assert.Equal(type.Count, kit.Frame.Struts.Concat(doubled).Count(s => type.Families.Contains(s.Family)));
        foreach (var tier in kit.Tiers)
            Assert.Equal(tier.Struts.Sum(s => s.Count), kit.Frame.Struts.Concat(doubled).Count(s => s.Tier == tier.Number));
        Assert.Equal(kit.Totals.Struts, kit.Bundles.Where(b => b.Kind == BundleKind.Struts).Sum(b => b.Contents.Sum(c => c.Count)));
        Assert.Equal(kit.Totals.Struts, kit.CutPlan.Patterns.Sum(p => p.Count * p.Cuts.Sum(c => c.Count)));
        Assert.Equal(kit.Totals.MassGrams, kit.Bundles.Sum(b => b.MassGrams));
        Assert.Equal(kit.StrutTypes.Length, kit.StrutTypes.Select(t => t.Tag).Distinct().Count());
        Assert.Equal(kit.Frame.Panels.Length, kit.PanelTypes.Sum(p => p.Count));
    }

    [Fact]
    public void Make_HoweverOpeningsAreAskedFor_HasOneIdAndOneKit()
    {
        var one = Made(Open(new Vent(), new Door()), Shop);
        var other = Made(Open(new Door { Stake = ((Door)one.Openings[0].Opening).Stake }, new Vent { Panel = ((Vent)one.Openings[1].Opening).Panel }), Shop);
        Assert.Equal(one.DesignId, other.DesignId);
        Assert.Equal(JsonSerializer.Serialize(one), JsonSerializer.Serialize(other));
        Assert.NotEqual(one.DesignId, Made(SixMetreDome(), Shop).DesignId);
        Assert.NotEqual(one.DesignId, Made(Open(new Door { Top = DoorTop.Peaked }, new Vent()), Shop).DesignId);
        Assert.Equal(Made(SixMetreDome(), Shop).DesignId, Made(Open(), Shop).DesignId);
        Assert.Equal(one.DesignId, Made(one.Design, Shop).DesignId);
    }

    [Fact]
    public void Make_WithOpenings_IsScreenedOpenAndSaysHow()
    {
        var kit = Made(Open(new Door(), new Vent()), Shop);
        Assert.NotNull(kit.Screening);
        Assert.NotEmpty(kit.Screening!.Checks);
        Assert.Contains(kit.Screening.Notes, n => n.StartsWith("Openings:", StringComparison.Ordinal));
        // A vent leaves the frame as firm as it was; a door's feet hold only where they are staked.
        Assert.Contains(kit.Screening.Notes, n => n.StartsWith("Stakes are part of the frame", StringComparison.Ordinal));
        Assert.DoesNotContain(Made(Open(new Vent()), Shop).Screening!.Notes, n => n.StartsWith("Stakes are part of the frame", StringComparison.Ordinal));
        Assert.All(kit.Screening.Checks, c => Assert.InRange(c.At, 0, Math.Max(kit.Frame.Struts.Length, kit.Frame.Nodes.Length) - 1));
    }

    /// <summary>An opening lets the wind in: GCpi of ASCE 7 for a partially enclosed building, 0.55, in place of 0.18.</summary>
    [Fact]
    public void Make_WithAnOpeningInTheWind_LiftsMore()
    {
        var windy = Shop with { Screening = new() { LoadSets = [new() { Name = "wind", PersonN = null, Wind = new() { SpeedMPerS = 40 } }] } };
        var (shut, open) = (Made(SixMetreDome(), windy), Made(Open(new Vent()), windy));
        static double Pull(Kit kit) => kit.Screening!.Checks.Single(c => c is { Kind: Statics.Checks.CheckKind.TieTension, LoadCase: "wind, inflating" }).Demand;
        Assert.True(Pull(open) > 1.1 * Pull(shut));
        var letIn = windy with { Screening = new() { LoadSets = [windy.Screening.LoadSets[0] with { Wind = new() { SpeedMPerS = 40, InsideCp = 0.55 } }] } };
        Assert.Equal(Pull(Made(Open(new Vent()), letIn)), Pull(open));
    }

    [Fact]
    public void Make_WithMorePeakedDoorsThanTheFrameBears_SaysWhatIsLoose()
    {
        // Pinned, a disc of triangles on a ring of n has n − 3 struts more than it needs; each peaked door takes one of them, and here n is five.
        var design = Dome(2, "rows:4", new Size.FloorDiameter(Mm(4000)));
        foreach (var count in new[] { 1, 2, 3, 4, 5 })
        {
            if (Kit.Make(design with { Openings = [.. Enumerable.Repeat(new Door { Top = DoorTop.Peaked }, count)] }, Shop).Succeeds(out _, out var refusal)) continue;
            Assert.Contains(refusal.Code, (string[])["opening.impossible", "opening.place-invalid", "shelter.cut-invalid"]);
            Assert.StartsWith(refusal.Code == "shelter.cut-invalid" ? "shelter" : "openings", refusal.Errors.Single().Field, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Make_WhenAPieceOfTheDoorIsTooShort_SaysSo()
    {
        // Half the spacing of a base this fine is less than two hub allowances and the shortest cut.
        var refusal = Refused(Dome(8, "1/2", new Size.FloorDiameter(Mm(1600))) with { Openings = [new Door()] }, Shop);
        Assert.Equal(("opening.impossible", "openings"), (refusal.Code, refusal.Errors.Single().Field));
        Assert.Contains("door", refusal.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_WithFewerTypes_StillOpens()
    {
        var kit = Made(SixMetreDome() with { MaxStrutTypes = 2, Openings = [new Door()] }, Shop with { Workshop = new() { JointSlack = Mm(40) } });
        Assert.Single(kit.Openings);
        Assert.InRange(kit.StrutTypes.Length, 2, 4);
        Assert.NotNull(kit.Screening);
    }

    [Theory]
    [InlineData(1, "1/2"), InlineData(2, "5/8"), InlineData(4, "1/2"), InlineData(5, "3/8")]
    public void Make_AnOpenedDomeOfAnySize_HoldsTogether(int frequency, string cut)
    {
        var asked = Dome(frequency, cut, new Size.Radius(Mm(900 * frequency)));
        foreach (var openings in (Opening[][])[[new Door()], [new Vent()], [new Door { Top = DoorTop.Peaked }, new Vent()]])
        {
            if (!Kit.Make(asked with { Openings = openings }, Shop).Succeeds(out var kit, out var refusal))
            {
                Assert.StartsWith("opening", refusal.Code.StartsWith("shelter", StringComparison.Ordinal) ? "opening" : refusal.Code, StringComparison.Ordinal);
                continue;
            }
            Assert.Equal(kit.Totals.Struts, kit.CutPlan.Patterns.Sum(p => p.Count * p.Cuts.Sum(c => c.Count)));
            Assert.Equal(kit.Frame.Nodes.Length, kit.HubTypes.Sum(h => h.Count));
            Assert.Equal(2 * kit.Frame.Struts.Length, kit.HubTypes.Sum(h => h.Degree * h.Count));
            Assert.DoesNotContain(kit.Warnings, w => w.Code == "statics.loose");
        }
    }
}
