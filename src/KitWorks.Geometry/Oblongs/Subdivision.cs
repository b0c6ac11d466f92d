namespace KitWorks.Geometry;

/// <summary>Splits every triangle of a surface into frequency² on its own plane (class 1).</summary>
static class Subdivision
{
    public static (Point3[] Points, (int A, int B, int C)[] Panels) Of(Point3[] corners, (int A, int B, int C)[] triangles, int frequency)
    {
        var points = new List<Point3>(corners);
        var onEdges = new Dictionary<(int, int), int>();
        var panels = new List<(int, int, int)>();
        var row = new int[frequency + 1][];
        foreach (var (a, b, c) in triangles)
        {
            for (var i = 0; i <= frequency; i++)
            {
                row[i] = new int[i + 1];
                for (var j = 0; j <= i; j++) row[i][j] = At(a, b, c, frequency - i, i - j, j);
            }
            for (var i = 0; i < frequency; i++)
                for (var j = 0; j <= i; j++)
                {
                    panels.Add((row[i][j], row[i + 1][j], row[i + 1][j + 1]));
                    if (j < i) panels.Add((row[i][j], row[i + 1][j + 1], row[i][j + 1]));
                }
        }
        return ([.. points], [.. panels]);

        // By the weights of the three corners, which add up to the frequency.
        int At(int a, int b, int c, int p, int q, int r)
        {
            if (p == frequency) return a;
            if (q == frequency) return b;
            if (r == frequency) return c;
            if (r == 0) return OnEdge(a, b, q);
            if (p == 0) return OnEdge(b, c, r);
            if (q == 0) return OnEdge(a, c, r);
            points.Add((corners[a] * p + corners[b] * q + corners[c] * r) * (1.0 / frequency));
            return points.Count - 1;
        }

        int OnEdge(int from, int to, int steps)
        {
            if (from > to) (from, to, steps) = (to, from, frequency - steps);
            if (!onEdges.TryGetValue((from, to), out var first))
            {
                onEdges.Add((from, to), first = points.Count);
                for (var i = 1; i < frequency; i++) points.Add((corners[from] * (frequency - i) + corners[to] * i) * (1.0 / frequency));
            }
            return first + steps - 1;
        }
    }
}
