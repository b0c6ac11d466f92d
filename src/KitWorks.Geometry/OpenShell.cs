namespace KitWorks.Geometry;

/// <summary>Joins the triangles of an open shell whose rim stands on the ground.</summary>
static class OpenShell
{
    /// <summary>
    /// The net, its nodes in order of their graph distance from the rim, the farthest first, and otherwise as they were; and the rim.
    /// One point past the last stands for the ground: joined to the whole rim, it closes the net and is not kept.
    /// </summary>
    public static (Triangulation Net, int[] Ring) FromTheTopDown(Point3[] points, (int A, int B, int C)[] panels)
    {
        var next = new Dictionary<(int Node, int Neighbour), int>();
        foreach (var (a, b, c) in panels)
        {
            next[(a, b)] = c;
            next[(b, c)] = a;
            next[(c, a)] = b;
        }
        var rimAfter = new Dictionary<int, int>();
        foreach (var (a, b, c) in panels)
            foreach (var (p, q) in new[] { (a, b), (b, c), (c, a) })
                if (!next.ContainsKey((q, p))) rimAfter.Add(p, q);
        var order = ByDistance(points.Length, panels, rimAfter.Keys);
        var rank = new int[points.Length];
        for (var i = 0; i < order.Length; i++) rank[order[i]] = i;

        var ground = points.Length;
        var start = new int[points.Length + 2];
        var around = new List<int>();
        var firstOf = next.Keys.GroupBy(k => k.Node).ToDictionary(g => g.Key, g => g.Min(k => k.Neighbour));
        for (var i = 0; i < order.Length; i++)
        {
            var node = order[i];
            start[i] = around.Count;
            // Counter-clockwise; on the rim from the next rim node to the one before, then the ground.
            int first = rimAfter.TryGetValue(node, out var after) ? after : firstOf[node], w = first;
            do around.Add(rank[w]);
            while (next.TryGetValue((node, w), out w) && w != first);
            if (rimAfter.ContainsKey(node)) around.Add(ground);
        }
        start[^2] = around.Count;
        var ring = new List<int>();
        for (var node = order.First(rimAfter.ContainsKey); ring.Count < rimAfter.Count; node = rimAfter[node]) ring.Add(rank[node]);
        around.AddRange(Enumerable.Reverse(ring));
        start[^1] = around.Count;
        return (new([.. order.Select(node => points[node]), new(0, 0, 0)], start, [.. around]), [.. ring]);
    }

    static int[] ByDistance(int count, (int A, int B, int C)[] panels, IEnumerable<int> rim)
    {
        var neighbours = panels.SelectMany(p => new[] { (p.A, p.B), (p.B, p.C), (p.C, p.A), (p.B, p.A), (p.C, p.B), (p.A, p.C) }).ToLookup(p => p.Item1, p => p.Item2);
        var distance = new int[count];
        Array.Fill(distance, -1);
        var queue = new Queue<int>(rim);
        foreach (var node in queue) distance[node] = 0;
        while (queue.TryDequeue(out var node))
            foreach (var w in neighbours[node])
            {
                if (distance[w] >= 0) continue;
                distance[w] = distance[node] + 1;
                queue.Enqueue(w);
            }
        return [.. Enumerable.Range(0, count).OrderByDescending(node => distance[node])];
    }
}
