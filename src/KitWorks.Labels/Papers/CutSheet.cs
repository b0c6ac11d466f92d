using System.Collections.Immutable;
using KitWorks.Drawings;
using KitWorks.Kits;
using KitWorks.Kits.Cutting;

namespace KitWorks.Labels;

/// <summary>What hangs at the saw: the stops to set, then each pattern to scale with a box to tick for each length cut.</summary>
public sealed record CutSheet : Paper
{
    /// <summary>What is being built, and how often.</summary>
    public required string Shelter { get; init; }

    /// <summary>How many kits it covers.</summary>
    public int Kits { get; init; } = 1;

    /// <summary>The saw cut's width, with its unit.</summary>
    public required string Kerf { get; init; }

    /// <summary>What to fetch, in words: so many of each stock length.</summary>
    public required string Fetch { get; init; }

    /// <summary>The lengths to set the saw's stop to, the longest first.</summary>
    public required ImmutableArray<CutStop> Stops { get; init; }

    /// <summary>The patterns, in the plan's order.</summary>
    public required ImmutableArray<CutRow> Rows { get; init; }

    /// <summary>What the order's number is the number of, in a word.</summary>
    public string Of { get; init; } = "Order";

    /// <summary>Where the pieces go, where that is not all one.</summary>
    public ImmutableArray<CutGoes> Goes { get; init; } = [];

    internal override IEnumerable<PaperSection> Sections =>
    [
        new("cut-stops", this), .. Rows.IsEmpty ? [] : (PaperSection[])[new("cut-patterns", this)], .. Goes.IsEmpty ? [] : (PaperSection[])[new("cut-goes", this)],
    ];

    /// <summary>The sheet of a cut plan.</summary>
    /// <param name="plan">The plan of one kit.</param>
    /// <param name="types">The strut types that its pieces' codes name.</param>
    /// <param name="order">The order's number.</param>
    /// <param name="shelter">What is being built.</param>
    /// <param name="kerf">The saw cut's width, with its unit.</param>
    /// <param name="units">What lengths are written in.</param>
    /// <param name="shop">The shop's name.</param>
    /// <param name="kits">How many kits are cut, each as the plan says.</param>
    public static CutSheet For(CutPlan plan, IReadOnlyList<StrutType> types, string order, string shelter, string kerf, Units units = Units.Metric, string shop = "", int kits = 1)
    {
        plan = plan.Times(kits);
        var longest = plan.Patterns.Select(p => p.StockLength.Millimetres).DefaultIfEmpty(1).Max();
        var remnants = plan.Patterns.Where(p => p.Sku is null).Sum(p => p.Count);
        var fetch = plan.StockLengths.Select(s => $"{s.Count} × {s.Sku}, {Measure.Part(s.Length.Millimetres, units)}").Concat(remnants == 0 ? [] : [$"{remnants} remnants"]);
        return new()
        {
            Order = order, Shelter = shelter, Kits = kits, Kerf = kerf, Shop = shop, Fetch = string.Join("; ", fetch),
            Stops = [.. plan.Patterns.SelectMany(p => p.Cuts.Select(c => (Cut: c, Count: c.Count * p.Count))).GroupBy(c => (c.Cut.Code, c.Cut.CutLength))
                .OrderByDescending(g => g.Key.CutLength).Select(g => new CutStop(g.Key.Code, TagOf(g.Key.Code, types), Measure.Part(g.Key.CutLength.Millimetres, units), g.Sum(c => c.Count)))],
            Rows = [.. plan.Patterns.SelectMany((p, i) => RowsOf(p, i + 1, longest, types, units)).Select(r => r with { Kits = kits })],
        };
    }

    internal static TagMark TagOf(string code, IReadOnlyList<StrutType> types) =>
        types.FirstOrDefault(t => t.Code == code) is { } type ? new(type.Tag.Colour, type.Tag.Hex, type.Tag.Bands) : TagMark.None;

    // A pattern cut more often than a row has boxes goes on in the next row.
    internal static IEnumerable<CutRow> RowsOf(CutPattern pattern, int number, double longest, IReadOnlyList<StrutType> types, Units units, string stock = "remnant")
    {
        var words = string.Join(" + ", pattern.Cuts.Select(c => $"{c.Count} × {c.Code}"));
        var picture = PatternPicture.Draw(pattern, longest, types, units);
        for (var done = 0; done < pattern.Count; done += CutRow.Boxes)
            yield return new(number, Math.Min(CutRow.Boxes, pattern.Count - done), pattern.Count, done,
                $"{Measure.Part(pattern.StockLength.Millimetres, units)} {pattern.Sku ?? stock}", words, Measure.Part(pattern.Remnant.Millimetres, units), picture);
    }
}

/// <summary>One setting of the saw's stop.</summary>
/// <param name="Code">The strut type.</param>
/// <param name="Tag">Its marker.</param>
/// <param name="Length">What to set, with its unit.</param>
/// <param name="Count">How many to cut in all.</param>
/// <param name="Picked">How many more lie ready cut and are only picked.</param>
public sealed record CutStop(string Code, TagMark Tag, string Length, int Count, int Picked = 0);

/// <summary>A bundle that pieces go into.</summary>
/// <param name="Order">The order's number.</param>
/// <param name="Bundle">The bundle's place in the order.</param>
/// <param name="Count">How many pieces.</param>
/// <param name="Code">The setting of the stop that they come from.</param>
/// <param name="Length">Their length, with its unit.</param>
/// <param name="StrutCode">The strut type that they are there.</param>
/// <param name="Tag">How they are marked.</param>
public sealed record CutGoes(string Order, int Bundle, int Count, string Code, string Length, string StrutCode, TagMark Tag);

/// <summary>One pattern at the saw.</summary>
/// <param name="Number">The pattern's number, from 1.</param>
/// <param name="Count">How many times this row is cut.</param>
/// <param name="Total">How many times the pattern is cut in all.</param>
/// <param name="Before">How many of them earlier rows hold.</param>
/// <param name="Stock">The length it is cut from.</param>
/// <param name="Words">What it gives, in words.</param>
/// <param name="Remnant">What is left.</param>
/// <param name="Picture">The pattern to scale, an SVG document.</param>
public sealed record CutRow(int Number, int Count, int Total, int Before, string Stock, string Words, string Remnant, string Picture)
{
    internal const int Boxes = 20;

    /// <summary>How many kits the pattern is cut for.</summary>
    public int Kits { get; init; } = 1;

    /// <summary>How many times it is cut for one kit.</summary>
    public int PerKit => Total / Kits;

    /// <summary>The boxes to tick, numbered on through the pattern.</summary>
    public IReadOnlyList<int> Ticks => [.. Enumerable.Range(Before + 1, Count)];
}
