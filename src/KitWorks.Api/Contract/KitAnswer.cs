using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Cutting;
using KitWorks.Kits.Standing;

namespace KitWorks.Api.Contract;

/// <summary>A kit: everything for one shelter. Lengths in millimetres.</summary>
sealed record KitAnswer(
    string DesignId, string Engine, Dimensions Dimensions, KitTotals Totals, IEnumerable<StrutTypeAnswer> StrutTypes, IEnumerable<HubType> HubTypes,
    IEnumerable<Tier> Tiers, IEnumerable<PanelTypeAnswer> PanelTypes, IEnumerable<OpeningAnswer> Openings, IEnumerable<Part> Parts, IEnumerable<Warning> Warnings,
    KitScreening? Screening, Recommendation? Recommendation)
{
    public static KitAnswer Of(Kit kit) => new(
        kit.DesignId, kit.Engine, Rounded(kit.Frame.Dimensions), kit.Totals with { CoverMaterialM2 = Math.Round(kit.Totals.CoverMaterialM2, 3) },
        kit.StrutTypes.Select(t => new StrutTypeAnswer(t.Code, t.Tag, Math.Round(t.SpacingMm, 3), t.CutLength.Millimetres, t.ChordFactor is { } c ? Math.Round(c, 8) : null, t.Count)),
        kit.HubTypes, kit.Tiers,
        kit.PanelTypes.Select(p => new PanelTypeAnswer(p.Code, p.Struts, Math.Round(p.AreaM2, 6), p.Count)),
        kit.Openings.Select(o => OpeningAnswer.Of(o, kit)), kit.Parts, kit.Warnings, Rounded(kit.Screening), kit.Recommendation);

    static KitScreening? Rounded(KitScreening? screening) => screening is null ? null : screening with
    {
        Checks = [.. screening.Checks.Select(c => c with { Demand = Math.Round(c.Demand, 3), Capacity = Math.Round(c.Capacity, 3), Utilisation = Math.Round(c.Utilisation, 4) })],
    };

    public static Dimensions Rounded(Dimensions d) => new(
        Math.Round(d.HeightMm, 3), Math.Round(d.LengthMm, 3), Math.Round(d.WidthMm, 3), Math.Round(d.FloorAreaM2, 6), Math.Round(d.VolumeM3, 6), Math.Round(d.CoverAreaM2, 6));
}

/// <summary>Struts of one cut length.</summary>
sealed record StrutTypeAnswer(string Code, Tag Tag, double SpacingMm, double CutLengthMm, double? ChordFactor, int Count);

/// <summary>Panels with the same three strut types.</summary>
sealed record PanelTypeAnswer(string Code, IEnumerable<string> Struts, double AreaM2, int Count);

/// <summary>A cut plan.</summary>
/// <param name="StockLengths">What it takes.</param>
/// <param name="Patterns">How each length is cut, the most used first.</param>
/// <param name="WasteRatio">The share of the stock that becomes neither piece nor useful remnant.</param>
/// <param name="Measure">What total and lower bound are counted in: lengths, millimetres of stock, or cost.</param>
/// <param name="Total">What this plan takes, in that measure.</param>
/// <param name="LowerBound">No plan takes less, in that measure.</param>
/// <param name="Proven">Whether this plan reaches the bound.</param>
sealed record CutPlanAnswer(IEnumerable<StockUseAnswer> StockLengths, IEnumerable<PatternAnswer> Patterns, double WasteRatio, CutMeasure Measure, decimal Total, decimal LowerBound, bool Proven)
{
    public static CutPlanAnswer Of(CutPlan plan) => new(
        plan.StockLengths.Select(s => new StockUseAnswer(s.Sku, s.Length.Millimetres, s.Count)),
        plan.Patterns.Select(p => new PatternAnswer(
            p.Count, p.Sku, p.StockLength.Millimetres, p.Cuts.Select(c => new CutAnswer(c.Code, c.CutLength.Millimetres, c.Count)), p.Remnant.Millimetres)),
        Math.Round(plan.WasteRatio, 6), plan.Measure, plan.Total, plan.LowerBound, plan.Proven);
}

/// <summary>How many of one stock length are taken.</summary>
sealed record StockUseAnswer(string Sku, double LengthMm, int Count);

/// <summary>One way of cutting a length. Without a SKU the length is a remnant.</summary>
sealed record PatternAnswer(int Count, string? Sku, double StockLengthMm, IEnumerable<CutAnswer> Cuts, double RemnantMm);

/// <summary>Pieces that a length is cut into.</summary>
sealed record CutAnswer(string Code, double CutLengthMm, int Count);
