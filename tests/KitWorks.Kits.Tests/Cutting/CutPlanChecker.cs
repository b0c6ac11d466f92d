using KitWorks.Geometry;
using KitWorks.Kits.Cutting;

namespace KitWorks.Kits.Tests.Cutting;

/// <summary>Checks a plan against its job, from the public types alone and with none of the planner's code.</summary>
static class CutPlanChecker
{
    /// <summary>Plans a job and checks the plan.</summary>
    public static CutPlan Planned(CutJob job, TimeSpan? timeLimit = null)
    {
        var plan = CutPlanner.Plan(job, timeLimit).Value;
        Check(job, plan);
        return plan;
    }

    public static void Check(CutJob job, CutPlan plan)
    {
        CheckPieces(job, plan);
        foreach (var pattern in plan.Patterns) CheckPattern(job, pattern);
        CheckStock(job, plan);
        CheckTotals(job, plan);
        Assert.Equal(plan.Patterns.Select(p => p.Count).OrderDescending(), plan.Patterns.Select(p => p.Count));
    }

    static void CheckPieces(CutJob job, CutPlan plan)
    {
        var asked = job.Pieces.GroupBy(p => (p.Code, p.CutLength)).ToDictionary(g => g.Key, g => g.Sum(p => p.Count));
        var given = plan.Patterns.SelectMany(p => p.Cuts.Select(c => (c.Code, c.CutLength, Count: c.Count * p.Count)))
            .GroupBy(c => (c.Code, c.CutLength)).ToDictionary(g => g.Key, g => g.Sum(c => c.Count));
        Assert.Equal(asked.OrderBy(e => e.Key.Code).ThenBy(e => e.Key.CutLength), given.OrderBy(e => e.Key.Code).ThenBy(e => e.Key.CutLength));
    }

    static void CheckPattern(CutJob job, CutPattern pattern)
    {
        Assert.True(pattern.Count > 0);
        Assert.All(pattern.Cuts, c => Assert.True(c.Count > 0));
        var usable = pattern.StockLength.Tenths - (pattern.Sku is null ? 0 : job.EndTrim.Tenths);
        var pieces = pattern.Cuts.Sum(c => c.Count);
        var cut = pattern.Cuts.Sum(c => c.Count * c.CutLength.Tenths);
        Assert.True(pieces > 0);
        Assert.True(cut + (pieces - 1) * job.Kerf.Tenths <= usable, $"{cut} and {pieces - 1} kerfs do not fit {usable}");
        Assert.Equal(Math.Max(0, usable - cut - pieces * job.Kerf.Tenths), pattern.Remnant.Tenths);
    }

    static void CheckStock(CutJob job, CutPlan plan)
    {
        foreach (var group in plan.Patterns.Where(p => p.Sku is null).GroupBy(p => p.StockLength))
            Assert.True(group.Sum(p => p.Count) <= job.Remnants.Where(r => r.Length == group.Key).Sum(r => r.Count), "more remnants than there are");
        foreach (var group in plan.Patterns.Where(p => p.Sku is not null).GroupBy(p => (p.Sku, p.StockLength)))
        {
            var offers = job.Stock.Where(s => (s.Sku, s.Length) == group.Key).ToList();
            Assert.NotEmpty(offers);
            if (offers.All(o => o.Available is not null)) Assert.True(group.Sum(p => p.Count) <= offers.Sum(o => o.Available), "more stock than there is");
            Assert.Equal(plan.StockLengths.Where(u => (u.Sku, u.Length) == group.Key).Sum(u => u.Count), group.Sum(p => p.Count));
        }
        Assert.Equal(plan.Patterns.Where(p => p.Sku is not null).Sum(p => p.Count), plan.StockLengths.Sum(u => u.Count));
    }

    static void CheckTotals(CutJob job, CutPlan plan)
    {
        var total = plan.Measure switch
        {
            CutMeasure.Count => plan.StockLengths.Sum(u => u.Count),
            CutMeasure.Millimetres => plan.StockLengths.Sum(u => u.Count * u.Length.Tenths) / 10m,
            CutMeasure.Cost => plan.StockLengths.Sum(u => u.Count * job.Stock.First(s => (s.Sku, s.Length) == (u.Sku, u.Length)).Cost!.Value),
        };
        Assert.Equal(total, plan.Total);
        Assert.True(plan.LowerBound <= plan.Total);
        Assert.Equal(plan.LowerBound == plan.Total, plan.Proven);
        var used = plan.Patterns.Sum(p => (double)p.Count * p.StockLength.Tenths);
        var kept = plan.Patterns.Where(p => p.Remnant >= job.ShortestRemnant).Sum(p => (double)p.Count * p.Remnant.Tenths);
        var pieces = job.Pieces.Sum(p => (double)p.Count * p.CutLength.Tenths);
        Assert.Equal((used - kept - pieces) / used, plan.WasteRatio, 12);
        Assert.InRange(plan.WasteRatio, 0, 1);
    }
}
