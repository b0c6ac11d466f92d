using System.Numerics;
using System.Runtime.InteropServices;

namespace KitWorks.Statics.Solving;

/// <summary>
/// A symmetric, positive semi-definite matrix K, kept row by row from the first entry that is not zero up to the diagonal, and its
/// Cholesky factor K = L·Lᵀ in the same room: no entry of L lies outside that envelope.
/// </summary>
/// <remarks>
/// The method is A. George and J. W. H. Liu, Computer Solution of Large Sparse Positive Definite Systems (1981), chapter 4.
/// It is written here because it is a hundred lines that can also count mechanisms. A dense factor of a general library takes
/// n³/3 steps and n² room where this takes n·b² and n·b (b, the mean width, is 112 at n = 3,723, a 16V hemisphere), iterative solvers start
/// again for each load, and neither says which way a loose frame moves.
/// </remarks>
sealed partial class EnvelopeCholesky
{
    readonly int[] first;
    readonly int[] start;
    readonly double[] values;
    readonly bool[] loose;
    readonly IReadOnlyList<Element> elements;

    /// <summary>Makes room for the sum of the elements.</summary>
    public EnvelopeCholesky(int size, IReadOnlyList<Element> elements)
    {
        (first, start, loose, this.elements) = ([.. Enumerable.Range(0, size)], new int[size], new bool[size], elements);
        foreach (var at in elements.Select(e => e.At))
        {
            var least = at.Where(i => i >= 0).DefaultIfEmpty(0).Min();
            foreach (var i in at) if (i >= 0) first[i] = Math.Min(first[i], least);
        }
        var room = 0;
        for (var i = 0; i < size; i++) (start[i], room) = (room, checked(room + i - first[i] + 1));
        values = new double[room];
    }

    public int Size => first.Length;

    /// <summary>Entries kept.</summary>
    public int Room => values.Length;

    /// <summary>Turns the right-hand side b into the x of K·x = b, with every loose unknown at zero. What comes before the first load is skipped.</summary>
    public void Solve(Span<double> b)
    {
        var begin = b.IndexOfAnyExcept(0.0);
        if (begin < 0) return;
        for (var i = begin; i < Size; i++)
            b[i] = loose[i] ? 0 : (b[i] - Dot(Row(i)[..^1], b[first[i]..i])) / Row(i)[^1];
        Back(b);
    }

    void Assemble()
    {
        Array.Clear(values);
        foreach (var (at, k) in elements)
            for (var i = 0; i < at.Length; i++)
                for (var j = 0; j < at.Length; j++)
                    if (at[j] >= 0 && at[i] >= at[j]) values[start[at[i]] + at[j] - first[at[i]]] += k[i, j];
    }

    /// <summary>Turns K into L.</summary>
    void Eliminate(ReadOnlySpan<double> stiffness)
    {
        for (var i = 0; i < Size; i++)
        {
            var row = Row(i);
            for (var j = first[i]; j < i; j++)
            {
                var from = Math.Max(first[i], first[j]);
                ref var entry = ref row[j - first[i]];
                entry = loose[j] ? 0 : (entry - Dot(row[(from - first[i])..(j - first[i])], Row(j)[(from - first[j])..^1])) / Row(j)[^1];
            }
            var pivot = row[^1] - Dot(row[..^1], row[..^1]);
            loose[i] = held.Contains(i);
            if (!loose[i] && !(pivot > Doubtful * stiffness[i])) (pivot, loose[i]) = Energy(Motion(i), stiffness[i]);
            row[^1] = loose[i] ? 1 : Math.Sqrt(pivot);
        }
    }

    void Back(Span<double> x)
    {
        for (var i = x.Length - 1; i >= 0; i--)
        {
            if (loose[i])
            {
                x[i] = 0;
                continue;
            }
            x[i] /= Row(i)[^1];
            Subtract(x[first[i]..i], x[i], Row(i)[..^1]);
        }
    }

    Span<double> Row(int i) => values.AsSpan(start[i], i - first[i] + 1);

    static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var va = MemoryMarshal.Cast<double, Vector<double>>(a);
        var vb = MemoryMarshal.Cast<double, Vector<double>>(b);
        var sums = Vector<double>.Zero;
        for (var i = 0; i < va.Length; i++) sums += va[i] * vb[i];
        var sum = Vector.Sum(sums);
        for (var i = va.Length * Vector<double>.Count; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }

    static void Subtract(Span<double> from, double factor, ReadOnlySpan<double> what)
    {
        var vf = MemoryMarshal.Cast<double, Vector<double>>(from);
        var vw = MemoryMarshal.Cast<double, Vector<double>>(what);
        for (var i = 0; i < vf.Length; i++) vf[i] -= factor * vw[i];
        for (var i = vf.Length * Vector<double>.Count; i < from.Length; i++) from[i] -= factor * what[i];
    }
}

/// <summary>The stiffness of one member between the unknowns at its ends; −1 stands for one that is held.</summary>
sealed record Element(int[] At, double[,] Stiffness);
