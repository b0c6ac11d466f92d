using KitWorks.Geometry;

namespace KitWorks.Statics.Loads;

/// <summary>One panel of the cover as a load sees it.</summary>
/// <param name="Middle">Its centroid, in millimetres.</param>
/// <param name="AreaM2">Its area, in square metres.</param>
/// <param name="Outward">The unit vector square to it, outward.</param>
readonly record struct PanelFace(Point3 Middle, double AreaM2, Point3 Outward)
{
    /// <summary>The angle to the horizontal, 0° for a panel that looks straight up, 90° for a wall, more for an overhang.</summary>
    public double SlopeDeg => Math.Acos(Math.Clamp(Outward.Z, -1, 1)) * 180 / Math.PI;
}

/// <summary>
/// Brings the force on each panel to its nodes, a third to each: exact for an even pressure on a triangle. Where a node has no strut
/// left, its share goes to the panel's other nodes.
/// </summary>
static class PanelForces
{
    public static IEnumerable<NodeLoad> ToNodes(TrussModel model, Func<PanelFace, Point3> forceN)
    {
        var sums = new Point3[model.Nodes.Length];
        foreach (var (a, b, c, _) in model.Panels)
        {
            var there = new[] { a, b, c }.Where(model.Has).ToArray();
            foreach (var node in there) sums[node] += forceN(Face(model, a, b, c)) * (1.0 / there.Length);
        }
        return sums.Select((f, n) => new NodeLoad(n, f.X, f.Y, f.Z)).Where(l => l != new NodeLoad(l.Node, 0, 0, 0));
    }

    static PanelFace Face(TrussModel model, int a, int b, int c)
    {
        var (p, q, r) = (model.Nodes[a], model.Nodes[b], model.Nodes[c]);
        var twice = (q - p).Cross(r - p);
        return new((p + q + r) * (1.0 / 3), twice.Norm / 2e6, twice.Norm > 0 ? twice * (1 / twice.Norm) : default);
    }
}
