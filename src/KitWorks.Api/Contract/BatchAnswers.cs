using KitWorks.Kits.Batches;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Sawing;

namespace KitWorks.Api.Contract;

/// <summary>A batch of orders whose pipe is cut as one.</summary>
sealed record BatchView(
    Guid Id, int Number, BatchStatus Status, IEnumerable<BatchedOrderAnswer> Orders, IEnumerable<PipeView> Pipes, IEnumerable<StockLine> Reservations,
    string MadeBy, DateTimeOffset MadeAt, string CutSheet)
{
    public static BatchView Of(BatchAnswer b) => new(
        b.Id, b.Number, b.Status, b.Orders, b.Plan.Pipes.Select(p => PipeView.Of(p, b.Patterns.ToDictionary(x => x.Number, x => x.Cut))), b.Reservations,
        b.MadeBy, b.MadeAt, $"/api/batches/{b.Id}/cut-sheet.pdf");
}

/// <summary>What a batch of these orders would be.</summary>
sealed record BatchPreview(IEnumerable<PipeView> Pipes)
{
    public static BatchPreview Of(BatchPlan plan) => new(plan.Pipes.Select(p => PipeView.Of(p, [])));
}

/// <summary>How one pipe is cut in a batch, and what that saves against cutting each kit by itself.</summary>
sealed record PipeView(
    string Sku, SavingView Saving, CutPlanAnswer? CutPlan, IEnumerable<BatchPatternView> Patterns, IEnumerable<BatchPieceView> Pieces)
{
    public static PipeView Of(PipePlan p, Dictionary<int, int> cut) => new(
        p.PipeSku,
        new(p.Lengths, p.LengthsApart, p.LengthsApart - p.Lengths, p.WasteMm, p.WasteMmApart, p.Pieces.Sum(x => x.Picked), p.Patterns.Sum(x => x.Remnants.Length)),
        p.CutPlan is null ? null : CutPlanAnswer.Of(p.CutPlan),
        p.Patterns.Select(x => new BatchPatternView(
            x.Number, x.Pattern.Count, cut.GetValueOrDefault(x.Number), x.Pattern.Sku, x.Pattern.StockLength.Millimetres,
            x.Pattern.Cuts.Select(c => new CutAnswer(c.Code, c.CutLength.Millimetres, c.Count)), x.Pattern.Remnant.Millimetres, x.Remnants)),
        p.Pieces.Select(x => new BatchPieceView(
            x.Code, x.CutLength.Millimetres, x.Picked, x.Cut, x.Goes.Select(g => new StrutGoesView(g.Order, g.Bundle, g.StrutCode, g.Tag, g.Count)))));
}

/// <summary>New lengths and waste in the batch, and where each kit is cut by itself.</summary>
sealed record SavingView(int Lengths, int LengthsApart, int LengthsSaved, long WasteMm, long WasteApartMm, int Picked, int RemnantsUsed);

/// <summary>One way of cutting one length, how often, and how often it has been.</summary>
sealed record BatchPatternView(
    int Number, int Times, int Cut, string? Sku, double StockLengthMm, IEnumerable<CutAnswer> Cuts, double RemnantMm, IEnumerable<string> Remnants);

/// <summary>Struts of one length, and the bundles that they go into.</summary>
sealed record BatchPieceView(string Code, double CutLengthMm, int Picked, int Cut, IEnumerable<StrutGoesView> Goes);

/// <summary>A bundle that struts go into.</summary>
sealed record StrutGoesView(int Order, int Bundle, string StrutCode, Tag Tag, int Count);

/// <summary>A pattern was cut.</summary>
sealed record PatternCutView(BatchView Batch, int Times, IEnumerable<RemnantView> Remnants)
{
    public static PatternCutView Of(PatternCut c) => new(BatchView.Of(c.Batch), c.Times, c.Remnants.Select(RemnantView.Of));
}

/// <summary>An offcut with a label of its own.</summary>
sealed record RemnantView(string Code, string PipeSku, double LengthMm, RemnantStatus Status, string Bin, int? FromBatch, int? ForBatch)
{
    public static RemnantView Of(RemnantAnswer r) => new(r.Code, r.PipeSku, r.Length.Millimetres, r.Status, r.Bin, r.FromBatch, r.ForBatch);
}

/// <summary>Struts that lie ready cut.</summary>
sealed record ReadyStrutsView(string PipeSku, double LengthMm, int OnHand)
{
    public static ReadyStrutsView Of(CutStruts s) => new(s.PipeSku, s.CutLength.Millimetres, s.Count);
}
