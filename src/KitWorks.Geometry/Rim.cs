namespace KitWorks.Geometry;

/// <summary>The edge of what is left when only the first so many nodes of a triangulation are kept.</summary>
static class Rim
{
    /// <summary>Whether the panel at place <paramref name="i"/> of a node is kept: the one between that neighbour and the next.</summary>
    public static bool KeepsPanel(Triangulation net, int kept, int node, int i) =>
        net.Around[i] < kept && net.Around[net.After(node, i)] < kept;

    /// <summary>
    /// The rim's nodes in order, counter-clockwise seen from the top, from the lowest; null where the rim is not one closed ring of struts.
    /// </summary>
    /// <param name="net">The triangulation.</param>
    /// <param name="kept">How many nodes are kept.</param>
    /// <param name="first">No node before this one has a neighbour that is not kept.</param>
    public static int[]? Ring(Triangulation net, int kept, int first)
    {
        var next = new Dictionary<int, int>();
        for (var node = first; node < kept; node++)
            for (var i = net.Start[node]; i < net.Start[node + 1]; i++)
                if (KeepsPanel(net, kept, node, i) && !KeepsPanel(net, kept, node, net.Before(node, i)) && !next.TryAdd(node, net.Around[i]))
                    return null;
        if (next.Count < 3) return null;
        var start = next.Keys.Min();
        var ring = new List<int>();
        for (var node = start; ring.Count == 0 || node != start; node = next[node])
        {
            if (ring.Count == next.Count || !next.ContainsKey(node)) return null;
            ring.Add(node);
        }
        return ring.Count == next.Count ? [.. ring] : null;
    }
}
