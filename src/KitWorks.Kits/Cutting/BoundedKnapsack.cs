using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace KitWorks.Kits.Cutting;

/// <summary>
/// The bounded knapsack, solved exactly for every capacity at once by dynamic programming over whole widths.
/// Copies of a piece are added in powers of two; the table after each piece is kept, so that patterns can be read back.
/// </summary>
sealed class BoundedKnapsack
{
    readonly int[] widths;
    readonly int cells;
    readonly int[][] tables;
    readonly int[][] after;
    int[] values = [];
    int[] bounds = [];

    /// <summary>Table cells that one knapsack may take: 160 MB.</summary>
    public const long MostCells = 40_000_000;

    /// <summary>A knapsack for pieces of some widths and capacities up to <paramref name="capacity"/>.</summary>
    public BoundedKnapsack(IEnumerable<int> widths, int capacity)
    {
        this.widths = [.. widths];
        cells = capacity + 1;
        tables = new int[this.widths.Length + 1][];
        after = new int[this.widths.Length + 1][];
        after[0] = tables[0] = new int[cells];
    }

    /// <summary>Cells written by the last <see cref="Solve"/> or steps of the last <see cref="AllWorth"/>, a measure of work.</summary>
    public long Work { get; private set; }

    /// <summary>Fills the tables for pieces of some values, each used up to its bound.</summary>
    /// <remarks>The best value must stay below 2³¹.</remarks>
    public void Solve(int[] values, int[] bounds)
    {
        (this.values, this.bounds, Work) = (values, bounds, 0);
        for (var i = 0; i < widths.Length; i++)
        {
            var most = Math.Min(bounds[i], (cells - 1) / widths[i]);
            if (most <= 0 || values[i] <= 0)
            {
                after[i + 1] = after[i];
                continue;
            }
            var table = after[i + 1] = tables[i + 1] ??= new int[cells];
            if (most == (cells - 1) / widths[i]) AddUnbounded(after[i], table, widths[i], values[i]);
            else AddBounded(after[i], table, i, most);
        }
    }

    /// <summary>The best value for a capacity.</summary>
    public int Best(int capacity) => after[^1][capacity];

    /// <summary>A pattern of the best value for a capacity.</summary>
    public int[] PatternAt(int capacity)
    {
        var counts = new int[widths.Length];
        for (var i = widths.Length - 1; i >= 0; i--)
        {
            if (ReferenceEquals(after[i], after[i + 1])) continue;
            var best = after[i + 1][capacity];
            while (after[i][capacity] + counts[i] * values[i] != best)
            {
                counts[i]++;
                capacity -= widths[i];
            }
        }
        return counts;
    }

    /// <summary>A good pattern with at least one piece <paramref name="type"/>; the best where its bound does not bind. Null where the piece does not fit.</summary>
    public int[]? PatternThrough(int type, int capacity)
    {
        if (bounds[type] == 0 || widths[type] > capacity) return null;
        var counts = PatternAt(capacity - widths[type]);
        if (counts[type] < bounds[type]) counts[type]++;
        return counts;
    }

    /// <summary>
    /// All patterns worth at least <paramref name="least"/> to which no further piece can be added, or null where there are more
    /// than <paramref name="most"/> or finding them takes too many steps.
    /// </summary>
    public List<int[]>? AllWorth(long least, int capacity, int most)
    {
        var found = new List<int[]>();
        var counts = new int[widths.Length];
        var steps = 200L * most;
        var isComplete = Walk(widths.Length, capacity, 0);
        Work = 200L * most - steps;
        return isComplete ? found : null;

        bool Walk(int types, int room, long value)
        {
            if (--steps < 0) return false;
            if (value + after[types][room] < least) return true;
            if (types == 0)
            {
                if (CanTakeMore(counts, room)) return true;
                found.Add([.. counts]);
                return found.Count <= most;
            }
            var type = types - 1;
            var goesOn = true;
            for (; goesOn && room >= 0 && counts[type] <= bounds[type]; counts[type]++, room -= widths[type], value += values[type])
                goesOn = Walk(type, room, value);
            counts[type] = 0;
            return goesOn;
        }
    }

    bool CanTakeMore(int[] counts, int room)
    {
        for (var i = widths.Length - 1; i >= 0 && widths[i] <= room; i--)
            if (counts[i] < bounds[i]) return true;
        return false;
    }

    void AddBounded(int[] before, int[] table, int type, int most)
    {
        AddCopies(before, table, widths[type], values[type]);
        var left = most - 1;
        for (var copies = 2; left > 0; copies *= 2)
        {
            var added = Math.Min(copies, left);
            AddCopies(table, table, added * widths[type], added * values[type]);
            left -= added;
        }
    }

    /// <summary>table[j] = max(before[j], before[j − width] + value), from the top, so that it may work in place.</summary>
    void AddCopies(int[] before, int[] table, int width, int value)
    {
        Work += cells;
        ref var from = ref MemoryMarshal.GetArrayDataReference(before);
        ref var to = ref MemoryMarshal.GetArrayDataReference(table);
        var j = cells;
        var add = new Vector<int>(value);
        if (width >= Vector<int>.Count)
            for (; j - Vector<int>.Count >= width; j -= Vector<int>.Count)
            {
                var at = (nuint)(j - Vector<int>.Count);
                Vector.Max(Vector.LoadUnsafe(ref from, at), Vector.LoadUnsafe(ref from, at - (nuint)width) + add).StoreUnsafe(ref to, at);
            }
        for (j--; j >= width; j--) table[j] = Math.Max(before[j], before[j - width] + value);
        if (!ReferenceEquals(before, table)) before.AsSpan(0, Math.Min(width, cells)).CopyTo(table);
    }

    /// <summary>table[j] = max(before[j], table[j − width] + value), from the bottom: as many copies as fit.</summary>
    void AddUnbounded(int[] before, int[] table, int width, int value)
    {
        Work += cells;
        before.AsSpan(0, width).CopyTo(table);
        ref var from = ref MemoryMarshal.GetArrayDataReference(before);
        ref var to = ref MemoryMarshal.GetArrayDataReference(table);
        var j = width;
        var add = new Vector<int>(value);
        if (width >= Vector<int>.Count)
            for (; j + Vector<int>.Count <= cells; j += Vector<int>.Count)
                Vector.Max(Vector.LoadUnsafe(ref from, (nuint)j), Vector.LoadUnsafe(ref to, (nuint)(j - width)) + add).StoreUnsafe(ref to, (nuint)j);
        for (; j < cells; j++) Unsafe.Add(ref to, j) = Math.Max(before[j], table[j - width] + value);
    }
}
