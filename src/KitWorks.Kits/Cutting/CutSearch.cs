using System.Numerics;

namespace KitWorks.Kits.Cutting;

/// <summary>
/// Looks for the cheapest plan and its proof. The bound says which mix of bars could do at the least; the dives look for a
/// plan from that mix. Where the linear programme shows that a mix cannot do, its duals are a condition on all mixes.
/// </summary>
sealed class CutSearch
{
    /// <summary>How often each mix is tried again, differently each time.</summary>
    const int MostPasses = 200;

    /// <summary>Work given to the first attempt at a proof over all patterns; each later one has twice that of the one before.</summary>
    const double SettleSeconds = 0.1;

    readonly CutInstance instance;
    readonly SearchBudget budget;
    readonly List<StockCut> cuts;
    readonly List<int[]> triedMixes = [];
    double[]? hint;

    CutSearch(CutInstance instance, SearchBudget budget)
    {
        (this.instance, this.budget) = (instance, budget);
        cuts = [StockCut.OfMaterial(instance)];
        Best = GreedyCutting.Best(instance);
    }

    /// <summary>The best plan found.</summary>
    public CutSolution? Best { get; private set; }

    /// <summary>What every plan costs at the least; above the cost of all that is available where there is no plan.</summary>
    public long Bound { get; private set; }

    /// <summary>Whether the stock is proven to be too little.</summary>
    public bool IsProvenShort => Best is null && Bound >= BestCost;

    /// <summary>What a better plan costs less than: the best plan, or a little more than everything that is available.</summary>
    long BestCost => Best?.Cost(instance) ?? instance.Bars.Sum(b => b.Available * b.Cost) + 1;

    /// <summary>Searches until a plan is proven or the budget is spent.</summary>
    public static CutSearch Run(CutInstance instance, SearchBudget budget)
    {
        var search = new CutSearch(instance, budget);
        search.Next(0);
        if (search.Bound < search.BestCost) search.ImproveWhereSolversAre();
        if (search.Best is { } best) search.Best = RemnantGathering.Of(instance, PatternReduction.Of(instance, best));
        return search;
    }

    /// <summary>Without the native solvers the greedy plan and its bound stand.</summary>
    void ImproveWhereSolversAre()
    {
        try
        {
            Improve();
        }
        catch (Exception e) when (e is DllNotFoundException or TypeInitializationException or BadImageFormatException or EntryPointNotFoundException)
        {
        }
    }

    void Improve()
    {
        if ((long)instance.Types * instance.Bars.Max(b => b.Capacity) > BoundedKnapsack.MostCells) return;
        using var columns = new ColumnGeneration(instance, budget);
        if (Best is { } greedy) columns.Add(greedy);
        int[] all = [.. instance.Bars.Select(b => b.Available)];
        var isSolved = columns.Solve(instance.Demands, all, MasterAim.Cost, _ => RoundsAsLow(columns));
        if (columns.Cut is null) return;
        var duals = new DualSolution(columns.Values, columns.Scale, columns.Cut);
        cuts.Add(duals.Cut);
        hint = columns.Master.BarsUsed();
        Next(0);
        if (!isSolved) return;
        var dive = new RoundingDive(instance, columns, budget);
        if (instance.Bars.Count(b => !b.IsRemnant) > 1) Keep(dive.From(all, MasterAim.Cost, Bound, 0));
        for (var pass = 0; pass < MostPasses && Bound < BestCost && !budget.IsSpent; pass++)
        {
            if (pass > 1 && BitOperations.IsPow2(pass)) Settle(columns, duals, SettleSeconds * pass);
            Probe(columns, dive, pass);
        }
    }

    /// <summary>Dives from the cheapest mix that could do; after a dive that fails, from one halfway to the best plan.</summary>
    void Probe(ColumnGeneration columns, RoundingDive dive, int pass)
    {
        for (var target = Bound; target < BestCost && !budget.IsSpent;)
        {
            if (MixFrom(columns, target) is not { } mix) return;
            var cost = instance.CostOf(mix);
            var isBetter = Keep(dive.From(mix, MasterAim.Material, cost, pass));
            if (!isBetter && target == Bound) triedMixes.Add(mix);
            if (!isBetter) target = cost + 1;
            target += (BestCost - target) / 2;
        }
    }

    /// <summary>The cheapest mix that costs at least <paramref name="target"/>, less than the best plan, and could do.</summary>
    int[]? MixFrom(ColumnGeneration columns, long target)
    {
        while (!budget.IsSpent)
        {
            if (Next(target) is not { } mix) return null;
            if (!IsShort(columns, mix)) return mix;
        }
        return null;
    }

    /// <summary>Asks for a better plan or a proof that there is none, where all patterns that matter can be listed.</summary>
    void Settle(ColumnGeneration columns, DualSolution duals, double seconds)
    {
        var finish = new ExactFinish(instance, budget);
        if (finish.OverAllPatterns(duals, columns.KnapsackAt(duals.Values), Bound, BestCost, seconds) is not { } answer) return;
        Keep(answer.Plan);
        Bound = Math.Max(Bound, answer.Bound);
    }

    /// <summary>Keeps a plan that is better than the best; whether it is.</summary>
    bool Keep(CutSolution? plan)
    {
        if (plan is null || plan.Cost(instance) >= BestCost) return false;
        Best = plan;
        return true;
    }

    /// <summary>The cheapest mix that is not ruled out and costs at least <paramref name="target"/> and less than the best plan; raises the bound.</summary>
    /// <remarks>Mixes tried before are passed over as long as there are others that cost no more than the bound.</remarks>
    int[]? Next(long target)
    {
        var (mix, bound) = Cheapest(cuts, []);
        Bound = Math.Max(Bound, Math.Min(bound, BestCost));
        if (target > Bound) return Cheapest([.. cuts, new([.. instance.Bars.Select(b => b.Cost)], target)], []).Mix;
        if (mix is null || triedMixes.Count == 0) return mix;
        var (other, cost) = Cheapest(cuts, triedMixes);
        if (other is not null && cost == Bound) return other;
        triedMixes.Clear();
        return mix;
    }

    (int[]? Mix, long Bound) Cheapest(List<StockCut> conditions, List<int[]> excluded)
    {
        var (mix, bound, nodes) = StockMix.Cheapest(instance, conditions, excluded, hint, BestCost);
        budget.Spend(nodes * (0.1e-6 + 0.03e-6 * conditions.Count * instance.Bars.Length));
        return (mix, bound);
    }

    /// <summary>Whether the mix of bars is too little even in fractions; if so, the condition that says why is added.</summary>
    bool IsShort(ColumnGeneration columns, int[] mix)
    {
        if (!columns.Solve(instance.Demands, mix, MasterAim.Shortage, _ => columns.Master.Shortage < 1e-9 || Violates(columns.Cut!, mix))) return false;
        if (!Violates(columns.Cut!, mix)) return false;
        cuts.Add(columns.Cut!);
        return true;
    }

    static bool Violates(StockCut cut, int[] mix)
    {
        var worth = 0L;
        for (var k = 0; k < mix.Length; k++) worth += mix[k] * cut.Worth[k];
        return worth < cut.Need;
    }

    /// <summary>Whether the bound of the last duals rounds up to as much as the programme's value does, so that more rounds gain nothing.</summary>
    bool RoundsAsLow(ColumnGeneration columns)
    {
        if (columns.Master.Shortage > 1e-9) return false;
        if (instance.Bars.Count(b => !b.IsRemnant) > 1) return false;
        var (_, bound, _) = StockMix.Cheapest(instance, [.. cuts, columns.Cut!], [], hint, BestCost);
        return bound >= Math.Min(BestCost, Math.Ceiling(columns.Master.Value - 1e-6));
    }
}
