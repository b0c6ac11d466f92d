using System.Collections.Immutable;

namespace KitWorks.Kits.Cutting;

/// <summary>
/// A cut job in whole numbers, equal lengths merged. A pattern fits a bar when the widths of its pieces add up to no more
/// than the bar's capacity: a width is a cut length and a kerf, a capacity is a length less its trim and one kerf more,
/// so that n pieces that fill a length need n − 1 kerfs.
/// </summary>
/// <param name="Widths">The widths of the pieces, the widest first, divided by what they all have in common.</param>
/// <param name="Demands">How many pieces of each width.</param>
/// <param name="Bars">What can be cut: the remnants, which cost nothing, and then the stock lengths.</param>
/// <param name="CostUnit">What a cost of 1 is in the unit of <paramref name="Measure"/>.</param>
/// <param name="Measure">What the plan makes smallest.</param>
sealed record CutInstance(
    ImmutableArray<int> Widths, ImmutableArray<int> Demands, ImmutableArray<Bar> Bars, decimal CostUnit, CutMeasure Measure)
{
    /// <summary>The number of different widths.</summary>
    public int Types => Widths.Length;

    /// <summary>What a mix of bars costs.</summary>
    public long CostOf(int[] mix)
    {
        var cost = 0L;
        for (var k = 0; k < mix.Length; k++) cost += mix[k] * Bars[k].Cost;
        return cost;
    }

    /// <summary>A job that has been found valid, in whole numbers.</summary>
    public static CutInstance Of(CutJob job)
    {
        var pieces = PiecesByLength(job).ToList();
        var widths = pieces.Select(p => p.Tenths + job.Kerf.Tenths).ToList();
        var step = widths.Aggregate((a, b) => (int)Gcd(a, b));
        var demands = pieces.Select(p => p.Count).ToImmutableArray();
        var (costs, unit, measure) = CostsOf(job.Stock);

        Bar BarOf(int tenths, long cost, int available, int source) =>
            new((int)Math.Min((tenths + job.Kerf.Tenths) / step, int.MaxValue), cost, Math.Min(available, demands.Sum()), source);

        var remnants = job.Remnants
            .GroupBy(r => r.Length.Tenths)
            .OrderBy(g => g.Key)
            .Select(g => BarOf(g.Key, 0, g.Sum(r => r.Count), Bar.Remnant));
        var stock = job.Stock.Select((s, k) => BarOf(
            Math.Max(0, s.Length.Tenths - job.EndTrim.Tenths), costs[k], s.Available ?? int.MaxValue, k));
        return new([.. widths.Select(w => w / step)], demands, [.. remnants, .. stock], unit, measure);
    }

    /// <summary>The job's pieces by length, the longest first: the order of <see cref="Widths"/>.</summary>
    public static IEnumerable<(int Tenths, int Count)> PiecesByLength(CutJob job) => job.Pieces
        .GroupBy(p => p.CutLength.Tenths)
        .OrderByDescending(g => g.Key)
        .Select(g => (g.Key, g.Sum(p => p.Count)));

    static (long[] Costs, decimal Unit, CutMeasure Measure) CostsOf(ImmutableArray<StockLength> stock)
    {
        if (stock.IsEmpty) return ([], 1, CutMeasure.Count);
        var measure = stock[0].Cost is not null ? CutMeasure.Cost : stock.Length == 1 ? CutMeasure.Count : CutMeasure.Millimetres;
        if (measure == CutMeasure.Count) return ([1], 1, measure);
        long[] costs = [.. stock.Select(s => s.Cost is { } cost ? (long)(cost * CutJobRules.CostSteps) : s.Length.Tenths)];
        var common = costs.Aggregate(Gcd);
        var step = measure == CutMeasure.Cost ? 1m / CutJobRules.CostSteps : 0.1m;
        return ([.. costs.Select(c => c / common)], common * step, measure);
    }

    /// <summary>The greatest common divisor.</summary>
    public static long Gcd(long a, long b) => b == 0 ? a : Gcd(b, a % b);
}

/// <summary>Lengths of one kind that can be cut.</summary>
/// <param name="Capacity">What the widths of a pattern add up to at the most.</param>
/// <param name="Cost">What one costs, in the instance's cost unit; zero for a remnant.</param>
/// <param name="Available">How many there are, and no more than could be of use.</param>
/// <param name="Source">The index of its stock length in the job, or <see cref="Remnant"/>.</param>
readonly record struct Bar(int Capacity, long Cost, int Available, int Source)
{
    /// <summary>The source of a remnant.</summary>
    public const int Remnant = -1;

    /// <summary>Whether it is a remnant.</summary>
    public bool IsRemnant => Source == Remnant;
}
