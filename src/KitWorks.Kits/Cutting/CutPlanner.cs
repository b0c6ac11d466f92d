using KitWorks.Geometry;

namespace KitWorks.Kits.Cutting;

/// <summary>Finds cut plans.</summary>
public static class CutPlanner
{
    /// <summary>The cheapest plan that the planner finds for a job, with a bound that says how good it is.</summary>
    /// <param name="job">The job.</param>
    /// <param name="timeLimit">How long to look for a better plan; null for one second. A plan found at once is always given.</param>
    public static Outcome<CutPlan> Plan(CutJob job, TimeSpan? timeLimit = null) => throw new NotImplementedException();
}
