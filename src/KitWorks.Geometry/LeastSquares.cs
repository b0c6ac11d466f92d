using MathNet.Numerics.LinearAlgebra.Double;

namespace KitWorks.Geometry;

/// <summary>Least squares for a few dozen unknowns, by Levenberg and Marquardt's method.</summary>
static class LeastSquares
{
    /// <summary>Fills in the residuals and their derivatives, row by row, at a point.</summary>
    public delegate void System(double[] at, double[] residuals, DenseMatrix jacobian);

    /// <summary>
    /// Walks from <paramref name="start"/> to the nearest minimum. It ends when a step changes no unknown by more than
    /// <paramref name="accuracy"/>; at <paramref name="cap"/> steps it answers what it has.
    /// </summary>
    public static (double[] At, double SumOfSquares) Minimum(System system, int residuals, double[] start, double accuracy, int cap)
    {
        var at = (double[])start.Clone();
        var (r, j) = (new double[residuals], new DenseMatrix(residuals, at.Length));
        system(at, r, j);
        var sum = Squares(r);
        var damping = 1e-3;
        for (var step = 0; step < cap && damping < 1e12; step++)
        {
            var normal = (DenseMatrix)j.TransposeThisAndMultiply(j);
            var down = j.TransposeThisAndMultiply(DenseVector.OfArray(r));
            for (var i = 0; i < at.Length; i++) normal[i, i] += damping * (normal[i, i] + 1e-12);
            var move = normal.Cholesky().Solve(down);
            var next = new double[at.Length];
            for (var i = 0; i < at.Length; i++) next[i] = at[i] - move[i];
            var (nextR, nextJ) = (new double[residuals], new DenseMatrix(residuals, at.Length));
            system(next, nextR, nextJ);
            var nextSum = Squares(nextR);
            if (!(nextSum <= sum))
            {
                damping *= 8;
                continue;
            }
            (at, r, j, sum) = (next, nextR, nextJ, nextSum);
            damping = Math.Max(damping / 6, 1e-12);
            if (move.AbsoluteMaximum() < accuracy) break;
        }
        return (at, sum);
    }

    static double Squares(double[] values)
    {
        var sum = 0.0;
        foreach (var value in values) sum += value * value;
        return sum;
    }
}
