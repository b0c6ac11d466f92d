namespace KitWorks.Statics.Solving;

/// <summary>
/// Puts nodes in an order in which neighbours stand close together, so that the stiffness matrix has a narrow envelope: reverse Cuthill–McKee
/// (E. Cuthill and J. McKee 1969; A. George 1971), begun at a node far from all others.
/// </summary>
static class NodeOrder
{
    /// <summary>The nodes, each once, by ascending place; ties go to the lower number, so that the order is the same everywhere.</summary>
    public static int[] Of(int nodes, IEnumerable<(int From, int To)> edges)
    {
        var neighbours = Enumerable.Range(0, nodes).Select(_ => new SortedSet<int>()).ToArray();
        foreach (var (from, to) in edges)
        {
            neighbours[from].Add(to);
            neighbours[to].Add(from);
        }
        var byDegree = neighbours.Select(n => n.OrderBy(i => neighbours[i].Count).ThenBy(i => i).ToArray()).ToArray();
        var order = new List<int>(nodes);
        var seen = new bool[nodes];
        for (var i = 0; i < nodes; i++)
        {
            if (seen[i]) continue;
            var levels = Levels(FarEnd(i, byDegree), byDegree);
            foreach (var node in levels.SelectMany(l => l))
            {
                seen[node] = true;
                order.Add(node);
            }
        }
        order.Reverse();
        return [.. order];
    }

    static int FarEnd(int node, int[][] neighbours)
    {
        var levels = Levels(node, neighbours);
        while (true)
        {
            var farthest = levels[^1].MinBy(i => neighbours[i].Length);
            var next = Levels(farthest, neighbours);
            if (next.Count <= levels.Count) return node;
            (node, levels) = (farthest, next);
        }
    }

    static List<List<int>> Levels(int node, int[][] neighbours)
    {
        var seen = new HashSet<int> { node };
        List<List<int>> levels = [[node]];
        while (true)
        {
            List<int> next = [.. levels[^1].SelectMany(i => neighbours[i]).Where(seen.Add)];
            if (next.Count == 0) return levels;
            levels.Add(next);
        }
    }
}
