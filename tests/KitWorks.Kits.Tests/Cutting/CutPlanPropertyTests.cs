using CsCheck;
using KitWorks.Geometry;
using KitWorks.Kits.Cutting;
using static KitWorks.Kits.Tests.Cutting.Jobs;

namespace KitWorks.Kits.Tests.Cutting;

public class CutPlanPropertyTests
{
    /// <summary>Work is limited and the clock is not, so that a busy machine gives the same plans.</summary>
    static SearchBudget Budget => new(TimeSpan.FromMinutes(5), 0.3);

    static readonly Gen<CutPiece> Pieces = Gen.Select(Gen.Int[500, 24000], Gen.Int[1, 40], (tenths, count) => new CutPiece($"L{tenths % 7}", Length.FromTenths(tenths), count));

    static readonly Gen<StockLength> Stock = Gen.Select(
        Gen.Int[24000, 65000], Gen.Int[100, 2000], Gen.Int[-20, 30],
        (tenths, cents, available) => new StockLength($"P{tenths}-{cents}", Length.FromTenths(tenths), cents / 100m, available < 0 ? null : available));

    static readonly Gen<CutJob> AnyJob = Gen.Select(
        Pieces.Array[1, 15], Stock.Array[1, 3], Gen.Select(Gen.Int[300, 25000], Gen.Int[1, 4], (t, n) => new Remnant(Length.FromTenths(t), n)).Array[0, 3],
        Gen.Int[0, 50], Gen.Int[0, 100], Gen.Bool,
        (pieces, stock, remnants, kerf, trim, hasCosts) => new CutJob
        {
            Pieces = [.. pieces],
            Stock = [.. stock.DistinctBy(s => s.Sku).Select(s => hasCosts ? s : s with { Cost = null })],
            Remnants = [.. remnants],
            Kerf = Length.FromTenths(kerf),
            EndTrim = Length.FromTenths(trim),
        });

    [Fact]
    public void Plan_WhateverTheJob_IsRightAndNoWorseThanFirstFit() => AnyJob.Sample(job =>
    {
        var outcome = CutPlanner.Plan(job, Budget);
        if (outcome.Refusal is { } refusal)
        {
            Assert.Contains(refusal.Code, new[] { "cut-plan.stock-short", "cut-plan.piece-too-long" });
            return;
        }
        CutPlanChecker.Check(job, outcome.Value);
        var instance = CutInstance.Of(job);
        if (GreedyCutting.Best(instance) is { } greedy) Assert.True(outcome.Value.Total <= greedy.Cost(instance) * instance.CostUnit);
    }, iter: 150, seed: "0000KitWorks1", threads: 1);

    [Fact]
    public void Plan_WhenAskedTwice_GivesTheSamePlan() => AnyJob.Sample(job =>
    {
        var (first, second) = (CutPlanner.Plan(job, Budget), CutPlanner.Plan(job, Budget));
        Assert.Equal(first.Refusal?.Code, second.Refusal?.Code);
        if (first.Refusal is null) Assert.Equal(Written(first.Value), Written(second.Value));
    }, iter: 40, seed: "0000KitWorks2", threads: 1);

    [Fact]
    public void Plan_WhenEveryLengthIsDoubled_NeedsAsManyBars() => AnyJob.Sample(job =>
    {
        var once = job with { Stock = [job.Stock[0] with { Cost = null, Available = null, Length = Mm(3048) }], Pieces = [.. job.Pieces.Where(p => p.CutLength < Mm(3000)).DefaultIfEmpty(new("S", Mm(1), 1))] };
        var (plan, doubled) = (CutPlanner.Plan(once, Budget).Value, CutPlanner.Plan(Doubled(once), Budget).Value);
        Assert.Equal((plan.LowerBound, plan.Total), (doubled.LowerBound, doubled.Total));
    }, iter: 40, seed: "0000KitWorks3", threads: 1);

    [Fact]
    public void Plan_OfShopSizeJobs_IsProvenOrWithinOneStockLengthOfTheBound()
    {
        var proven = 0;
        for (var seed = 1; seed <= 24; seed++)
        {
            var job = ShopJobs.Of(seed);
            var plan = CutPlanner.Plan(job, new SearchBudget(TimeSpan.FromMinutes(5), 0.8)).Value;
            CutPlanChecker.Check(job, plan);
            if (plan.Proven) proven++;
            else Assert.True(plan.Total - plan.LowerBound <= job.Stock.Min(s => s.Cost ?? (decimal)s.Length.Millimetres), $"{seed}: {plan.Total} over {plan.LowerBound}");
        }
        Assert.True(proven >= 23, $"{proven} of 24 are proven");
    }

    static CutJob Doubled(CutJob job) => job with
    {
        Pieces = [.. job.Pieces.Select(p => p with { CutLength = Twice(p.CutLength) })],
        Stock = [.. job.Stock.Select(s => s with { Length = Twice(s.Length) })],
        Remnants = [.. job.Remnants.Select(r => r with { Length = Twice(r.Length) })],
        Kerf = Twice(job.Kerf),
        EndTrim = Twice(job.EndTrim),
        ShortestRemnant = Twice(job.ShortestRemnant),
    };

    static Length Twice(Length length) => Length.FromTenths(2 * length.Tenths);

    static string Written(CutPlan plan) => string.Join("\n", plan.Patterns.Select(p =>
        $"{p.Count} × {p.Sku} {p.StockLength}: {string.Join(", ", p.Cuts.Select(c => $"{c.Count} {c.Code} {c.CutLength}"))}")) + plan.LowerBound;
}
