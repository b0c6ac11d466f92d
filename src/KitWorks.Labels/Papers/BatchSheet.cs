using System.Collections.Immutable;
using KitWorks.Drawings;
using KitWorks.Kits;
using KitWorks.Kits.Batches;

namespace KitWorks.Labels;

/// <summary>The cut sheet of a batch: its stops, its patterns, and which bundle of which order each piece goes into.</summary>
public static class BatchSheet
{
    /// <summary>The sheet of a batch.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="number">The batch's number.</param>
    /// <param name="orders">The orders' numbers, in words.</param>
    /// <param name="kerf">The saw cut's width, with its unit.</param>
    /// <param name="units">What lengths are written in.</param>
    /// <param name="shop">The shop's name.</param>
    public static CutSheet For(BatchPlan plan, string number, string orders, string kerf, Units units = Units.Metric, string shop = "")
    {
        var pieces = plan.Pipes.SelectMany(p => p.Pieces).ToList();
        var types = pieces.ConvertAll(p => new StrutType(p.Code, p.Goes[0].Tag, 0, p.CutLength, null, p.Cut, []));
        // A tag is put on at the stop only where it means this length and no other; else bundle by bundle.
        var tagged = types.Where((t, i) => pieces[i].Goes.All(g => g.Tag == t.Tag) && pieces.Count(p => p.Goes.Any(g => g.Tag == t.Tag)) == 1).ToList();
        var longest = plan.Pipes.SelectMany(p => p.Patterns).Select(p => p.Pattern.StockLength.Millimetres).DefaultIfEmpty(1).Max();
        return new()
        {
            Of = "Batch", Order = number, Shelter = orders, Kerf = kerf, Shop = shop, Fetch = string.Join("; ", plan.Pipes.SelectMany(p => FetchOf(p, units))),
            Stops =
            [
                .. pieces.OrderByDescending(p => p.CutLength)
                    .Select(p => new CutStop(p.Code, CutSheet.TagOf(p.Code, tagged), Measure.Part(p.CutLength.Millimetres, units), p.Cut, p.Picked)),
            ],
            Rows =
            [
                .. plan.Pipes.SelectMany(p => p.Patterns).SelectMany(p => CutSheet.RowsOf(
                    p.Pattern, p.Number, longest, tagged, units, p.Remnants.Length == 1 ? $"remnant {p.Remnants[0]}" : $"remnants {string.Join(", ", p.Remnants)}")),
            ],
            Goes =
            [
                .. pieces.SelectMany(p => p.Goes, (p, g) => (Piece: p, Goes: g)).OrderBy(x => x.Goes.Order).ThenBy(x => x.Goes.Bundle)
                    .Select(x => new CutGoes(
                        $"{x.Goes.Order}", x.Goes.Bundle, x.Goes.Count, x.Piece.Code, Measure.Part(x.Piece.CutLength.Millimetres, units), x.Goes.StrutCode,
                        new(x.Goes.Tag.Colour, x.Goes.Tag.Hex, x.Goes.Tag.Bands))),
            ],
        };
    }

    static IEnumerable<string> FetchOf(PipePlan pipe, Units units)
    {
        foreach (var stock in pipe.CutPlan?.StockLengths ?? ImmutableArray<Kits.Cutting.StockUse>.Empty)
            yield return $"{stock.Count} × {stock.Sku}, {Measure.Part(stock.Length.Millimetres, units)}";
        var remnants = pipe.Patterns.Sum(p => p.Remnants.Length);
        if (remnants > 0) yield return $"{remnants} remnants of {pipe.PipeSku}";
        var picked = pipe.Pieces.Sum(p => p.Picked);
        if (picked > 0) yield return $"{picked} struts ready cut from {pipe.PipeSku}";
    }
}
