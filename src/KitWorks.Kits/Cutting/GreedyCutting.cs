namespace KitWorks.Kits.Cutting;

/// <summary>
/// First-fit decreasing over bars of several lengths: the remnants first, then for the longest piece left the first stock
/// length in an order of preference that takes it. Every order that prefers one stock length is tried, with the shortest
/// and with the longest remnants first; then each bar is exchanged for the cheapest that holds what is cut from it.
/// </summary>
sealed class GreedyCutting
{
    readonly CutInstance instance;
    readonly int[] left;
    readonly int[] free;
    readonly List<(Pattern Pattern, int Times)> uses = [];

    GreedyCutting(CutInstance instance)
    {
        this.instance = instance;
        left = [.. instance.Demands];
        free = [.. instance.Bars.Select(b => b.Available)];
    }

    /// <summary>The cheapest plan found, or null where the stock runs out in every order.</summary>
    public static CutSolution? Best(CutInstance instance) => Orders(instance)
        .Select(o => new GreedyCutting(instance).Fill(o.Remnants, o.Stock))
        .OfType<CutSolution>()
        .MinBy(s => (s.Cost(instance), s.Uses.Length));

    static IEnumerable<(int[] Remnants, int[] Stock)> Orders(CutInstance instance)
    {
        int[] bars = [.. Enumerable.Range(0, instance.Bars.Length)];
        int[] remnants = [.. bars.Where(k => instance.Bars[k].IsRemnant)];
        int[] cheapest = [.. bars.Where(k => !instance.Bars[k].IsRemnant).OrderBy(k => (double)instance.Bars[k].Cost / instance.Bars[k].Capacity)];
        int[] shortest = [.. cheapest.OrderBy(k => instance.Bars[k].Capacity)];
        int[][] orders = [cheapest, shortest, [.. shortest.Reverse()], .. cheapest.Skip(1).Select(k => (int[])[k, .. cheapest.Where(j => j != k)])];
        foreach (var order in orders)
        {
            yield return (remnants, order);
            if (remnants.Length > 1) yield return ([.. remnants.Reverse()], order);
        }
    }

    CutSolution? Fill(int[] remnants, int[] stock)
    {
        foreach (var bar in remnants)
            while (free[bar] > 0 && Cut(bar)) { }
        for (var longest = 0; longest < left.Length; longest++)
            while (left[longest] > 0)
            {
                var bar = Array.FindIndex(stock, k => free[k] > 0 && instance.Bars[k].Capacity >= instance.Widths[longest]);
                if (bar < 0) return null;
                Cut(stock[bar]);
            }
        Exchange();
        return new([.. uses]);
    }

    /// <summary>Cuts the longest pieces left that fit, as often as the pieces and the bars allow.</summary>
    bool Cut(int bar)
    {
        var room = instance.Bars[bar].Capacity;
        var counts = new int[left.Length];
        var times = free[bar];
        for (var i = 0; i < left.Length; i++)
        {
            counts[i] = Math.Min(left[i], room / instance.Widths[i]);
            if (counts[i] == 0) continue;
            room -= counts[i] * instance.Widths[i];
            times = Math.Min(times, left[i] / counts[i]);
        }
        if (room == instance.Bars[bar].Capacity) return false;
        for (var i = 0; i < left.Length; i++) left[i] -= times * counts[i];
        free[bar] -= times;
        uses.Add((new(bar, [.. counts]), times));
        return true;
    }

    void Exchange()
    {
        for (var u = 0; u < uses.Count; u++)
        {
            var (pattern, times) = uses[u];
            var width = pattern.Width(instance);
            var cheaper = Enumerable.Range(0, free.Length)
                .Where(k => free[k] > 0 && instance.Bars[k].Capacity >= width && instance.Bars[k].Cost < instance.Bars[pattern.Bar].Cost)
                .OrderBy(k => instance.Bars[k].Cost)
                .Cast<int?>().FirstOrDefault();
            if (cheaper is not { } bar) continue;
            var moved = Math.Min(times, free[bar]);
            free[bar] -= moved;
            free[pattern.Bar] += moved;
            uses[u] = (pattern with { Bar = bar }, moved);
            if (moved < times) uses.Add((pattern, times - moved));
        }
    }
}
