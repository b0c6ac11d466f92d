using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Kits.Cutting;

/// <summary>Turns a solution in whole numbers back into a plan in the job's own words.</summary>
sealed class CutPlanWriting
{
    readonly CutJob job;
    readonly CutInstance instance;
    readonly Stack<(string Code, int Left)>[] codes;
    readonly int[] lengths;

    CutPlanWriting(CutJob job, CutInstance instance)
    {
        (this.job, this.instance) = (job, instance);
        lengths = [.. CutInstance.PiecesByLength(job).Select(p => p.Tenths)];
        codes = [.. lengths.Select(l => new Stack<(string, int)>(
            job.Pieces.Where(p => p.CutLength.Tenths == l).GroupBy(p => p.Code).Select(g => (g.Key, g.Sum(p => p.Count))).Reverse()))];
    }

    /// <summary>The plan of a solution.</summary>
    public static CutPlan Write(CutJob job, CutInstance instance, CutSolution solution, long bound)
    {
        var writing = new CutPlanWriting(job, instance);
        var patterns = solution.Uses.SelectMany(writing.PatternsOf).ToList();
        var used = patterns.Sum(p => (long)p.Count * p.StockLength.Tenths);
        var kept = patterns.Where(p => p.Remnant >= job.ShortestRemnant).Sum(p => (long)p.Count * p.Remnant.Tenths);
        var pieces = job.Pieces.Sum(p => (long)p.Count * p.CutLength.Tenths);
        var cost = solution.Cost(instance);
        return new(
            [.. job.Stock.Select((s, k) => new StockUse(s.Sku, s.Length, BarsOf(k))).Where(u => u.Count > 0)],
            [.. patterns.OrderByDescending(p => p.Count)],
            (double)(used - kept - pieces) / used, bound * instance.CostUnit, cost == bound)
        {
            Measure = instance.Measure,
            Total = cost * instance.CostUnit,
        };

        int BarsOf(int source) => solution.Uses.Where(u => instance.Bars[u.Pattern.Bar].Source == source).Sum(u => u.Times);
    }

    /// <summary>A pattern by the codes of its pieces; more than one where pieces of a length have several codes.</summary>
    IEnumerable<CutPattern> PatternsOf((Pattern Pattern, int Times) use)
    {
        var left = use.Times;
        while (left > 0)
        {
            var times = left;
            for (var i = 0; i < lengths.Length; i++)
                if (use.Pattern.Counts[i] is > 0 and var count) times = Math.Min(times, Math.Max(1, codes[i].Peek().Left / count));
            yield return Pattern(use.Pattern, times);
            left -= times;
        }
    }

    CutPattern Pattern(Pattern pattern, int times)
    {
        var bar = instance.Bars[pattern.Bar];
        var stock = bar.IsRemnant ? null : job.Stock[bar.Source];
        var length = stock?.Length ?? RemnantOf(pattern.Bar);
        ImmutableArray<CutPiece> cuts = [.. Enumerable.Range(0, lengths.Length).SelectMany(i => Take(i, pattern.Counts[i], times))];
        var left = length.Tenths - (stock is null ? 0 : job.EndTrim.Tenths) - cuts.Sum(c => c.Count * (c.CutLength.Tenths + job.Kerf.Tenths));
        return new(times, stock?.Sku, length, cuts, Length.FromTenths(Math.Max(0, left)));
    }

    Length RemnantOf(int bar) => job.Remnants.Select(r => r.Length).Distinct().Order().ElementAt(bar);

    IEnumerable<CutPiece> Take(int type, int count, int times)
    {
        while (count > 0)
        {
            var (code, left) = codes[type].Pop();
            var taken = Math.Min(count, left / times);
            if (left > taken * times) codes[type].Push((code, left - taken * times));
            yield return new(code, Length.FromTenths(lengths[type]), taken);
            count -= taken;
        }
    }
}
