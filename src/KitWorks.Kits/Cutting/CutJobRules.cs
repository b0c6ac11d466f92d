using KitWorks.Geometry;

namespace KitWorks.Kits.Cutting;

/// <summary>What a cut job must be like before it is planned.</summary>
static class CutJobRules
{
    /// <summary>Costs have up to four decimal places.</summary>
    public const int CostSteps = 10_000;

    /// <summary>Pieces in one job at the most.</summary>
    public const int MostPieces = 100_000;

    /// <summary>Different lengths of pieces, of stock and of remnants in one job at the most, each.</summary>
    public const int MostLengths = 500;

    const decimal HighestCost = 1_000_000_000;

    /// <summary>Why a job cannot be planned as it stands, or null.</summary>
    public static Refusal? Broken(CutJob job) => OfCounts(job) ?? OfStock(job) ?? OfRemnants(job) ?? OfPieces(job);

    static Refusal? OfCounts(CutJob job)
    {
        if (job.Pieces.IsDefaultOrEmpty) return Refusal.OfField("cut-plan.pieces-missing", "pieces", "Name at least one piece to cut.");
        if (job.Stock.IsDefault || job.Remnants.IsDefault || job.Stock.IsEmpty && job.Remnants.IsEmpty)
            return Refusal.OfField("cut-plan.stock-missing", "stock", "Name at least one stock length or remnant.");
        foreach (var (field, count) in new[] { ("pieces", job.Pieces.Length), ("stock", job.Stock.Length), ("remnants", job.Remnants.Length) })
            if (count > MostLengths) return Refusal.OfField("cut-plan.too-large", field, $"{count} lengths are too many; at most {MostLengths} are planned at once.");
        var pieces = job.Pieces.Sum(p => (long)p.Count);
        return pieces > MostPieces
            ? Refusal.OfField("cut-plan.too-large", "pieces", $"{pieces} pieces are too many; at most {MostPieces} are planned at once.")
            : null;
    }

    static Refusal? OfStock(CutJob job)
    {
        for (var k = 0; k < job.Stock.Length; k++)
        {
            var stock = job.Stock[k];
            if (stock.Length <= job.EndTrim)
                return Refusal.OfField("cut-plan.stock-length", $"stock/{k}/length", $"A stock length is longer than the end trim of {job.EndTrim}; {stock.Length} is not.");
            if (stock.Available < 0)
                return Refusal.OfField("cut-plan.stock-available", $"stock/{k}/available", $"{stock.Available} lengths cannot be available; give 0 or more, or nothing for as many as it takes.");
            if (stock.Cost.HasValue != job.Stock[0].Cost.HasValue)
                return Refusal.OfField("cut-plan.cost-missing", $"stock/{k}/cost", "Give a cost for every stock length or for none.");
            if (stock.Cost is { } cost && (cost <= 0 || cost > HighestCost || cost * CostSteps % 1 != 0))
                return Refusal.OfField("cut-plan.cost-invalid", $"stock/{k}/cost", $"A cost is above 0, at most {HighestCost}, with up to four decimal places; {cost} is not.");
        }
        return null;
    }

    static Refusal? OfRemnants(CutJob job)
    {
        for (var k = 0; k < job.Remnants.Length; k++)
        {
            if (job.Remnants[k].Length == Length.Zero)
                return Refusal.OfField("cut-plan.remnant-length", $"remnants/{k}/length", "A remnant is longer than nothing.");
            if (job.Remnants[k].Count is < 1 or > MostPieces)
                return Refusal.OfField("cut-plan.remnant-count", $"remnants/{k}/count", $"Remnants are counted from 1 to {MostPieces}; {job.Remnants[k].Count} is not.");
        }
        return null;
    }

    static Refusal? OfPieces(CutJob job)
    {
        var longest = job.Stock.Select(s => s.Length.Tenths - job.EndTrim.Tenths).Concat(job.Remnants.Select(r => r.Length.Tenths)).Max();
        for (var i = 0; i < job.Pieces.Length; i++)
        {
            var piece = job.Pieces[i];
            if (piece.CutLength == Length.Zero)
                return Refusal.OfField("cut-plan.piece-length", $"pieces/{i}/cutLength", "A cut length is above zero.");
            if (piece.Count < 1)
                return Refusal.OfField("cut-plan.piece-count", $"pieces/{i}/count", $"Pieces are counted from 1; {piece.Count} is not.");
            if (piece.CutLength.Tenths > longest)
                return Refusal.OfField("cut-plan.piece-too-long", $"pieces/{i}/cutLength", $"{piece.CutLength} is longer than anything to cut it from; at most {Length.FromTenths(longest)} can be cut.");
        }
        return null;
    }
}
