using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Cutting;

namespace KitWorks.Api.Contract;

/// <summary>A cutting job as clients send it.</summary>
sealed record CutJobBody(
    PieceBody[]? Pieces, StockBody[]? Stock, RemnantBody[]? Remnants, Length? Kerf, Length? EndTrim, double? TimeLimitSeconds)
{
    const int MaxEntries = 500;

    public Outcome<CutJob> ToJob()
    {
        var faults = new Faults();
        if (Pieces is not { Length: >= 1 and <= MaxEntries }) faults.Add("pieces", $"Give 1 to {MaxEntries} pieces.");
        if (Stock is not { Length: >= 1 and <= MaxEntries }) faults.Add("stock", $"Give 1 to {MaxEntries} stock lengths.");
        if (Remnants is { Length: > MaxEntries }) faults.Add("remnants", $"Give at most {MaxEntries} remnants.");
        if (TimeLimitSeconds is <= 0 or > 30) faults.Add("timeLimitSeconds", "A time limit is above 0 and at most 30 seconds.");
        foreach (var (i, piece) in (Pieces ?? []).Index())
        {
            if (piece.CutLength is null) faults.Add($"pieces/{i}/cutLength", "Give the cut length, such as \"1008.9 mm\".");
            if (piece.Count is null or < 1) faults.Add($"pieces/{i}/count", "Give how many: 1 or more.");
        }
        foreach (var (i, stock) in (Stock ?? []).Index())
        {
            if (stock.Length is null) faults.Add($"stock/{i}/length", "Give the length, such as \"3048 mm\".");
            if (stock.Available is < 0) faults.Add($"stock/{i}/available", "A number available is 0 or more.");
        }
        foreach (var (i, remnant) in (Remnants ?? []).Index())
            if (remnant.Length is null || remnant.Count is null or < 1) faults.Add($"remnants/{i}", "Give length and count.");
        return faults.Refusal is { } refusal
            ? refusal
            : new CutJob
            {
                Pieces = [.. Pieces!.Select((p, i) => new CutPiece(p.Code ?? $"S{i + 1}", p.CutLength!.Value, p.Count!.Value))],
                Stock = [.. Stock!.Select((s, i) => new StockLength(s.Sku ?? $"stock-{i + 1}", s.Length!.Value, s.Cost?.Amount, s.Available))],
                Remnants = [.. (Remnants ?? []).Select(r => new Remnant(r.Length!.Value, r.Count!.Value))],
                Kerf = Kerf ?? Length.Zero,
                EndTrim = EndTrim ?? Length.Zero,
            };
    }
}

/// <summary>Pieces of one length.</summary>
sealed record PieceBody(string? Code, Length? CutLength, int? Count);

/// <summary>A length that can be bought.</summary>
sealed record StockBody(string? Sku, Length? Length, Money? Cost, int? Available);

/// <summary>Offcuts in stock.</summary>
sealed record RemnantBody(Length? Length, int? Count);
