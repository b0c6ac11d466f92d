using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Kits;

/// <summary>Cover panels and the material they take.</summary>
static class CoverCutting
{
    /// <summary>
    /// Material for all layers in square metres: each panel grown by the seam allowance s along its three sides. That is a
    /// triangle of the same angles whose inradius is r + s in place of r = 2A/P, so its area is A·(1 + s/r)².
    /// </summary>
    public static double MaterialM2(Frame frame, ChosenCover? cover)
    {
        if (cover is null) return 0;
        var seam = cover.Material.SeamAllowance.Millimetres;
        var oneLayerMm2 = frame.PanelKinds.Sum(kind =>
        {
            var perimeter = kind.Families.Sum(f => frame.Families[f].SpacingMm);
            var inradius = 2 * kind.AreaM2 * 1e6 / perimeter;
            var growth = 1 + seam / inradius;
            return kind.Count * kind.AreaM2 * 1e6 * growth * growth;
        });
        return oneLayerMm2 * cover.Layers / 1e6;
    }

    public static ImmutableArray<PanelType> PanelTypes(Frame frame, ImmutableArray<StrutType> strutTypes)
    {
        var place = new int[frame.Families.Length];
        for (var i = 0; i < strutTypes.Length; i++)
            foreach (var family in strutTypes[i].Families)
                place[family] = i;
        return
        [
            .. frame.PanelKinds
                .GroupBy(k => Sides(k, place))
                .OrderBy(g => g.Key)
                .Select((g, i) => TypeOf($"P{i + 1}", [.. g], g.Key, strutTypes)),
        ];
    }

    static (int, int, int) Sides(PanelKind kind, int[] place)
    {
        int[] sides = [.. kind.Families.Select(f => place[f]).Order()];
        return (sides[0], sides[1], sides[2]);
    }

    static PanelType TypeOf(string code, ImmutableArray<PanelKind> kinds, (int A, int B, int C) sides, ImmutableArray<StrutType> strutTypes)
    {
        var count = kinds.Sum(k => k.Count);
        return new(
            code, [strutTypes[sides.A].Code, strutTypes[sides.B].Code, strutTypes[sides.C].Code],
            kinds.Sum(k => k.AreaM2 * k.Count) / count, count, [.. kinds.Select(k => k.Index)]);
    }
}
