namespace KitWorks.Geometry;

/// <summary>Who stands around whom: for each node and neighbour the next neighbour counter-clockwise, where a panel lies between.</summary>
sealed class Around
{
    readonly Dictionary<(int Node, int Neighbour), int> next = [];

    public Around(Frame frame)
    {
        foreach (var (a, b, c, _) in frame.Panels) (next[(a, b)], next[(b, c)], next[(c, a)]) = (c, a, b);
    }

    /// <summary>The third node of the panel to the left of the way from one node to another; null at an edge.</summary>
    public int? LeftOf(int from, int to) => next.TryGetValue((from, to), out var third) ? third : null;

    /// <summary>The neighbours of a node counter-clockwise from one of them, until the panels end or come round.</summary>
    public List<int> From(int node, int first)
    {
        List<int> ring = [first];
        while (next.TryGetValue((node, ring[^1]), out var after) && after != first) ring.Add(after);
        return ring;
    }
}
