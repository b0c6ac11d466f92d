using KitWorks.Geometry;
using KitWorks.Kits.Catalog;

namespace KitWorks.Kits;

/// <summary>
/// Finds the hub for each node. A hub with as many ways as struts meet at the node is made for it. Where the system has
/// none, a hub with more ways serves, the one whose evenly spaced ways lie nearest to the struts, and of equals the
/// smallest: four struts at the base, 60° apart, sit in a six-way hub and not in a five-way one.
/// </summary>
sealed class HubFitting(Frame frame, HubSystem system)
{
    /// <summary>Ties take up differences of a few degrees; nearer than this, two hubs fit alike. Common practice, no source.</summary>
    const double AlikeDegrees = 5;

    readonly ILookup<int, Panel> panelsAt = frame.Panels
        .SelectMany(p => new[] { p, p with { A = p.B, B = p.C, C = p.A }, p with { A = p.C, B = p.A, C = p.B } })
        .ToLookup(p => p.A);

    /// <summary>The hub for a node, or null where the system has none with enough ways.</summary>
    public Hub? For(Node node)
    {
        if (system.Hubs.FirstOrDefault(h => h.Ways == node.Degree) is { } made) return made;
        var larger = system.Hubs.Where(h => h.Ways > node.Degree).ToList();
        if (larger.Count <= 1) return larger.FirstOrDefault();
        var gaps = GapsAround(node);
        return larger.MinBy(h => (Math.Round(Misfit(gaps, h.Ways) / AlikeDegrees), h.Ways));
    }

    /// <summary>
    /// The angles in degrees between one strut and the next around a node, laid flat: the corners of its panels and, at the
    /// base, the open angle that is left.
    /// </summary>
    List<double> GapsAround(Node node)
    {
        var cornerAfter = panelsAt[node.Id].ToDictionary(p => p.B);
        var reached = cornerAfter.Values.Select(p => p.C).ToHashSet();
        var runs = cornerAfter.Keys.Where(strut => !reached.Contains(strut)).Select(strut => RunFrom(strut, cornerAfter)).ToList();
        if (runs.Count == 0)
        {
            var around = RunFrom(cornerAfter.Keys.First(), cornerAfter);
            var sum = around.Sum();
            return around.ConvertAll(gap => gap * 360 / sum);
        }
        var open = (360 - runs.Sum(run => run.Sum())) / runs.Count;
        return [.. runs.SelectMany(run => run.Append(open))];
    }

    /// <summary>The corners from one strut on, until the panels end or come round.</summary>
    List<double> RunFrom(int strut, Dictionary<int, Panel> cornerAfter)
    {
        var gaps = new List<double>();
        while (gaps.Count < cornerAfter.Count && cornerAfter.TryGetValue(strut, out var panel))
        {
            gaps.Add(Corner(panel));
            strut = panel.C;
        }
        return gaps;
    }

    double Corner(Panel p)
    {
        var (a, b, c) = (frame.Nodes[p.A].Position, frame.Nodes[p.B].Position, frame.Nodes[p.C].Position);
        return Math.Atan2((b - a).Cross(c - a).Norm, (b - a).Dot(c - a)) * 180 / Math.PI;
    }

    /// <summary>The largest angle between a strut and its way when the hub is turned and the ways are chosen as well as can be.</summary>
    static double Misfit(List<double> gaps, int ways)
    {
        return Best(0, 0, 0, 0, 0);

        // strut: the next gap; way: ways passed; angle: degrees passed; low, high: the extremes of strut less way so far.
        double Best(int strut, int way, double angle, double low, double high)
        {
            if (strut == gaps.Count - 1) return (high - low) / 2;
            angle += gaps[strut];
            var best = double.PositiveInfinity;
            for (var next = way + 1; next <= ways - (gaps.Count - 1 - strut); next++)
            {
                var off = angle - next * 360.0 / ways;
                best = Math.Min(best, Best(strut + 1, next, angle, Math.Min(low, off), Math.Max(high, off)));
            }
            return best;
        }
    }
}
