using KitWorks.Geometry;
using KitWorks.Kits.Packing;
using static KitWorks.Kits.Tests.ExampleShop;

namespace KitWorks.Kits.Tests;

/// <summary>The icosahedral 3V 5/8 dome of 6 m floor diameter, counted by the trade for fifty years.</summary>
public sealed class SixMetreDomeTests
{
    // Kenner, Geodesic Math and How to Use It (1976), from memory: 61 hubs, struts 30 A, 55 B, 80 C. Panels by Euler's formula:
    // F = 2V − 2 − n with n = 15 base nodes.
    [Fact]
    public void Make_When3VFiveEighths_HasTheTradesCounts()
    {
        var totals = SixMetreKit.Totals;

        Assert.Equal((61, 165, 105, 330, 15), (totals.Hubs, totals.Struts, totals.Panels, totals.Ties, totals.Stakes));
        Assert.Equal([("S1", 30), ("S2", 55), ("S3", 80)], SixMetreKit.StrutTypes.Select(t => (t.Code, t.Count)));
        Assert.Equal([("P1", "S1 S1 S2", 30), ("P2", "S2 S3 S3", 75)], SixMetreKit.PanelTypes.Select(p => (p.Code, string.Join(' ', p.Struts), p.Count)));
    }

    // Chord factors: Kenner and Domebook 2, from memory.
    [Fact]
    public void Make_When3VFiveEighths_CutsTheTradesChordsLessTheHubs()
    {
        var radius = SixMetreKit.Frame.RadiusMm!.Value;
        double[] published = [0.34862, 0.40355, 0.41241];
        foreach (var (type, factor) in SixMetreKit.StrutTypes.Zip(published))
        {
            Assert.Equal(factor, type.ChordFactor!.Value, 5e-6);
            Assert.Equal(factor * radius, type.SpacingMm, 0.02);
            Assert.Equal(type.SpacingMm - 30, type.CutLength.Millimetres, 0.25);
            Assert.Equal(0, type.CutLength.Tenths % 5);
        }
    }

    // By hand: 330 strut ends = 6 · 5 (corners of the icosahedron) + 40 · 6 + 15 · 4 (base).
    [Fact]
    public void Make_WhenSystemHasNoFourWayHub_TakesSixWayHubsAtTheBase() => Assert.Equal(
        [("ring-6", 6, 6, 40), ("ring-6", 6, 4, 15), ("ring-5", 5, 5, 6)],
        SixMetreKit.HubTypes.Select(h => (h.Sku, h.Ways, h.Degree, h.Count)));

    [Fact]
    public void Make_WhenSystemHasAFourWayHub_TakesItAtTheBase() => Assert.Equal(
        [("plate-6", 6, 6, 40), ("plate-5", 5, 5, 6), ("plate-4", 4, 4, 15)],
        Made(SixMetreDome() with { HubSystem = Plate }).HubTypes.Select(h => (h.Sku, h.Ways, h.Degree, h.Count)));

    [Fact]
    public void Make_WhenTwoHubsFitAlike_TakesTheSmaller() => Assert.Equal(
        [(6, 6, 40), (6, 4, 15), (5, 5, 6)],
        Made(SixMetreDome(), WithHubs(12, 6, 5)).HubTypes.Select(h => (h.Ways, h.Degree, h.Count)));

    [Fact]
    public void Make_WhenAllHubsAreSixWay_TakesThemEverywhere() => Assert.Equal(
        [(6, 6, 40), (6, 5, 6), (6, 4, 15)],
        Made(SixMetreDome(), WithHubs(6)).HubTypes.Select(h => (h.Ways, h.Degree, h.Count)));

    [Fact]
    public void Make_WhenNoHubTakesEnoughStruts_NamesTheHubSystem()
    {
        var refusal = Refused(SixMetreDome(), WithHubs(4, 5));

        Assert.Equal(("design.no-hub", "hubSystem"), (refusal.Code, Assert.Single(refusal.Errors).Field));
        Assert.Contains("6 struts", refusal.Detail, StringComparison.Ordinal);
        Assert.Contains("5 ways", refusal.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_WhenTwoTiesHoldAnEnd_DoublesTheTies()
    {
        var kit = Made(SixMetreDome() with { HubSystem = Plate });

        Assert.Equal((660, 693, 30), (kit.Totals.Ties, kit.Totals.TiesWithSpares, kit.Totals.Stakes));
    }

    [Fact]
    public void Make_When3VFiveEighths_StandsOnFifteenHubsAndClosesOnOne()
    {
        var (foundation, top) = (SixMetreKit.Tiers[0], SixMetreKit.Tiers[^1]);

        Assert.Equal((0, "Foundation", 15, 15), (foundation.Number, foundation.Name, foundation.Struts.Sum(s => s.Count), foundation.Hubs.Sum(h => h.Count)));
        Assert.Equal(("Closing top", 1, 5), (top.Name, top.Hubs.Sum(h => h.Count), top.Struts.Sum(s => s.Count)));
        Assert.Equal(Enumerable.Range(0, 6), SixMetreKit.Tiers.Select(t => t.Number));
        Assert.All(SixMetreKit.Tiers, t => Assert.Equal(t.Number == 0 ? 15 : 0, t.Stakes));
    }

    [Fact]
    public void Make_When3VFiveEighths_AddsUp() => KitChecks.Hold(SixMetreKit, Wares);

    // Spread of the base ring 0.01595 of the radius, some 48 mm.
    [Fact]
    public void Make_WhenBaseIsNotLevel_Warns()
    {
        Assert.Equal("base.not-level", Assert.Single(SixMetreKit.Warnings).Code);
        Assert.Empty(Made(SixMetreDome() with { Shelter = (Dome)SixMetreDome().Shelter with { FlatBase = true } }).Warnings);
    }

    [Fact]
    public void Make_WhenBareFrame_TakesNoCover()
    {
        var kit = Made(SixMetreDome() with { Cover = null });

        Assert.Equal(0, kit.Totals.CoverMaterialM2);
        Assert.DoesNotContain(kit.Parts, p => p.Kind == PartKind.Cover);
        Assert.DoesNotContain(kit.Bundles, b => b.Kind == BundleKind.Cover);
    }
}
