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
/// the dearest of the conditions, each met in fractions.
/// </summary>
sealed class StockMix
{
    /// <summary>Nodes looked at before the bound is left in fractions.</summary>
    const int MostNodes = 300_000;

    readonly CutInstance instance;
    readonly IReadOnlyList<StockCut> cuts;
    readonly int[] order;
    readonly int[][] byWorth;
    readonly int[] chosen;
    readonly IReadOnlyCollection<int[]> excluded;
    int nodes;
    long best;
    int[]? bestMix;

    StockMix(CutInstance instance, IReadOnlyList<StockCut> cuts, IReadOnlyCollection<int[]> excluded, long below)
    {
        (this.instance, this.cuts, this.excluded, best) = (instance, cuts, excluded, below);
        chosen = new int[instance.Bars.Length];
        order = [.. Enumerable.Range(0, chosen.Length).Where(k => !instance.Bars[k].IsRemnant)
            .OrderByDescending(k => instance.Bars[k].Cost / Math.Max(1.0, cuts[0].Worth[k]))];
        byWorth = [.. cuts.Select(c => order.Select((bar, depth) => (bar, depth)).Where(x => c.Worth[x.bar] > 0)
            .OrderBy(x => (double)instance.Bars[x.bar].Cost / c.Worth[x.bar]).Select(x => x.depth).ToArray())];
    }

    /// <summary>The cheapest mix that costs less than <paramref name="below"/> and is not excluded; its bound holds whether or not a mix is found.</summary>
    public static (int[]? Mix, long Bound) Cheapest(
        CutInstance instance, IReadOnlyList<StockCut> cuts, IReadOnlyCollection<int[]> excluded, long below = long.MaxValue)
    {
        var search = new StockMix(instance, cuts, excluded, below);
        var need = cuts.Select(c => c.Need - instance.Bars.Select((b, k) => b.IsRemnant ? c.Worth[k] * b.Available : 0).Sum()).ToArray();
        for (var k = 0; k < search.chosen.Length; k++)
            if (instance.Bars[k].IsRemnant) search.chosen[k] = instance.Bars[k].Available;
        var inFractions = search.InFractions(0, need);
        search.Branch(0, need, 0);
        var bound = search.nodes >= MostNodes ? inFractions : search.best;
        return (search.bestMix, bound);
    }

    void Branch(int depth, long[] need, long cost)
    {
        if (++nodes >= MostNodes) return;
        if (depth == order.Length)
        {
            if (need.Any(n => n > 0) || cost >= best || excluded.Any(e => e.SequenceEqual(chosen))) return;
            (best, bestMix) = (cost, [.. chosen]);
            return;
        }
        var bar = order[depth];
        var first = depth == order.Length - 1 ? Fewest(bar, need) : 0;
        var before = long.MaxValue;
        for (var n = first; n <= instance.Bars[bar].Available && nodes < MostNodes; n++)
        {
            var rest = need.Select((r, t) => r - n * cuts[t].Worth[bar]).ToArray();
            var bound = InFractions(depth + 1, rest) is var b && b == long.MaxValue ? b : b + cost + n * instance.Bars[bar].Cost;
            if (bound >= best && bound >= before && before != long.MaxValue) break;
            before = bound;
            if (bound >= best) continue;
            chosen[bar] = n;
            Branch(depth + 1, rest, cost + n * instance.Bars[bar].Cost);
        }
        chosen[bar] = 0;
    }

    int Fewest(int bar, long[] need)
    {
        var fewest = 0L;
        for (var t = 0; t < need.Length; t++)
            if (need[t] > 0) fewest = Math.Max(fewest, cuts[t].Worth[bar] == 0 ? int.MaxValue : (need[t] + cuts[t].Worth[bar] - 1) / cuts[t].Worth[bar]);
        return (int)Math.Min(fewest, int.MaxValue);
    }

    /// <summary>What the rest costs at the least, each condition met in fractions by the bars from <paramref name="depth"/> on.</summary>
    long InFractions(int depth, long[] need)
    {
        var dearest = 0L;
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
            if (rest > 0.5) return long.MaxValue;
            dearest = Math.Max(dearest, (long)Math.Ceiling(cost * (1 - 1e-12) - 1e-6));
        }
        return dearest;
    }
}
