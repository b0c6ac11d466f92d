namespace KitWorks.Kits.Cutting;

/// <summary>
/// Column generation: solves the linear programme over all patterns by adding those that an exact knapsack finds to pay,
/// the best of each bar and the best through each piece.
/// </summary>
sealed class ColumnGeneration : IDisposable
{
    /// <summary>A pattern pays when it is worth this much more than its bar's price, which is about 1.</summary>
    const double Accuracy = 1e-7;

    /// <summary>Rounds of pricing at the most; the bound holds wherever they stop.</summary>
    const int MostRounds = 500;

    readonly CutInstance instance;
    readonly BoundedKnapsack knapsack;
    readonly SearchBudget budget;
    readonly int longest;

    public ColumnGeneration(CutInstance instance, SearchBudget budget)
    {
        (this.instance, this.budget) = (instance, budget);
        longest = instance.Bars.Max(b => b.Capacity);
        knapsack = new(instance.Widths, longest);
        Master = new(instance);
        AddSingles();
        AddAlike();
    }

    /// <summary>The linear programme, as last solved.</summary>
    public MasterProgram Master { get; private set; }

    /// <summary>The condition on the stock that the last duals give. It holds for the demands last solved for.</summary>
    public StockCut? Cut { get; private set; }

    /// <summary>The last duals in whole numbers.</summary>
    public int[] Values { get; private set; } = [];

    /// <summary>What the last duals were multiplied by.</summary>
    public double Scale { get; private set; }

    /// <summary>Adds the patterns of a plan.</summary>
    public void Add(CutSolution solution)
    {
        foreach (var (pattern, _) in solution.Uses) Master.Add(pattern);
    }

    /// <summary>Solves for a demand and a limit on bars; false where the budget or the solver gave out before there was a solution.</summary>
    /// <param name="demands">The pieces wanted.</param>
    /// <param name="limits">The bars there are.</param>
    /// <param name="aim">What to make smallest.</param>
    /// <param name="isEnough">Asked after each round: whether the solution is good enough as it is.</param>
    public bool Solve(IReadOnlyList<int> demands, IReadOnlyList<int> limits, MasterAim aim, Func<int, bool> isEnough)
    {
        Prune();
        Master.Set(demands, limits, aim);
        for (var round = 0; round < MostRounds; round++)
        {
            if (budget.IsSpent || !Master.Solve()) return false;
            budget.Spend(100e-6 + Master.Patterns.Count * 1e-6 + Master.Pivots * 10e-6);
            var pays = Price(demands, limits);
            if (pays == 0 || isEnough(round)) return true;
        }
        return true;
    }

    /// <summary>The knapsack at the duals given, for all pieces of the job.</summary>
    public BoundedKnapsack KnapsackAt(int[] values)
    {
        knapsack.Solve(values, [.. instance.Demands]);
        return knapsack;
    }

    public void Dispose() => Master.Dispose();

    /// <summary>Prices all patterns at the last duals, in whole numbers, and adds those that pay; their number.</summary>
    int Price(IReadOnlyList<int> demands, IReadOnlyList<int> limits)
    {
        var densest = Enumerable.Range(0, instance.Types).Max(i => Master.PieceDuals[i] / instance.Widths[i]);
        if (densest <= 0) return 0;
        var scale = (1 << 30) / (densest * longest);
        int[] values = [.. Master.PieceDuals.Select(d => (int)(d * scale))];
        knapsack.Solve(values, [.. demands]);
        budget.Spend(20e-6 + knapsack.Work * 0.25e-9);
        (Values, Scale) = (values, scale);
        Cut = new(
            [.. instance.Bars.Select(b => (long)knapsack.Best(b.Capacity))],
            values.Zip(demands, (v, d) => (long)v * d).Sum());
        var added = 0;
        for (var k = 0; k < instance.Bars.Length; k++)
        {
            var price = (Master.BarPrices[k] + Accuracy) * scale;
            if (limits[k] == 0 || knapsack.Best(instance.Bars[k].Capacity) <= price) continue;
            added += Add(k, knapsack.PatternAt(instance.Bars[k].Capacity));
            if (instance.Bars[k].IsRemnant) continue;
            for (var i = 0; i < instance.Types; i++)
                if (knapsack.PatternThrough(i, instance.Bars[k].Capacity) is { } counts && Worth(counts, values) > price) added += Add(k, counts);
        }
        return added;
    }

    int Add(int bar, int[] counts) => Master.Add(new(bar, [.. counts])) ? 1 : 0;

    static long Worth(int[] counts, int[] values)
    {
        var worth = 0L;
        for (var i = 0; i < counts.Length; i++) worth += (long)counts[i] * values[i];
        return worth;
    }

    /// <summary>Adds single pieces, so that there is always a solution.</summary>
    void AddSingles()
    {
        var bar = Enumerable.Range(0, instance.Bars.Length).MaxBy(k => instance.Bars[k].Capacity);
        for (var i = 0; i < instance.Types; i++) Add(bar, Alike(i, 1));
    }

    /// <summary>Adds, for each stock length, as many of each piece as fit and are wanted.</summary>
    void AddAlike()
    {
        for (var k = 0; k < instance.Bars.Length; k++)
            for (var i = 0; i < instance.Types; i++)
                if (!instance.Bars[k].IsRemnant && instance.Bars[k].Capacity / instance.Widths[i] is > 0 and var fit)
                    Add(k, Alike(i, Math.Min(instance.Demands[i], fit)));
    }

    int[] Alike(int type, int count)
    {
        var counts = new int[instance.Types];
        counts[type] = count;
        return counts;
    }

    /// <summary>Starts the programme afresh with the patterns that came nearest to paying, when it has so many that solving it is slow.</summary>
    void Prune()
    {
        var few = 100 + 2 * (instance.Types + instance.Bars.Length);
        if (Master.Patterns.Count < 3 * few || Master.PieceDuals.Length == 0) return;
        var kept = Master.Patterns.OrderBy(p => Master.BarPrices[p.Bar] - Worth(p)).Take(few).ToList();
        Master.Dispose();
        Master = new(instance);
        AddSingles();
        foreach (var pattern in kept) Master.Add(pattern);

        double Worth(Pattern pattern)
        {
            var worth = 0.0;
            for (var i = 0; i < pattern.Counts.Length; i++) worth += pattern.Counts[i] * Master.PieceDuals[i];
            return worth;
        }
    }
}
