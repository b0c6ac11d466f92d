using KitWorks.Geometry;

namespace KitWorks.Kits.Cutting;

/// <summary>Finds cut plans.</summary>
public static class CutPlanner
{
    /// <summary>The cheapest plan that the planner finds for a job, with a bound that says how good it is.</summary>
    /// <param name="job">The job.</param>
    /// <param name="timeLimit">How long to look for a better plan; null for one second. A plan found at once is always given.</param>
    /// <returns>The plan, or a refusal whose fields are relative to the job, for instance <c>pieces/0/cutLength</c>.</returns>
    public static Outcome<CutPlan> Plan(CutJob job, TimeSpan? timeLimit = null)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (CutJobRules.Broken(job) is { } refusal) return refusal;
        var instance = CutInstance.Of(job);
        var solution = GreedyCutting.Best(instance);
        if (solution is null)
            return Refusal.OfField("cut-plan.stock-short", "stock", "The stock and the remnants available do not give all the pieces. Make more available, or cut fewer.");
        var (_, bound) = StockMix.Cheapest(instance, [StockCut.OfMaterial(instance)], [], solution.Cost(instance));
        return CutPlanWriting.Write(job, instance, solution, bound);
    }
}
