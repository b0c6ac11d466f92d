namespace KitWorks.Geometry;

/// <summary>
/// The turns about the vertical axis and the upright mirrors that carry a frame onto itself, as what they leave to be said: one node of
/// each set of nodes that they exchange, the ways in which it may move without breaking the symmetry, and how the others follow.
/// </summary>
sealed class Symmetry
{
    /// <summary>How far a node may lie from where symmetry puts it, over the frame's extent. Rounding stays below 1e-12.</summary>
    const double Tolerance = 1e-8;

    readonly Frame frame;
    readonly double cell;
    readonly Dictionary<(long, long, long), List<int>> byPlace = [];

    public Symmetry(Frame frame)
    {
        this.frame = frame;
        cell = Tolerance * Math.Max(frame.Dimensions.LengthMm, frame.Dimensions.HeightMm);
        foreach (var n in frame.Nodes)
        {
            var key = Cell(n.Position, 0, 0, 0);
            if (!byPlace.TryGetValue(key, out var there)) byPlace.Add(key, there = []);
            there.Add(n.Id);
        }
        Elements = Group();
        var count = frame.Nodes.Length;
        Leader = new int[count];
        From = new Plane[count];
        for (var node = 0; node < count; node++)
        {
            var leader = Elements.Min(e => e.Carries[node]);
            Leader[node] = leader;
            From[node] = Elements.First(e => e.Carries[leader] == node).Plane;
        }
    }

    /// <summary>A linear map of the horizontal plane: x' = Xx·x + Xy·y, y' = Yx·x + Yy·y.</summary>
    public readonly record struct Plane(double Xx, double Xy, double Yx, double Yy)
    {
        public Point3 Of(Point3 p) => new(Xx * p.X + Xy * p.Y, Yx * p.X + Yy * p.Y, p.Z);

        public Plane Then(Plane next) => new(next.Xx * Xx + next.Xy * Yx, next.Xx * Xy + next.Xy * Yy, next.Yx * Xx + next.Yy * Yx, next.Yx * Xy + next.Yy * Yy);
    }

    /// <summary>The group's elements, each with the node to which it carries each node.</summary>
    public IReadOnlyList<(Plane Plane, int[] Carries)> Elements { get; }

    /// <summary>The lowest of the nodes that symmetry makes equal to each node.</summary>
    public int[] Leader { get; }

    /// <summary>What carries its leader to each node.</summary>
    public Plane[] From { get; }

    /// <summary>The horizontal directions, none to two, in which a leader can move without breaking the symmetry.</summary>
    public Point3[] Directions(int leader)
    {
        var still = Elements.Where(e => e.Carries[leader] == leader).ToList();
        // What the elements that leave it in place agree on: their mean is the projection onto it.
        double xx = still.Average(e => e.Plane.Xx), yx = still.Average(e => e.Plane.Yx), xy = still.Average(e => e.Plane.Xy), yy = still.Average(e => e.Plane.Yy);
        var rank = (int)Math.Round(xx + yy);
        if (rank == 2) return [new(1, 0, 0), new(0, 1, 0)];
        if (rank == 0) return [];
        Point3 along = Math.Abs(xx) > Math.Abs(yy) ? new(xx, yx, 0) : new(xy, yy, 0);
        return [along * (1 / along.Norm)];
    }

    List<(Plane, int[])> Group()
    {
        var elements = new List<(Plane Plane, int[] Carries)> { (new(1, 0, 0, 1), [.. frame.Nodes.Select(n => n.Id)]) };
        // Frames have turns of order 2 to 5, an oblong's two; with the mirrors there are up to ten elements.
        var root5 = Math.Sqrt(5);
        foreach (var (order, cos, sin) in new[]
                 {
                     (5, (root5 - 1) / 4, Math.Sqrt(10 + 2 * root5) / 4), (4, 0, 1), (3, -0.5, Math.Sqrt(3) / 2), (2, -1, 0),
                 })
        {
            if (Carries(new(cos, -sin, sin, cos)) is not { } turn) continue;
            for (var k = 1; k < order; k++)
                elements.Add((elements[^1].Plane.Then(new(cos, -sin, sin, cos)), [.. elements[^1].Carries.Select(n => turn[n])]));
            break;
        }
        if (Mirror() is not { } mirror) return elements;
        return [.. elements, .. elements.Select(e => (e.Plane.Then(mirror.Plane), e.Carries.Select(n => mirror.Carries[n]).ToArray()))];
    }

    (Plane Plane, int[] Carries)? Mirror()
    {
        // It carries some node off the axis to a node at the same height and distance; the one with the fewest such serves.
        double Far(Node n) => Math.Sqrt(n.Position.X * n.Position.X + n.Position.Y * n.Position.Y);
        var few = frame.Nodes.Where(n => Far(n) > 1e3 * cell).GroupBy(n => (Math.Round(n.Position.Z / (1e3 * cell)), Math.Round(Far(n) / (1e3 * cell))))
            .OrderBy(g => g.Count()).First().ToList();
        var p = few[0].Position;
        foreach (var q in few.Select(n => n.Position))
        {
            // The reflection that carries p to q: across the line halfway between their angles.
            var (cos, sin) = ((p.X * q.X - p.Y * q.Y) / (Far(few[0]) * Far(few[0])), (p.X * q.Y + p.Y * q.X) / (Far(few[0]) * Far(few[0])));
            var plane = new Plane(cos, sin, sin, -cos);
            if (Carries(plane) is { } carries) return (plane, carries);
        }
        return null;
    }

    int[]? Carries(Plane plane)
    {
        var to = new int[frame.Nodes.Length];
        for (var node = 0; node < to.Length; node++)
        {
            to[node] = NodeAt(plane.Of(frame.Nodes[node].Position));
            if (to[node] < 0) return null;
        }
        return to;
    }

    int NodeAt(Point3 p)
    {
        for (var dx = -1; dx <= 1; dx++)
            for (var dy = -1; dy <= 1; dy++)
                for (var dz = -1; dz <= 1; dz++)
                    if (byPlace.TryGetValue(Cell(p, dx, dy, dz), out var there))
                        foreach (var n in there)
                            if (frame.Nodes[n].Position.DistanceTo(p) <= cell) return n;
        return -1;
    }

    (long, long, long) Cell(Point3 p, int dx, int dy, int dz) =>
        ((long)Math.Floor(p.X / cell) + dx, (long)Math.Floor(p.Y / cell) + dy, (long)Math.Floor(p.Z / cell) + dz);
}
