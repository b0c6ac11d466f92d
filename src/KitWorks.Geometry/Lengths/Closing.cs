using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using MathNet.Numerics.LinearAlgebra.Double.Solvers;
using MathNet.Numerics.LinearAlgebra.Solvers;

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

    /// <summary>Up to this many unknowns the equations are factored whole (a 16V hemisphere has about 400); beyond they are solved by iteration.</summary>
    const int FactoredUnknowns = 800;

    /// <summary>Accuracy of the iteration, relative, and its steps at most; a step that falls short of it is still a step downhill.</summary>
    const double IterationAccuracy = 1e-8;
    const int IterationCap = 3000;

    readonly Frame frame;
    readonly Symmetry symmetry;
    readonly List<(int Leader, Point3 Direction)> unknowns = [];
    readonly (int First, int Count)[] unknownsOf; // by leader
    readonly List<Strut> struts = []; // one of each set that symmetry makes equal

    public Closing(Frame frame)
    {
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
    }

    /// <summary>The positions at which every strut has the length of its family; null where Newton's steps do not get there.</summary>
    public Point3[]? At(double[] lengths)
    {
        Point3[] points = [.. frame.Nodes.Select(n => n.Position)];
        var misfit = Misfit(points, lengths);
        for (var step = 0; step < StepCap; step++)
        {
            if (misfit.Worst <= AccuracyMm) return points;
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

    Vector<double> Step(Point3[] points, double[] lengths)
    {
        var normal = new Dictionary<(int Row, int Column), double>(struts.Count * 36);
        var down = new DenseVector(unknowns.Count);
        var (at, by) = (new int[6], new double[6]);
        foreach (var s in struts)
        {
            var along = points[s.To] - points[s.From];
            var length = along.Norm;
            var count = Derivatives(s, along * (1 / length), at, by);
            for (var i = 0; i < count; i++)
            {
                down[at[i]] += by[i] * (length - lengths[s.Family]);
                for (var k = 0; k < count; k++) normal[(at[i], at[k])] = normal.GetValueOrDefault((at[i], at[k])) + by[i] * by[k];
            }
        }
        for (var i = 0; i < unknowns.Count; i++) normal[(i, i)] = normal.GetValueOrDefault((i, i)) + Damping;
        return Solve(normal, down);
    }

    // How the strut's length changes with each unknown of its two ends; the same unknown may come twice.
    int Derivatives(Strut s, Point3 unit, int[] at, double[] by)
    {
        var found = 0;
        foreach (var (node, sign) in new[] { (s.From, -1), (s.To, 1) })
        {
            var (first, count) = unknownsOf[symmetry.Leader[node]];
            for (var u = first; u < first + count; u++)
            {
                (at[found], by[found]) = (u, sign * unit.Dot(symmetry.From[node].Of(unknowns[u].Direction)));
                found++;
            }
        }
        return found;
    }

    Vector<double> Solve(Dictionary<(int Row, int Column), double> normal, DenseVector down)
    {
        var entries = normal.Select(e => (e.Key.Row, e.Key.Column, e.Value));
        if (unknowns.Count <= FactoredUnknowns) return DenseMatrix.OfIndexed(unknowns.Count, unknowns.Count, entries).Cholesky().Solve(down);
        var solved = new DenseVector(unknowns.Count);
        var until = new Iterator<double>(new IterationCountStopCriterion<double>(IterationCap), new ResidualStopCriterion<double>(IterationAccuracy));
        new BiCgStab().Solve(SparseMatrix.OfIndexed(unknowns.Count, unknowns.Count, entries), down, solved, until, new MILU0Preconditioner());
        return solved;
    }

    Point3[] Moved(Point3[] points, Vector<double> move, double share)
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
