using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Cutting;
using KitWorks.Kits.Packing;

namespace KitWorks.Kits.Batches;

/// <summary>
/// Plans the pipe of several orders as one: struts that lie ready cut are picked first, then remnants are used where they
/// help, and the rest is cut from new lengths. Struts that are equal at the saw are cut together and traced back to their bundles.
/// </summary>
public static class BatchPlanner
{
    /// <summary>The plan of a batch.</summary>
    /// <param name="orders">The orders, one or more.</param>
    /// <param name="ready">Struts that lie ready cut.</param>
    /// <param name="remnants">Remnants in stock.</param>
    /// <param name="workshop">The saw.</param>
    /// <param name="timeLimit">How long to look for a better plan of one pipe; null for three seconds.</param>
    public static Outcome<BatchPlan> Plan(
        IReadOnlyList<BatchOrder> orders, IReadOnlyList<CutStruts> ready, IReadOnlyList<LabelledRemnant> remnants, Workshop workshop, TimeSpan? timeLimit = null)
    {
        ArgumentNullException.ThrowIfNull(workshop);
        var pipes = ImmutableArray.CreateBuilder<PipePlan>();
        foreach (var ofPipe in orders.GroupBy(o => PipeOf(o.Kit)).OrderBy(g => g.Key.Sku, StringComparer.Ordinal))
        {
            var pipe = new PipeBatch(ofPipe.Key.Sku, ofPipe.Key.Length, [.. ofPipe], workshop, timeLimit ?? TimeSpan.FromSeconds(3));
            if (!pipe.Plan(ready, remnants, pipes.Sum(p => p.Pieces.Length), pipes.Sum(p => p.Patterns.Length)).Succeeds(out var plan, out var refusal)) return refusal;
            pipes.Add(plan);
        }
        return new BatchPlan(pipes.ToImmutable(), workshop.Kerf);
    }

    static (string Sku, Length Length) PipeOf(Kit kit) => (kit.CutPlan.StockLengths[0].Sku, kit.CutPlan.StockLengths[0].Length);
}

/// <summary>The part of a batch that is cut from one pipe.</summary>
sealed class PipeBatch(string sku, Length length, List<BatchOrder> orders, Workshop workshop, TimeSpan timeLimit)
{
    public Outcome<PipePlan> Plan(IReadOnlyList<CutStruts> ready, IReadOnlyList<LabelledRemnant> remnants, int piecesBefore, int patternsBefore)
    {
        var pieces = Pieces(ready, piecesBefore);
        var own = remnants.Where(r => r.PipeSku == sku).OrderBy(r => r.Length).ThenBy(r => r.Code, StringComparer.Ordinal).ToList();
        var plan = new PipePlan { PipeSku = sku, Pieces = pieces, Patterns = [], Lengths = 0, WasteMm = 0, LengthsApart = LengthsApart, WasteMmApart = WasteApart };
        if (pieces.All(p => p.Cut == 0)) return plan;
        var job = new CutJob
        {
            Pieces = [.. pieces.Where(p => p.Cut > 0).Select(p => new CutPiece(p.Code, p.CutLength, p.Cut))],
            Stock = [new(sku, length)],
            Remnants = [.. own.GroupBy(r => r.Length).Select(g => new Remnant(g.Key, g.Count()))],
            Kerf = workshop.Kerf,
            EndTrim = workshop.EndTrim,
            ShortestRemnant = workshop.ShortestRemnant,
        };
        return CutPlanner.Plan(job, timeLimit).Select(cut => plan with
        {
            CutPlan = cut,
            Patterns = Numbered(cut, own, patternsBefore),
            Lengths = cut.StockLengths.Sum(s => s.Count),
            WasteMm = Waste(cut),
        });
    }

    ImmutableArray<BatchPiece> Pieces(IReadOnlyList<CutStruts> ready, int before)
    {
        var readyOf = ready.Where(r => r.PipeSku == sku).GroupBy(r => r.CutLength).ToDictionary(g => g.Key, g => g.Sum(r => r.Count));
        return
        [
            .. orders.OrderBy(o => o.Number).SelectMany(Struts).GroupBy(s => s.Length, s => s.Goes).OrderBy(g => g.Key).Select((g, i) =>
            {
                var needed = g.Sum(d => d.Count);
                var picked = Math.Min(needed, readyOf.GetValueOrDefault(g.Key));
                return new BatchPiece($"L{before + i + 1}", g.Key, picked, needed - picked, [.. g]);
            }),
        ];
    }

    static IEnumerable<(Length Length, StrutDestination Goes)> Struts(BatchOrder order)
    {
        var types = order.Kit.StrutTypes.ToDictionary(t => t.Code);
        return from kit in Enumerable.Range(0, order.Quantity)
               from bundle in order.Kit.Bundles
               where bundle.Kind == BundleKind.Struts
               from item in bundle.Contents
               let type = types[item.Code!]
               select (type.CutLength, new StrutDestination(order.Number, kit * order.Kit.Bundles.Length + bundle.Number, type.Code, type.Tag, item.Count));
    }

    static ImmutableArray<BatchPattern> Numbered(CutPlan cut, List<LabelledRemnant> remnants, int before)
    {
        var left = remnants.GroupBy(r => r.Length).ToDictionary(g => g.Key, g => new Queue<string>(g.Select(r => r.Code)));
        return
        [
            .. cut.Patterns.Select((pattern, i) => new BatchPattern(before + i + 1, pattern,
                pattern.Sku is null ? [.. Enumerable.Range(0, pattern.Count).Select(_ => left[pattern.StockLength].Dequeue())] : [])),
        ];
    }

    int LengthsApart => orders.Sum(o => o.Quantity * o.Kit.CutPlan.StockLengths.Sum(s => s.Count));

    long WasteApart => orders.Sum(o => o.Quantity * Waste(o.Kit.CutPlan));

    /// <summary>What becomes neither a strut nor a remnant worth keeping.</summary>
    long Waste(CutPlan plan) => plan.Patterns.Sum(p => (long)p.Count
        * (p.StockLength.Tenths - p.Cuts.Sum(c => c.Count * c.CutLength.Tenths) - (p.Remnant >= workshop.ShortestRemnant ? p.Remnant.Tenths : 0))) / 10;
}
