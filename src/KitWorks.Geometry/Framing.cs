using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace KitWorks.Geometry;

/// <summary>Turns what is kept of a measured net into a frame in millimetres.</summary>
/// <param name="Measured">The net, measured in a unit of its own.</param>
/// <param name="Kept">How many of its nodes are kept: the first ones.</param>
/// <param name="Ring">The base ring, counter-clockwise seen from above; empty where the whole closed net is kept.</param>
/// <param name="Lowest">Where the ring is empty, the first node of tier 0.</param>
sealed record Framing(MeasuredNet Measured, int Kept, int[] Ring, int Lowest = 0)
{
    Triangulation Net => Measured.Net;

    /// <summary>The frame.</summary>
    /// <param name="shelter">What it is the frame of.</param>
    /// <param name="scale">Millimetres to one unit of the net.</param>
    /// <param name="radius">The radius of the sphere, where there is one.</param>
    public Frame Frame(Shelter shelter, double scale, double? radius)
    {
        var (nodes, struts, panels, familyCounts, kindCounts) = Parts(Tiers(), scale);
        int[] familyRank = Rank(familyCounts), kindRank = Rank(kindCounts);
        // What a cut has left nothing of has no number.
        if (familyCounts.Contains(0)) foreach (ref var s in struts.AsSpan()) s = s with { Family = familyRank[s.Family] };
        if (kindCounts.Contains(0)) foreach (ref var p in panels.AsSpan()) p = p with { Kind = kindRank[p.Kind] };
        var families = Indices(familyRank).Select((was, i) =>
            new StrutFamily(i, Measured.Lengths[was] * scale, radius is { } r ? Measured.Lengths[was] * scale / r : null, familyCounts[was])).ToImmutableArray();
        var kinds = Indices(kindRank).Select((was, i) =>
        {
            var (a, b, c) = Measured.Kinds[was];
            return new PanelKind(i, [familyRank[a], familyRank[b], familyRank[c]],
                Triangle.Area(Measured.Lengths[a] * scale, Measured.Lengths[b] * scale, Measured.Lengths[c] * scale) / 1e6, kindCounts[was]);
        }).ToImmutableArray();
        return new()
        {
            Shelter = shelter,
            RadiusMm = radius,
            Nodes = ImmutableCollectionsMarshal.AsImmutableArray(nodes),
            Struts = ImmutableCollectionsMarshal.AsImmutableArray(struts),
            Panels = ImmutableCollectionsMarshal.AsImmutableArray(panels),
            Families = families,
            PanelKinds = kinds,
            Base = ImmutableCollectionsMarshal.AsImmutableArray(Ring),
            Dimensions = Measuring.Of(nodes, panels, kinds, Ring),
            BaseSpreadMm = Spread(nodes, scale),
        };
    }

    // Families and kinds as the net numbers them, and how many of each are kept.
    (Node[], Strut[], Panel[], int[] OfFamilies, int[] OfKinds) Parts(int[] tiers, double scale)
    {
        // Euler: a disc of triangles has E = 3V − 3 − n and F = 2V − 2 − n, a closed surface E = 3V − 6 and F = 2V − 4.
        var closed = Ring.Length == 0;
        var nodes = GC.AllocateUninitializedArray<Node>(Kept);
        var struts = GC.AllocateUninitializedArray<Strut>(closed ? 3 * Kept - 6 : 3 * Kept - 3 - Ring.Length);
        var panels = GC.AllocateUninitializedArray<Panel>(closed ? 2 * Kept - 4 : 2 * Kept - 2 - Ring.Length);
        var (ofFamilies, ofKinds) = (new int[Measured.Lengths.Length], new int[Measured.Kinds.Length]);
        var spacings = new double[ofFamilies.Length];
        for (var i = 0; i < spacings.Length; i++) spacings[i] = Measured.Lengths[i] * scale;
        int strut = 0, panel = 0;
        var floor = closed ? 0 : Ring.Average(n => Net.Points[n].Z);
        for (var node = 0; node < Kept; node++)
        {
            int degree = 0, first = Net.Start[node], tier = tiers[node];
            var around = Net.Around.AsSpan(first, Net.Start[node + 1] - first);
            var familyAround = Measured.FamilyAround.AsSpan(first, around.Length);
            var kindAround = Measured.KindAround.AsSpan(first, around.Length);
            for (int before = around[^1], i = 0; i < around.Length; before = around[i++])
            {
                var w = around[i];
                if (w >= Kept) continue;
                var next = i + 1 < around.Length ? around[i + 1] : around[0];
                if (next >= Kept && before >= Kept) continue;
                degree++;
                if (w < node) continue;
                int family = familyAround[i];
                ofFamilies[family]++;
                struts[strut] = new(strut, node, w, family, spacings[family], Math.Max(tier, tiers[w]));
                strut++;
                if (next <= node || next >= Kept) continue;
                int kind = kindAround[i];
                ofKinds[kind]++;
                panels[panel++] = new(node, w, next, kind);
            }
            ref readonly var p = ref Net.Points[node];
            nodes[node] = new(node, new(p.X * scale, p.Y * scale, (p.Z - floor) * scale), degree, tier);
        }
        return (nodes, struts, panels, ofFamilies, ofKinds);
    }

    // Numbers what is still used anew; −1 for what is not.
    static int[] Rank(int[] counts)
    {
        var rank = new int[counts.Length];
        for (int value = 0, used = 0; value < rank.Length; value++) rank[value] = counts[value] > 0 ? used++ : -1;
        return rank;
    }

    static IEnumerable<int> Indices(int[] rank) => Enumerable.Range(0, rank.Length).Where(i => rank[i] >= 0);

    // Breadth first from the base ring.
    int[] Tiers()
    {
        var tiers = GC.AllocateUninitializedArray<int>(Kept);
        Array.Fill(tiers, -1);
        var queue = GC.AllocateUninitializedArray<int>(Kept);
        var found = 0;
        if (Ring.Length == 0)
            for (var node = Lowest; node < Kept; node++) (tiers[node], queue[found++]) = (0, node);
        foreach (var node in Ring) (tiers[node], queue[found++]) = (0, node);
        for (var at = 0; at < found; at++)
        {
            var node = queue[at];
            var tier = tiers[node] + 1;
            foreach (var w in Net.Around.AsSpan(Net.Start[node], Net.Start[node + 1] - Net.Start[node]))
                if (w < Kept && tiers[w] < 0) (tiers[w], queue[found++]) = (tier, w);
        }
        return tiers;
    }

    double Spread(Node[] nodes, double scale)
    {
        if (Ring.Length == 0) return 0;
        var spread = Ring.Max(n => nodes[n].Position.Z) - Ring.Min(n => nodes[n].Position.Z);
        return spread > Families.Tolerance * scale ? spread : 0;
    }
}
