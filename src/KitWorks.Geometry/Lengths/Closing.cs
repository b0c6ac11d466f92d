namespace KitWorks.Geometry;

/// <summary>Moves the nodes of a frame until its struts have given lengths; base nodes stay at their height, and the frame keeps its symmetry.</summary>
/// <remarks>
/// A shell of triangles on a base that may slide in its plane has as many struts as ways to move, less the three ways to push it about as a
/// whole, so lengths near its own fix it. Newton's method on the symmetric ways to move; each step solves the normal equations.
/// </remarks>
sealed class Closing
{
    /// <summary>How near the lengths are met, in millimetres: far below any saw's setting.</summary>
    const double AccuracyMm = 1e-4;

    /// <summary>Newton steps at most; near lengths take four or five. Lengths that have not closed by then are answered as not closing.</summary>
    const int StepCap = 15;

    /// <summary>A step is halved down to this share to go downhill; lengths that ask for shorter ones are answered as not closing.</summary>
    const double LeastShare = 0.2;

    /// <summary>Damping over the stiffness of one strut. It keeps a shell without mirrors from turning about its axis.</summary>
    const double Damping = 1e-9;

    readonly Frame frame;
    readonly long workLimit;
    long work;
    readonly Symmetry symmetry;
    readonly List<(int Leader, Point3 Direction)> unknowns = [];
    readonly (int First, int Count)[] unknownsOf; // by leader
    readonly List<Strut> struts = []; // one of each set that symmetry makes equal
    readonly List<int[]> unknownsAt = []; // of their two ends; the same one may come twice
    readonly NormalEquations equations;

    /// <summary>Prepares a frame.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="workLimit">How many multiplications all closings together may take.</param>
    public Closing(Frame frame, long workLimit)
    {
        this.workLimit = workLimit;
        this.frame = frame;
        symmetry = new(frame);
        unknownsOf = new (int, int)[frame.Nodes.Length];
        var onGround = frame.Base.ToHashSet();
        for (var node = 0; node < frame.Nodes.Length; node++)
        {
            if (symmetry.Leader[node] != node) continue;
            var first = unknowns.Count;
            foreach (var direction in symmetry.Directions(node)) unknowns.Add((node, direction));
            if (!onGround.Contains(node)) unknowns.Add((node, new(0, 0, 1)));
            unknownsOf[node] = (first, unknowns.Count - first);
        }
        var seen = new HashSet<(int, int)>();
        foreach (var s in frame.Struts)
        {
            if (seen.Contains((s.From, s.To))) continue;
            struts.Add(s);
            foreach (var (_, carries) in symmetry.Elements)
            {
                int a = carries[s.From], b = carries[s.To];
                seen.Add((Math.Min(a, b), Math.Max(a, b)));
            }
        }
        unknownsAt.AddRange(struts.Select(s => (int[])[.. UnknownsOf(s.From), .. UnknownsOf(s.To)]));
        equations = NormalEquations.Of(unknowns.Count, unknownsAt);
    }

    /// <summary>Whether no work is left: what does not close then might have closed.</summary>
    public bool WorkRanOut => work > workLimit;

    IEnumerable<int> UnknownsOf(int node)
    {
        var (first, count) = unknownsOf[symmetry.Leader[node]];
        return Enumerable.Range(first, count);
    }

    /// <summary>The positions at which every strut has the length of its family; null where Newton's steps do not get there, or their work ran out.</summary>
    public Point3[]? At(double[] lengths)
    {
        Point3[] points = [.. frame.Nodes.Select(n => n.Position)];
        var misfit = Misfit(points, lengths);
        for (var step = 0; step < StepCap; step++)
        {
            if (misfit.Worst <= AccuracyMm) return points;
            if (WorkRanOut) return null;
            var move = Step(points, lengths);
            var share = 1.0;
            var next = Moved(points, move, share);
            var nextMisfit = Misfit(next, lengths);
            while (!(nextMisfit.Squares < misfit.Squares) && share > LeastShare)
            {
                share /= 2;
                next = Moved(points, move, share);
                nextMisfit = Misfit(next, lengths);
            }
            if (!(nextMisfit.Squares < misfit.Squares)) return null;
            (points, misfit) = (next, nextMisfit);
        }
        return null;
    }

    (double Worst, double Squares) Misfit(Point3[] points, double[] lengths)
    {
        double worst = 0, squares = 0;
        foreach (var s in struts)
        {
            var off = points[s.From].DistanceTo(points[s.To]) - lengths[s.Family];
            worst = Math.Max(worst, Math.Abs(off));
            squares += off * off;
        }
        return (worst, squares);
    }

    double[] Step(Point3[] points, double[] lengths)
    {
        equations.Clear();
        Span<double> by = stackalloc double[6];
        for (var i = 0; i < struts.Count; i++)
        {
            var s = struts[i];
            var along = points[s.To] - points[s.From];
            var length = along.Norm;
            Derivatives(unknownsAt[i], s, along * (1 / length), by);
            equations.Add(length - lengths[s.Family], unknownsAt[i], by[..unknownsAt[i].Length]);
        }
        work += equations.SolvingWork;
        return equations.Solve(0, Damping);
    }

    // How the strut's length changes with each unknown of its two ends.
    void Derivatives(int[] at, Strut s, Point3 unit, Span<double> by)
    {
        var ofFrom = unknownsOf[symmetry.Leader[s.From]].Count;
        for (var i = 0; i < at.Length; i++)
        {
            var (node, sign) = i < ofFrom ? (s.From, -1) : (s.To, 1);
            by[i] = sign * unit.Dot(symmetry.From[node].Of(unknowns[at[i]].Direction));
        }
    }

    Point3[] Moved(Point3[] points, double[] move, double share)
    {
        var moved = new Point3[points.Length];
        for (var node = 0; node < points.Length; node++)
        {
            var (first, count) = unknownsOf[symmetry.Leader[node]];
            moved[node] = points[node];
            for (var u = first; u < first + count; u++) moved[node] -= symmetry.From[node].Of(unknowns[u].Direction) * (move[u] * share);
        }
        return moved;
    }
}
