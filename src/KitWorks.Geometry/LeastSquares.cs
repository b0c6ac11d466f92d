namespace KitWorks.Geometry;

/// <summary>Least squares for a few dozen unknowns, by Levenberg and Marquardt's method.</summary>
static class LeastSquares
{
    /// <summary>Adds the residuals and their derivatives at a point.</summary>
    public delegate void System(double[] at, NormalEquations equations);

    /// <summary>
    /// Walks from <paramref name="start"/> to the nearest minimum. It ends when a step changes no unknown by more than
    /// <paramref name="accuracy"/>; at <paramref name="cap"/> steps it answers what it has.
    /// </summary>
    public static (double[] At, double SumOfSquares) Minimum(System system, double[] start, double accuracy, int cap)
    {
        var at = (double[])start.Clone();
        var (here, there) = (new NormalEquations(at.Length), new NormalEquations(at.Length));
        system(at, here);
        var damping = 1e-3;
        for (var step = 0; step < cap && damping < 1e12; step++)
        {
            var move = here.Solve(damping, damping * 1e-12);
            var next = new double[at.Length];
            for (var i = 0; i < at.Length; i++) next[i] = at[i] - move[i];
            there.Clear();
            system(next, there);
            if (!(there.SumOfSquares <= here.SumOfSquares))
            {
                damping *= 8;
                continue;
            }
            (at, here, there) = (next, there, here);
            damping = Math.Max(damping / 6, 1e-12);
            if (move.Max(Math.Abs) < accuracy) break;
        }
        return (at, here.SumOfSquares);
    }
}
