using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Cutting;
using KitWorks.Kits.Packing;

namespace KitWorks.Labels.Tests.Papers;

/// <summary>Kits put together from a frame by the plainest rules, to write papers from.</summary>
static class MadeKit
{
    public static Kit Dome(int frequency, string cut, params Opening[] openings)
    {
        Assert.True(Cut.TryParse(cut, out var parsed));
        return Of(new Dome { Lattice = Lattice.Class1(frequency), Cut = parsed, Size = new Size.FloorDiameter(Length.FromMillimetres(6000)) }, openings);
    }

    public static Kit Oblong(int bays) =>
        Of(new Oblong { Fold = 6, Bays = bays, Size = new Size.LongestStrut(Length.FromMillimetres(1524)) });

    static Kit Of(Shelter shelter, params Opening[] openings)
    {
        var opened = OpenedFrame.Of(Frame.Build(shelter, Length.FromMillimetres(15)).Value, openings).Value;
        var frame = opened.Frame;
        StrutType[] types = [.. frame.Families.GroupBy(f => Length.FromMillimetres(f.SpacingMm - 30).RoundTo(Length.FromTenths(5))).OrderBy(g => g.Key)
            .Select((g, i) => new StrutType($"S{i + 1}", Palette.ColourBlindSafe.TagFor(i), g.Average(f => f.SpacingMm), g.Key, g.First().ChordFactor, g.Sum(f => f.Count), [.. g.Select(f => f.Index)]))];
        string CodeOf(Strut s) => types.First(t => t.Families.Contains(s.Family)).Code;
        static HubType HubOf(int degree, int count) => new(degree == 5 ? "HUB-R100-5" : $"HUB-R100-{Math.Max(6, degree)}", degree == 5 ? 5 : Math.Max(6, degree), degree, count);
        Tier[] tiers = [.. Enumerable.Range(0, frame.TierCount).Select(t => new Tier(t, t == 0 ? "Foundation" : $"Tier {t}",
            [.. frame.Struts.Where(s => s.Tier == t).GroupBy(CodeOf).OrderBy(g => g.Key).Select(g => new TierStruts(g.Key, g.Count()))],
            [.. frame.Nodes.Where(n => n.Tier == t).GroupBy(n => n.Degree).OrderBy(g => g.Key).Select(g => HubOf(g.Key, g.Count()))],
            2 * frame.Struts.Count(s => s.Tier == t), t == 0 ? frame.Base.Length : 0))];
        var bundles = tiers.SelectMany(t => t.Struts.Select(s => (t.Number, Kind: BundleKind.Struts, Items: (BundleItem[])[new("PIPE-33-3048", s.Code, $"Strut {s.Code}", s.Count)]))
                .Append((t.Number, Kind: BundleKind.Hubs, Items: [])).Append((t.Number, Kind: BundleKind.Ties, Items: [])))
            .Select((b, i) => new Bundle(i + 1, b.Number, b.Kind, [.. b.Items], 5000, Length.Zero));
        var (struts, hubs) = (frame.Struts.Length, frame.Nodes.Length);
        return new()
        {
            DesignId = "0123456789abcdef", Engine = Kit.EngineVersion, Frame = frame, Openings = opened.Openings, Kerf = Length.FromMillimetres(3), StrutTypes = [.. types], Tiers = [.. tiers], Bundles = [.. bundles],
            Design = new() { Shelter = shelter, HubSystem = "ring-100", StrutStock = "pvc-33", Cover = new(1) },
            Totals = new(hubs, struts, frame.Panels.Length, 2 * struts, 2 * struts + struts / 10, frame.Base.Length, 80, 140_200),
            HubTypes = [.. frame.Nodes.GroupBy(n => n.Degree).OrderBy(g => g.Key).Select(g => HubOf(g.Key, g.Count()))],
            PanelTypes = [], Parts = [], Warnings = frame.BaseSpreadMm > 1 ? [new("base.not-level", "The base ring is not level by design; see the stake-out page.")] : [],
            CutPlan = PlanOf(types),
        };
    }

    // Two pieces a length, as 3 m pipe gives.
    static CutPlan PlanOf(StrutType[] types)
    {
        var stock = Length.FromMillimetres(types[^1].CutLength.Millimetres < 3000 ? 3048 : 6096);
        var patterns = types.Select(t =>
        {
            var each = (int)(stock.Millimetres / (t.CutLength.Millimetres + 3));
            var left = stock.Millimetres - each * (t.CutLength.Millimetres + 3);
            return new CutPattern((t.Count + each - 1) / each, "PIPE-33-3048", stock, [new(t.Code, t.CutLength, each)], Length.FromMillimetres(left));
        }).ToImmutableArray();
        return new([new("PIPE-33-3048", stock, patterns.Sum(p => p.Count))], patterns, 0.1, 0, false);
    }
}
