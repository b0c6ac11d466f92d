using Google.OrTools.Sat;

namespace KitWorks.Kits.Cutting;

/// <summary>
/// Settles a job in whole numbers with CP-SAT. Over all patterns that a better plan could use, its answer is a proof; over
/// those found so far it may be a better plan.
/// </summary>
sealed class ExactFinish(CutInstance instance, SearchBudget budget)
{
    /// <summary>Patterns in one model at the most.</summary>
    const int MostPatterns = 12_000;

    /// <summary>The best plan found that costs less than the one known, and what every plan costs at the least.</summary>
    public readonly record struct Answer(CutSolution? Plan, long Bound);

    /// <summary>Looks for a plan that costs less than <paramref name="below"/>, by all patterns that could be of use in one.</summary>
    /// <returns>The answer, or null where the patterns are too many.</returns>
    public Answer? OverAllPatterns(DualSolution duals, BoundedKnapsack knapsack, long bound, long below, double seconds)
    {
        var least = duals.LeastWorth(instance, below);
        var patterns = new List<Pattern>();
        for (var k = 0; k < instance.Bars.Length; k++)
        {
            if (instance.Bars[k].Available == 0) continue;
            var found = knapsack.AllWorth(least[k], instance.Bars[k].Capacity, MostPatterns - patterns.Count);
            budget.Spend(knapsack.Work * 20e-9);
            if (found is null) return null;
            patterns.AddRange(found.Select(c => new Pattern(k, [.. c])));
        }
        budget.Spend(patterns.Count * 20e-6);
        return Solve(patterns, bound, below, seconds);
    }

    /// <summary>Looks for a plan that costs less than <paramref name="below"/> by the patterns given.</summary>
    Answer Solve(List<Pattern> patterns, long bound, long below, double seconds)
    {
        var model = new CpModel();
        var times = patterns.Select(p => model.NewIntVar(0, MostTimes(p), "")).ToArray();
        for (var i = 0; i < instance.Types; i++)
            model.Add(LinearExpr.WeightedSum(times, patterns.Select(p => p.Counts[i]).ToArray()) >= instance.Demands[i]);
        var cost = LinearExpr.WeightedSum(times, patterns.Select(p => instance.Bars[p.Bar].Cost).ToArray());
        for (var k = 0; k < instance.Bars.Length; k++)
            model.Add(LinearExpr.WeightedSum(times, patterns.Select(p => p.Bar == k ? 1 : 0).ToArray()) <= instance.Bars[k].Available);
        model.Add(cost <= below - 1);
        model.Add(cost >= bound);
        model.Minimize(cost);
        var solver = new CpSolver
        {
            StringParameters = FormattableString.Invariant(
                $"num_workers:1 random_seed:1 max_deterministic_time:{Math.Min(seconds, budget.WorkLeft)} max_time_in_seconds:{budget.ClockLeft}"),
        };
        var status = solver.Solve(model);
        budget.Spend(solver.Response!.DeterministicTime + 2e-3);
        return status switch
        {
            CpSolverStatus.Infeasible => new(null, below),
            CpSolverStatus.Optimal or CpSolverStatus.Feasible => new(PlanOf(patterns, times.Select(solver.Value)), Rounded(solver.BestObjectiveBound)),
            _ => new(null, Math.Max(bound, Rounded(solver.BestObjectiveBound))),
        };
    }

    static long Rounded(double bound) => (long)Math.Ceiling(bound - 1e-6);

    int MostTimes(Pattern pattern)
    {
        var most = 0;
        for (var i = 0; i < instance.Types; i++)
            if (pattern.Counts[i] > 0) most = Math.Max(most, (instance.Demands[i] + pattern.Counts[i] - 1) / pattern.Counts[i]);
        return Math.Min(most, instance.Bars[pattern.Bar].Available);
    }

    CutSolution PlanOf(List<Pattern> patterns, IEnumerable<long> times)
    {
        var rest = new Residual(instance, [.. instance.Bars.Select(b => b.Available)]);
        foreach (var (pattern, count) in patterns.Zip(times)) rest.Take(pattern, (int)count);
        return rest.Solution([]);
    }
}
