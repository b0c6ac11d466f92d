namespace KitWorks.Kits.Cutting;

/// <summary>A condition that every plan's stock meets: Σ <paramref name="Worth"/>[k] · n[k] ≥ <paramref name="Need"/>, n[k] being the number of bars k.</summary>
/// <remarks>
/// Give each piece a worth. What all pieces are worth together is then no more than the bars taken, each at the most that one
/// pattern of it can be worth (weak duality of the Gilmore–Gomory programme, in whole numbers). The widths themselves are such worths.
/// </remarks>
sealed record StockCut(long[] Worth, long Need)
{
    /// <summary>The condition that the widths give: the material must be there.</summary>
    public static StockCut OfMaterial(CutInstance instance) => new(
        [.. instance.Bars.Select(b => b.Capacity < instance.Widths[^1] ? 0L : b.Capacity)],
        instance.Widths.Zip(instance.Demands, (w, d) => (long)w * d).Sum());
}

/// <summary>
/// The cheapest whole numbers of bars that meet a set of conditions, by depth-first branch and bound: the bound of a node is
/// the dearest of the conditions, each met in fractions. Numbers near a hint are tried first: near the linear programme's
/// own mix are those that do.
/// </summary>
sealed class StockMix
{
    /// <summary>Nodes looked at before the bound is left in fractions.</summary>
    const int MostNodes = 100_000;

    readonly CutInstance instance;
    readonly IReadOnlyList<StockCut> cuts;
    readonly int[] order;
    readonly int[][] byWorth;
    readonly int[] chosen;
    readonly double[] hint;
    readonly long[] steps;
    readonly IReadOnlyCollection<int[]> excluded;
    long floor;
    long best;
    int[]? bestMix;

    StockMix(CutInstance instance, IReadOnlyList<StockCut> cuts, IReadOnlyCollection<int[]> excluded, double[]? hint, long below)
    {
        (this.instance, this.cuts, this.excluded, best) = (instance, cuts, excluded, below);
        this.hint = hint ?? new double[instance.Bars.Length];
        chosen = [.. instance.Bars.Select(b => b.IsRemnant ? b.Available : 0)];
        order = [.. Enumerable.Range(0, chosen.Length).Where(k => !instance.Bars[k].IsRemnant && instance.Bars[k].Available > 0)
            .OrderByDescending(k => instance.Bars[k].Cost / Math.Max(1.0, cuts[^1].Worth[k]))];
        steps = [.. Enumerable.Range(0, order.Length + 1).Select(depth => order.Skip(depth).Aggregate(0L, (g, k) => CutInstance.Gcd(g, instance.Bars[k].Cost)))];
        byWorth = [.. cuts.Select(c => order.Select((bar, depth) => (bar, depth)).Where(x => c.Worth[x.bar] > 0)
            .OrderBy(x => (double)instance.Bars[x.bar].Cost / c.Worth[x.bar]).Select(x => x.depth).ToArray())];
    }

    /// <summary>Nodes looked at.</summary>
    public int Nodes { get; private set; }

    /// <summary>
    /// The cheapest mix that costs less than <paramref name="below"/> and is not within one excluded, or null. The bound holds
    /// whether or not a mix is found; it is <paramref name="below"/> where there is none.
    /// </summary>
    public static (int[]? Mix, long Bound, int Nodes) Cheapest(
        CutInstance instance, IReadOnlyList<StockCut> cuts, IReadOnlyCollection<int[]> excluded, double[]? hint, long below = long.MaxValue)
    {
        var search = new StockMix(instance, cuts, excluded, hint, below);
        var need = cuts.Select(c => c.Need - instance.Bars.Select((b, k) => b.IsRemnant ? c.Worth[k] * b.Available : 0).Sum()).ToArray();
        search.floor = search.RoundedUp(0, search.InFractions(0, need));
        if (search.floor < below) search.Branch(0, need, 0);
        return (search.bestMix, search.Nodes >= MostNodes ? Math.Min(below, search.floor) : search.best, search.Nodes);
    }

    bool IsOver => Nodes >= MostNodes || best <= floor;

    void Branch(int depth, long[] need, long cost)
    {
        if (depth == order.Length)
        {
            if (need.All(n => n <= 0) && cost < best && !excluded.Any(IsWithin)) (best, bestMix) = (cost, [.. chosen]);
            return;
        }
        var first = Fewest(depth, need);
        var most = instance.Bars[order[depth]].Available;
        if (first > most) return;
        var start = depth == order.Length - 1 ? first : Math.Clamp((int)Math.Round(hint[order[depth]]), first, most);
        var (up, down, afterUp, afterDown) = (start, start - 1, double.NaN, double.NaN);
        while ((up <= most || down >= first) && !IsOver)
        {
            if (up <= most) up = Try(depth, up, need, cost, ref afterUp, isRising: true) ? up + 1 : int.MaxValue;
            if (down >= first && !IsOver) down = Try(depth, down, need, cost, ref afterDown, isRising: false) ? down - 1 : -1;
        }
        chosen[order[depth]] = 0;
    }

    /// <summary>
    /// Branches on a number of bars; false where numbers further on need not be tried. The bound is convex in the number: where
    /// it is too high and no lower than at the number before, it stays too high.
    /// </summary>
    bool Try(int depth, int number, long[] need, long cost, ref double before, bool isRising)
    {
        Nodes++;
        var bar = order[depth];
        var spent = cost + number * instance.Bars[bar].Cost;
        if (spent >= best) return !isRising;
        var rest = new long[need.Length];
        for (var t = 0; t < rest.Length; t++) rest[t] = need[t] - number * cuts[t].Worth[bar];
        var more = InFractions(depth + 1, rest);
        if (double.IsPositiveInfinity(more)) return isRising;
        var bound = spent + more;
        if (spent + RoundedUp(depth + 1, more) < best)
        {
            chosen[bar] = number;
            Branch(depth + 1, rest, spent);
        }
        var isTooHigh = Math.Ceiling(bound * (1 - 1e-9) - 1e-6) >= best;
        var goesOn = !isTooHigh || !(bound >= before);
        before = bound;
        return goesOn;
    }

    /// <summary>Where some bars are too few, fewer are too.</summary>
    bool IsWithin(int[] mix)
    {
        for (var k = 0; k < mix.Length; k++)
            if (chosen[k] > mix[k]) return false;
        return true;
    }

    /// <summary>The fewest of the bars at a depth: of the last, what is still needed.</summary>
    int Fewest(int depth, long[] need)
    {
        if (depth < order.Length - 1) return 0;
        var fewest = 0L;
        for (var t = 0; t < need.Length; t++)
            if (need[t] > 0) fewest = Math.Max(fewest, cuts[t].Worth[order[depth]] is var w and > 0 ? (need[t] + w - 1) / w : int.MaxValue);
        return (int)Math.Min(fewest, int.MaxValue);
    }

    /// <summary>What the rest costs at the least, each condition met in fractions by the bars from <paramref name="depth"/> on.</summary>
    double InFractions(int depth, long[] need)
    {
        var dearest = 0.0;
        for (var t = 0; t < need.Length; t++)
        {
            var (rest, cost) = ((double)need[t], 0.0);
            foreach (var d in byWorth[t])
            {
                if (rest <= 0) break;
                if (d < depth) continue;
                var bar = instance.Bars[order[d]];
                var taken = Math.Min(bar.Available, rest / cuts[t].Worth[order[d]]);
                rest -= taken * cuts[t].Worth[order[d]];
                cost += taken * bar.Cost;
            }
            if (rest > 0.5) return double.PositiveInfinity;
            dearest = Math.Max(dearest, cost);
        }
        return dearest;
    }

    /// <summary>
    /// Rounded up to what bars from a depth on can cost, which is a multiple of what their costs have in common; a little less
    /// than that is taken to be what the arithmetic added.
    /// </summary>
    long RoundedUp(int depth, double cost)
    {
        if (cost >= long.MaxValue) return long.MaxValue;
        var whole = Math.Max(0, (long)Math.Ceiling(cost * (1 - 1e-9) - 1e-6));
        return steps[depth] == 0 ? whole : (whole + steps[depth] - 1) / steps[depth] * steps[depth];
    }
}
