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
        var tiers = Tiers();
        var (familyRank, familyCounts) = Used(Measured.FamilyAround, Measured.Lengths.Length, StrutIsKept);
        var (kindRank, kindCounts) = Used(Measured.KindAround, Measured.Kinds.Length, PanelIsKept);
        var families = Indices(familyRank).Select((was, i) =>
            new StrutFamily(i, Measured.Lengths[was] * scale, radius is { } r ? Measured.Lengths[was] * scale / r : null, familyCounts[was])).ToImmutableArray();
        var kinds = Indices(kindRank).Select((was, i) =>
        {
            var (a, b, c) = Measured.Kinds[was];
            return new PanelKind(i, [familyRank[a], familyRank[b], familyRank[c]],
                Triangle.Area(Measured.Lengths[a] * scale, Measured.Lengths[b] * scale, Measured.Lengths[c] * scale) / 1e6, kindCounts[was]);
        }).ToImmutableArray();
        var (nodes, struts, panels) = Parts(tiers, scale, familyRank, families, kindRank);
        return new()
        {
            Shelter = shelter,
            RadiusMm = radius,
            Nodes = nodes,
            Struts = struts,
            Panels = panels,
            Families = families,
            PanelKinds = kinds,
            Base = ImmutableCollectionsMarshal.AsImmutableArray(Ring),
            Dimensions = Measuring.Of(nodes, panels, kinds, Ring),
            BaseSpreadMm = Spread(nodes, scale),
        };
    }

    (ImmutableArray<Node>, ImmutableArray<Strut>, ImmutableArray<Panel>) Parts(
        int[] tiers, double scale, int[] familyRank, ImmutableArray<StrutFamily> families, int[] kindRank)
    {
        // Euler: a disc of triangles has E = 3V − 3 − n and F = 2V − 2 − n, a closed surface E = 3V − 6 and F = 2V − 4.
        var closed = Ring.Length == 0;
        var nodes = new Node[Kept];
        var struts = new Strut[closed ? 3 * Kept - 6 : 3 * Kept - 3 - Ring.Length];
        var panels = new Panel[closed ? 2 * Kept - 4 : 2 * Kept - 2 - Ring.Length];
        int strut = 0, panel = 0;
        var floor = closed ? 0 : Ring.Average(n => Net.Points[n].Z);
        for (var node = 0; node < Kept; node++)
        {
            int degree = 0, start = Net.Start[node], end = Net.Start[node + 1];
            for (int before = end - 1, i = start; i < end; before = i++)
            {
                var w = Net.Around[i];
                if (w >= Kept) continue;
                var next = Net.Around[i + 1 == end ? start : i + 1];
                if (next >= Kept && Net.Around[before] >= Kept) continue;
                degree++;
                if (w < node) continue;
                var family = familyRank[Measured.FamilyAround[i]];
                struts[strut] = new(strut, node, w, family, families[family].SpacingMm, Math.Max(tiers[node], tiers[w]));
                strut++;
                if (next > node && next < Kept) panels[panel++] = new(node, w, next, kindRank[Measured.KindAround[i]]);
            }
            var p = Net.Points[node];
            nodes[node] = new(node, new(p.X * scale, p.Y * scale, (p.Z - floor) * scale), degree, tiers[node]);
        }
        return (ImmutableCollectionsMarshal.AsImmutableArray(nodes), ImmutableCollectionsMarshal.AsImmutableArray(struts),
                ImmutableCollectionsMarshal.AsImmutableArray(panels));
    }

    bool StrutIsKept(int node, int i) =>
        Net.Around[i] > node && (Rim.KeepsPanel(Net, Kept, node, i) || (Net.Around[i] < Kept && Rim.KeepsPanel(Net, Kept, node, Net.Before(node, i))));

    bool PanelIsKept(int node, int i) =>
        Net.Around[i] > node && Net.Around[Net.After(node, i)] > node && Rim.KeepsPanel(Net, Kept, node, i);

    // Renumbers what is still used: the new number of each, −1 for none, and how many there are of each.
    (int[] Rank, int[] Counts) Used(int[] values, int count, Func<int, int, bool> isKept)
    {
        var counts = new int[count];
        for (var node = 0; node < Kept; node++)
            for (var i = Net.Start[node]; i < Net.Start[node + 1]; i++)
                if (isKept(node, i)) counts[values[i]]++;
        var rank = new int[count];
        for (int value = 0, used = 0; value < count; value++) rank[value] = counts[value] > 0 ? used++ : -1;
        return (rank, counts);
    }

    static IEnumerable<int> Indices(int[] rank) => Enumerable.Range(0, rank.Length).Where(i => rank[i] >= 0);

    // Breadth first from the base ring.
    int[] Tiers()
    {
        var tiers = new int[Kept];
        Array.Fill(tiers, -1);
        var queue = new int[Kept];
        var found = 0;
        if (Ring.Length == 0)
            for (var node = Lowest; node < Kept; node++) (tiers[node], queue[found++]) = (0, node);
        foreach (var node in Ring) (tiers[node], queue[found++]) = (0, node);
        for (var at = 0; at < found; at++)
            for (var i = Net.Start[queue[at]]; i < Net.Start[queue[at] + 1]; i++)
                if (Net.Around[i] is var w && w < Kept && tiers[w] < 0) (tiers[w], queue[found++]) = (tiers[queue[at]] + 1, w);
        return tiers;
    }

    double Spread(ImmutableArray<Node> nodes, double scale)
    {
        if (Ring.Length == 0) return 0;
        var spread = Ring.Max(n => nodes[n].Position.Z) - Ring.Min(n => nodes[n].Position.Z);
        return spread > Families.Tolerance * scale ? spread : 0;
    }
}
