namespace KitWorks.Kits.Cutting;

/// <summary>
/// Dives from the linear programme to whole numbers: takes the whole part of every pattern, rounds one pattern up, solves
/// anew for what is left, and so on. A dive that ends in a dead end turns back to the next best pattern a few times
/// (limited discrepancy search).
/// </summary>
sealed class RoundingDive(CutInstance instance, ColumnGeneration columns, SearchBudget budget)
{
    const double Whole = 1 - 1e-6;

    /// <summary>Of this many patterns in fractions, one more is rounded up at a time; at the end, only one.</summary>
    const int Batch = 10;

    Random random = new(0);
    int nodes;
    double noise;
    MasterAim aim;
    long enough;
    CutSolution? best;
    long bestCost;

    /// <summary>The best plan found from the bars given, or null where none was found.</summary>
    /// <param name="bars">The bars.</param>
    /// <param name="aim">What each step makes smallest.</param>
    /// <param name="enough">A cost at which to stop.</param>
    /// <param name="pass">Which of the dives to make: the first takes the most used patterns, later ones leave more open and choose at random.</param>
    public CutSolution? From(int[] bars, MasterAim aim, long enough, int pass)
    {
        (this.aim, this.enough, best, bestCost) = (aim, enough, null, long.MaxValue);
        (random, noise, nodes) = (new(pass), pass == 0 ? 0 : 0.4, 60 + 20 * Math.Min(pass, 10));
        Go(new(instance, bars), pass % 4, Math.Min(pass, 2));
        return best;
    }

    bool IsOver => bestCost <= enough || nodes <= 0 || budget.IsSpent;

    void Go(Residual rest, int kept, int turns)
    {
        Keep(rest.FinishGreedily());
        nodes--;
        if (IsOver || rest.IsDone || !columns.Solve(rest.Demands, rest.Bars, aim, IsEnough)) return;
        if (columns.Master.Shortage > 1e-6) return;
        var uses = columns.Master.Patterns.Zip(columns.Master.Times, (p, x) => (Pattern: p, Times: x)).Where(u => u.Times > 1e-6).ToList();
        foreach (var (pattern, times) in uses)
            if ((int)(times + 1 - Whole) - kept is > 0 and var whole) rest.Take(pattern, whole);
        if (rest.IsDone) Keep(rest.Solution([]));
        var choices = uses
            .Select(u => (u.Pattern, Part: u.Times - Math.Floor(u.Times + 1 - Whole) + kept))
            .Where(u => u.Part > 1e-6 && rest.Bars[u.Pattern.Bar] > 0)
            .OrderByDescending(u => u.Part - Math.Floor(u.Part) + noise * random.NextDouble())
            .ThenByDescending(u => (double)u.Pattern.Width(instance) / instance.Bars[u.Pattern.Bar].Capacity)
            .ToList();
        for (var choice = 0; choice <= turns && choice < choices.Count && !IsOver; choice++)
        {
            var next = rest.Copy();
            if (next.Take(choices[choice].Pattern, 1) == 0) continue;
            foreach (var more in choices.Skip(choice + 1).Take(choices.Count / Batch))
                if (more.Pattern.IsWithin(next.Demands)) next.Take(more.Pattern, 1);
            Go(next, 0, turns - choice);
        }
    }

    void Keep(CutSolution? solution)
    {
        if (solution is not null && solution.Cost(instance) is var cost && cost < bestCost) (best, bestCost) = (solution, cost);
    }

    bool IsEnough(int round) => round >= 3 && columns.Master.Shortage < 1e-9;
}
