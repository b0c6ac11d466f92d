using KitWorks.Geometry;
using KitWorks.Kits.Cutting;
using static KitWorks.Kits.Tests.Cutting.Jobs;

namespace KitWorks.Kits.Tests.Cutting;

public class CutPlannerTests
{
    [Fact]
    public void Plan_WhenPiecesAndKerfsFillALength_NeedsOneKerfLess()
    {
        var plan = CutPlanChecker.Planned(Of(3006, (1000, 3)));
        Assert.Equal(1, plan.StockLengths.Single().Count);
        Assert.Equal(0, plan.Patterns.Single().Remnant.Tenths);
        Assert.Equal(2, CutPlanChecker.Planned(Of(3005.9, (1000, 3))).StockLengths.Single().Count);
    }

    [Fact]
    public void Plan_WhenStockIsTrimmed_CutsFromWhatIsLeft()
    {
        var job = Of(3020, (1000, 3)) with { EndTrim = Mm(14) };
        Assert.Equal(1, CutPlanChecker.Planned(job).StockLengths.Single().Count);
        Assert.Equal(2, CutPlanChecker.Planned(job with { EndTrim = Mm(14.1) }).StockLengths.Single().Count);
    }

    [Fact]
    public void Plan_WhenARemnantTakesAPiece_OpensNoStock()
    {
        var plan = CutPlanChecker.Planned(Of(3048, (900, 2)) with { Remnants = [new(Mm(900), 2)] });
        Assert.Empty(plan.StockLengths);
        Assert.Equal((0m, true, 0.0), (plan.Total, plan.Proven, plan.WasteRatio));
    }

    [Fact]
    public void Plan_WhenSeveralLengthsHaveNoCosts_BuysTheFewestMillimetres()
    {
        var job = Of(6000, (1497, 3)) with { Stock = [new("SIX", Mm(6000)), new("FOUR", Mm(4500))] };
        var plan = CutPlanChecker.Planned(job);
        Assert.Equal((4500m, CutMeasure.Millimetres, true), (plan.Total, plan.Measure, plan.Proven));
    }

    [Fact]
    public void Plan_WhenCostsAreGiven_BuysTheCheapest()
    {
        var job = Of(6000, (1497, 4)) with { Stock = [new("SIX", Mm(6000), 7.50m), new("THREE", Mm(3000), 3.60m)] };
        var plan = CutPlanChecker.Planned(job);
        Assert.Equal((7.20m, CutMeasure.Cost, true), (plan.Total, plan.Measure, plan.Proven));
    }

    [Fact]
    public void Plan_WhenTheCheapestRunsOut_TakesTheNext()
    {
        var job = Of(6000, (1497, 6)) with { Stock = [new("SIX", Mm(6000), 7.50m), new("THREE", Mm(3000), 3.60m, Available: 1)] };
        Assert.Equal(11.10m, CutPlanChecker.Planned(job).Total);
    }

    [Fact]
    public void Plan_WhenALengthHasSeveralCodes_KeepsThemApart()
    {
        var job = Of(3048, (1000, 4), (1000, 3), (500, 5));
        Assert.Equal(12, CutPlanChecker.Planned(job).Patterns.Sum(p => p.Count * p.Cuts.Sum(c => c.Count)));
    }

    public static TheoryData<string, string> Broken => new()
    {
        { "cut-plan.pieces-missing", "pieces" },
        { "cut-plan.stock-missing", "stock" },
        { "cut-plan.piece-too-long", "pieces/1/cutLength" },
        { "cut-plan.piece-length", "pieces/0/cutLength" },
        { "cut-plan.piece-count", "pieces/0/count" },
        { "cut-plan.too-large", "pieces" },
        { "cut-plan.stock-length", "stock/0/length" },
        { "cut-plan.stock-available", "stock/0/available" },
        { "cut-plan.stock-short", "stock" },
        { "cut-plan.cost-missing", "stock/1/cost" },
        { "cut-plan.cost-invalid", "stock/0/cost" },
        { "cut-plan.remnant-length", "remnants/0/length" },
        { "cut-plan.remnant-count", "remnants/0/count" },
    };

    [Theory, MemberData(nameof(Broken))]
    public void Plan_WhenAFieldIsWrong_SaysWhich(string code, string field)
    {
        var job = Of(3048, (1000, 5));
        var refusal = CutPlanner.Plan(Break(job, code)).Refusal;
        Assert.Equal((code, field), (refusal?.Code, refusal?.Errors.Single().Field));
    }

    static CutJob Break(CutJob job, string code) => code switch
    {
        "cut-plan.pieces-missing" => job with { Pieces = [] },
        "cut-plan.stock-missing" => job with { Stock = [] },
        "cut-plan.piece-too-long" => job with { Pieces = job.Pieces.Add(new("S2", Mm(3048.1), 1)) },
        "cut-plan.piece-length" => job with { Pieces = [new("S1", Length.Zero, 1)] },
        "cut-plan.piece-count" => job with { Pieces = [new("S1", Mm(1000), 0)] },
        "cut-plan.too-large" => job with { Pieces = [new("S1", Mm(1000), int.MaxValue), new("S2", Mm(900), int.MaxValue)] },
        "cut-plan.stock-length" => job with { EndTrim = Mm(3048) },
        "cut-plan.stock-available" => job with { Stock = [new("PIPE", Mm(3048), Available: -1)] },
        "cut-plan.stock-short" => job with { Stock = [new("PIPE", Mm(3048), Available: 1)] },
        "cut-plan.cost-missing" => job with { Stock = [new("PIPE", Mm(3048), 1m), new("LONG", Mm(6000))] },
        "cut-plan.cost-invalid" => job with { Stock = [new("PIPE", Mm(3048), 0.00001m)] },
        "cut-plan.remnant-length" => job with { Remnants = [new(Length.Zero, 1)] },
        "cut-plan.remnant-count" => job with { Remnants = [new(Mm(900), 0)] },
        _ => throw new ArgumentOutOfRangeException(nameof(code), code, null),
    };
}
