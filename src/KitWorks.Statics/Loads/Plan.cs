using KitWorks.Geometry;

namespace KitWorks.Statics.Loads;

/// <summary>The plan of a structure, seen along a direction of the wind.</summary>
sealed class Plan
{
    readonly Point3 towards;
    readonly double middle;
    readonly double half;

    public Plan(TrussModel model, double towardsDeg)
    {
        // Exact for the four directions along the axes, so that a symmetric shelter is loaded symmetrically.
        var (sin, cos) = Math.SinCos(towardsDeg * Math.PI / 180);
        towards = new(Math.Round(cos, 15), Math.Round(sin, 15), 0);
        var along = Enumerable.Range(0, model.Nodes.Length).Where(model.Has).Select(n => model.Nodes[n].Dot(towards)).ToList();
        (middle, half) = ((along.Min() + along.Max()) / 2, (along.Max() - along.Min()) / 2);
    }

    /// <summary>How far down the wind a point lies: −1 at the windward edge, 1 at the lee edge; within rounding of the middle, 0.</summary>
    public double Along(Point3 point) => half > 0 && (point.Dot(towards) - middle) / half is var s && Math.Abs(s) > 1e-9 ? Math.Clamp(s, -1, 1) : 0;
}
