using KitWorks.Geometry;

namespace KitWorks.Kits.Cutting;

/// <summary>
/// Finds cut plans: first-fit decreasing where its bound proves it, else columns generated with an exact knapsack, dives to whole
/// numbers and, where all patterns that matter can be listed, a proof by constraint programming.
/// </summary>
/// <remarks>
/// What goes before what: the cost of the stock lengths; then, without a promise to find the very best, fewer patterns, and then
/// longer remnants. Remnants in stock cost nothing. Work is counted in steps that are the same on every machine, so that a
/// job gives the same plan each time. Only where a machine is so slow or busy that the clock's limit comes before the work
/// counted for it is spent may a plan that is not proven differ; it is right all the same, no worse than first-fit
/// decreasing, and never called proven when it is not. Where the native solvers are missing the plan is first-fit decreasing.
/// </remarks>
public static class CutPlanner
{
    /// <summary>The cheapest plan that the planner finds for a job, with a bound that says how good it is.</summary>
    /// <param name="job">The job.</param>
    /// <param name="timeLimit">How long to look for a better plan; null for one second. A plan found at once is always given.</param>
    /// <returns>The plan, or a refusal whose fields are relative to the job, for instance <c>pieces/0/cutLength</c>.</returns>
    public static Outcome<CutPlan> Plan(CutJob job, TimeSpan? timeLimit = null) => Plan(job, new SearchBudget(timeLimit ?? TimeSpan.FromSeconds(1)));

    /// <summary>As the other, with a budget that tells work from the clock.</summary>
    internal static Outcome<CutPlan> Plan(CutJob job, SearchBudget budget)
    {
        ArgumentNullException.ThrowIfNull(job);
        using var timing = Timing.CutPlan();
        if (CutJobRules.Broken(job) is { } refusal) return refusal;
        var instance = CutInstance.Of(job);
        var search = CutSearch.Run(instance, budget);
        return search.Best is { } solution
            ? CutPlanWriting.Write(job, instance, solution, search.Bound)
            : Refusal.OfField("cut-plan.stock-short", "stock", search.IsProvenShort
                ? "The stock and the remnants available are too little for all the pieces. Make more available, or cut fewer."
                : "No way was found in time to cut all the pieces from the stock and the remnants available. Make more available, or cut fewer.");
    }
}
