using KitWorks.Geometry;

namespace KitWorks.Statics.Solving;

/// <summary>Numbers the motions that a structure's nodes are free to make, neighbours close together; −1 stands for one that is held or is not there.</summary>
sealed class Unknowns
{
    readonly int[] numbers;
    readonly int perNode;

    /// <param name="model">The model.</param>
    /// <param name="perNode">3 for hinged nodes (the shifts), 6 for stiff ones (the shifts, then the turns).</param>
    public Unknowns(TrussModel model, int perNode)
    {
        this.perNode = perNode;
        numbers = [.. Enumerable.Repeat(-1, model.Nodes.Length * perNode)];
        var held = new HashSet<(int Node, int Axis)>();
        foreach (var s in model.Supports)
        {
            if (s.X) held.Add((s.Node, 0));
            if (s.Y) held.Add((s.Node, 1));
            if (s.Z) held.Add((s.Node, 2));
        }
        if (model.Slides) held.UnionWith(PlanHolds(model));
        bool HasFree(int node) => model.Has(node) && (perNode > 3 || !Enumerable.Range(0, 3).All(axis => held.Contains((node, axis))));
        var edges = model.Members.Where(m => HasFree(m.From) && HasFree(m.To)).Select(m => (m.From, m.To));
        foreach (var node in NodeOrder.Of(model.Nodes.Length, edges).Where(HasFree))
            for (var axis = 0; axis < perNode; axis++)
                if (!held.Contains((node, axis))) numbers[node * perNode + axis] = Size++;
    }

    /// <summary>How many there are.</summary>
    public int Size { get; private set; }

    public int this[int node, int axis] => numbers[node * perNode + axis];

    /// <summary>The unknowns of two nodes, in the order of a member's stiffness matrix.</summary>
    public int[] Of(int from, int to) => [.. numbers.AsSpan(from * perNode, perNode), .. numbers.AsSpan(to * perNode, perNode)];

    /// <summary>
    /// Three holds that keep a sliding structure from drifting and turning in plan, at two base nodes far from each other. They bear nothing:
    /// <see cref="GroundFriction"/> has met such loads before.
    /// </summary>
    static IEnumerable<(int Node, int Axis)> PlanHolds(TrussModel model)
    {
        var stood = model.Supports.Select(s => s.Node).Where(model.Has).ToList();
        var one = model.Nodes[stood[0]];
        var far = stood.MaxBy(n => Math.Pow(model.Nodes[n].X - one.X, 2) + Math.Pow(model.Nodes[n].Y - one.Y, 2));
        var apart = model.Nodes[far] - one;
        return far == stood[0] ? [(far, 0), (far, 1)] : [(stood[0], 0), (stood[0], 1), (far, Math.Abs(apart.X) >= Math.Abs(apart.Y) ? 1 : 0)];
    }

    /// <summary>For each unknown, a number that those of its node have in common: one for the shifts, one for the turns.</summary>
    public int[] Groups()
    {
        var groups = new int[Size];
        for (var i = 0; i < numbers.Length; i++) if (numbers[i] >= 0) groups[numbers[i]] = i / 3;
        return groups;
    }

    /// <summary>The vector of all unknowns' right-hand sides from one force a node.</summary>
    public double[] Gather(ReadOnlySpan<Point3> forces)
    {
        var b = new double[Size];
        for (var node = 0; node < forces.Length; node++)
        {
            if (this[node, 0] is >= 0 and var x) b[x] = forces[node].X;
            if (this[node, 1] is >= 0 and var y) b[y] = forces[node].Y;
            if (this[node, 2] is >= 0 and var z) b[z] = forces[node].Z;
        }
        return b;
    }

    /// <summary>The shift of each node.</summary>
    public Point3[] Scatter(ReadOnlySpan<double> x)
    {
        var shifts = new Point3[numbers.Length / perNode];
        for (var node = 0; node < shifts.Length; node++) shifts[node] = new(At(x, node, 0), At(x, node, 1), At(x, node, 2));
        return shifts;
    }

    double At(ReadOnlySpan<double> x, int node, int axis) => this[node, axis] is >= 0 and var i ? x[i] : 0;
}
