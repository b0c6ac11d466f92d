using System.Runtime.Intrinsics;

namespace KitWorks.Geometry;

/// <summary>
/// The normal equations of a least-squares problem, JᵀJ·x = Jᵀr, gathered residual by residual and kept row by row from the first entry
/// that is not zero up to the diagonal; Cholesky's factor fills no entry outside that envelope.
/// </summary>
/// <remarks>
/// A. George and J. W. H. Liu, Computer Solution of Large Sparse Positive Definite Systems (1981), chapter 4. A frame's nodes come row by row, so
/// that its envelope is narrow: about 50 of 400 unknowns for a 16V hemisphere, where a library's dense factor takes fifty times the work.
/// </remarks>
sealed class NormalEquations
{
    readonly int[] first, start;
    readonly double[] values, factor, right;

    /// <summary>Room for unknowns of which any two may meet in a residual.</summary>
    public NormalEquations(int unknowns) : this(new int[unknowns])
    {
    }

    NormalEquations(int[] first)
    {
        (this.first, start, right) = (first, new int[first.Length], new double[first.Length]);
        var room = 0;
        for (var i = 0; i < first.Length; i++)
        {
            (start[i], room) = (room, checked(room + i - first[i] + 1));
            long width = i - first[i];
            SolvingWork += width * (width + 4) / 2;
        }
        (values, factor) = (new double[room], new double[room]);
    }

    /// <summary>Room for unknowns that meet only where <paramref name="residuals"/> say: the unknowns of each.</summary>
    public static NormalEquations Of(int unknowns, IEnumerable<int[]> residuals)
    {
        var first = Enumerable.Range(0, unknowns).ToArray();
        foreach (var at in residuals)
        {
            var least = at.DefaultIfEmpty(0).Min();
            foreach (var i in at) first[i] = Math.Min(first[i], least);
        }
        return new(first);
    }

    /// <summary>About how many multiplications it takes to solve once.</summary>
    public long SolvingWork { get; }

    public double SumOfSquares { get; private set; }

    public void Clear()
    {
        Array.Clear(values);
        Array.Clear(right);
        SumOfSquares = 0;
    }

    /// <summary>Adds a residual with its derivatives by some of the unknowns; an unknown may come twice.</summary>
    public void Add(double residual, ReadOnlySpan<int> at, ReadOnlySpan<double> by)
    {
        SumOfSquares += residual * residual;
        for (var i = 0; i < at.Length; i++)
        {
            var row = start[at[i]] - first[at[i]];
            right[at[i]] += by[i] * residual;
            for (var k = 0; k < at.Length; k++)
                if (at[k] <= at[i]) values[row + at[k]] += by[i] * by[k];
        }
    }

    /// <summary>The x of (JᵀJ + damping)·x = Jᵀr.</summary>
    /// <param name="relative">Added to the diagonal as a share of it.</param>
    /// <param name="absolute">Added to the diagonal.</param>
    public double[] Solve(double relative, double absolute)
    {
        values.CopyTo(factor, 0);
        var x = (double[])right.Clone();
        for (var i = 0; i < first.Length; i++)
        {
            var row = Row(i);
            row[^1] += relative * row[^1] + absolute;
            for (var j = first[i]; j < i; j++)
            {
                var from = Math.Max(first[i], first[j]);
                row[j - first[i]] = (row[j - first[i]] - Dot(row[(from - first[i])..(j - first[i])], Row(j)[(from - first[j])..^1])) / Row(j)[^1];
            }
            row[^1] = Math.Sqrt(row[^1] - Dot(row[..^1], row[..^1]));
            x[i] = (x[i] - Dot(row[..^1], x.AsSpan(first[i], i - first[i]))) / row[^1];
        }
        for (var i = first.Length - 1; i >= 0; i--)
        {
            var row = Row(i);
            x[i] /= row[^1];
            for (var j = first[i]; j < i; j++) x[j] -= x[i] * row[j - first[i]];
        }
        return x;
    }

    Span<double> Row(int i) => factor.AsSpan(start[i], i - first[i] + 1);

    // Four partial sums, whatever the machine's vectors hold, so that the last bit is the same everywhere.
    static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sums = Vector256<double>.Zero;
        var i = 0;
        for (; i + 4 <= a.Length; i += 4)
            sums += Vector256.Create(a.Slice(i, 4)) * Vector256.Create(b.Slice(i, 4));
        var sum = Vector256.Sum(sums);
        for (; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }
}
