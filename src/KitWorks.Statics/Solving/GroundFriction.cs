using KitWorks.Geometry;

namespace KitWorks.Statics.Solving;

/// <summary>The sideways forces that hold a sliding structure: a uniform push, and one in proportion to the distance from the base nodes' middle.</summary>
sealed class GroundFriction
{
    readonly TrussModel model;
    readonly List<int> stood;
    readonly Point3 middle;
    readonly double spread;

    public GroundFriction(TrussModel model)
    {
        this.model = model;
        stood = [.. model.Supports.Select(s => s.Node).Where(model.Has)];
        middle = stood.Aggregate(default(Point3), (sum, n) => sum + model.Nodes[n]) * (1.0 / stood.Count);
        spread = stood.Sum(n => Math.Pow(Arm(n).X, 2) + Math.Pow(Arm(n).Y, 2));
    }

    Point3 Arm(int node) => model.Nodes[node] - middle;

    /// <summary>Adds to the forces on the nodes those that bring their sideways sum, and their moment about the vertical, to nothing.</summary>
    public void Meet(Span<Point3> forces)
    {
        if (!model.Slides) return;
        var (x, y, turn) = Resultant(forces);
        foreach (var n in stood)
        {
            var by = spread > 0 ? turn / spread : 0;
            forces[n] += new Point3(-x / stood.Count + by * Arm(n).Y, -y / stood.Count - by * Arm(n).X, 0);
        }
    }

    /// <summary>Takes the drift and the turn in plan out of the shifts, so that the base nodes stay where they were on average.</summary>
    public void Settle(Span<Point3> shifts)
    {
        if (!model.Slides) return;
        double x = 0, y = 0, turn = 0;
        foreach (var n in stood)
            (x, y, turn) = (x + shifts[n].X, y + shifts[n].Y, turn + Arm(n).X * shifts[n].Y - Arm(n).Y * shifts[n].X);
        var by = spread > 0 ? turn / spread : 0;
        for (var n = 0; n < shifts.Length; n++)
            if (model.Has(n)) shifts[n] -= new Point3(x / stood.Count - by * Arm(n).Y, y / stood.Count + by * Arm(n).X, 0);
    }

    (double X, double Y, double Turn) Resultant(ReadOnlySpan<Point3> forces)
    {
        double x = 0, y = 0, turn = 0;
        for (var n = 0; n < forces.Length; n++)
            (x, y, turn) = (x + forces[n].X, y + forces[n].Y, turn + Arm(n).X * forces[n].Y - Arm(n).Y * forces[n].X);
        return (x, y, turn);
    }
}
