using KitWorks.Geometry;

namespace KitWorks.Statics.Solving;

/// <summary>What a truss answers to a set of forces; answers add up as the forces do.</summary>
/// <param name="Forces">The force in each member, in newtons.</param>
/// <param name="Shifts">The displacement of each node, in millimetres.</param>
/// <param name="Ground">What the ground does to each node that stands on it.</param>
sealed record Response(double[] Forces, Point3[] Shifts, Reaction[] Ground)
{
    /// <summary>No forces, no answer.</summary>
    public Response(TrussModel model)
        : this(new double[model.Members.Length], new Point3[model.Nodes.Length], [.. model.Stood.Select(n => new Reaction(n, 0, 0, 0))])
    {
    }

    public void Clear()
    {
        Array.Clear(Forces);
        Array.Clear(Shifts);
        for (var i = 0; i < Ground.Length; i++) Ground[i] = new(Ground[i].Node, 0, 0, 0);
    }

    public void Add(Response other, double times)
    {
        for (var i = 0; i < Forces.Length; i++) Forces[i] += other.Forces[i] * times;
        for (var n = 0; n < Shifts.Length; n++) Shifts[n] += other.Shifts[n] * times;
        for (var i = 0; i < Ground.Length; i++)
        {
            var (a, b) = (Ground[i], other.Ground[i]);
            Ground[i] = new(a.Node, a.XN + b.XN * times, a.YN + b.YN * times, a.ZN + b.ZN * times);
        }
    }

    /// <summary>Multiplies the displacements, as another stiffness of all members does.</summary>
    public void Stretch(double by)
    {
        for (var n = 0; n < Shifts.Length; n++) Shifts[n] *= by;
    }
}
