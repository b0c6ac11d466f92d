namespace KitWorks.Kits.Cutting;

/// <summary>
/// What the pieces are worth at the best of the linear programme by cost, in whole numbers: <paramref name="Values"/> are
/// the duals times <paramref name="Scale"/>, where the dearest bar costs <paramref name="Scale"/>.
/// </summary>
/// <param name="Values">The worth of one piece of each type.</param>
/// <param name="Scale">What the duals were multiplied by.</param>
/// <param name="Cut">The condition on the stock that they give.</param>
sealed record DualSolution(int[] Values, double Scale, StockCut Cut)
{
    /// <summary>
    /// What a pattern of each bar must be worth at the least to be of use in a plan that costs less than <paramref name="cost"/>
    /// (reduced-cost fixing).
    /// </summary>
    /// <remarks>
    /// Let v be the values, c[k] the scaled cost of bar k, z[k] the most that a pattern of it is worth, t[k] = max(0, z[k] − c[k])
    /// and A[k] the bars available. Each use of a pattern p of bar k loses r = c[k] + t[k] − v·p ≥ 0, and the scaled cost of a
    /// plan is at least Σ r + Σ v·demand − Σ t[k]·A[k]. A pattern whose loss alone takes this to <paramref name="cost"/> is of no use.
    /// </remarks>
    public long[] LeastWorth(CutInstance instance, long cost)
    {
        var unit = Scale / instance.Bars.Max(b => (double)Math.Max(1, b.Cost));
        double[] costs = [.. instance.Bars.Select(b => b.Cost * unit)];
        double[] tolls = [.. costs.Select((c, k) => Math.Max(0, Cut.Worth[k] - c))];
        var gap = (cost - 1) * unit - Cut.Need + tolls.Select((t, k) => t * instance.Bars[k].Available).Sum();
        // A hair's breadth to spare: a pattern too many does no harm.
        return [.. costs.Select((c, k) => (long)Math.Floor(c + tolls[k] - gap - 1e-7 * Scale))];
    }
}
