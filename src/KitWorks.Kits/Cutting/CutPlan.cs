using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Kits.Cutting;

/// <summary>Pieces of one length to be cut.</summary>
/// <param name="Code">The strut type, or any name.</param>
/// <param name="CutLength">What the saw is set to; above zero.</param>
/// <param name="Count">How many; 1 or more.</param>
public sealed record CutPiece(string Code, Length CutLength, int Count);

/// <summary>A length that can be bought or taken from the shelf.</summary>
/// <param name="Sku">Its stock code, or any name.</param>
/// <param name="Length">Its length.</param>
/// <param name="Cost">What one costs; null for all alike, its length then being its cost.</param>
/// <param name="Available">How many there are; null for as many as it takes.</param>
public sealed record StockLength(string Sku, Length Length, decimal? Cost = null, int? Available = null);

/// <summary>Offcuts in stock, used before a stock length is opened.</summary>
/// <param name="Length">Their length.</param>
/// <param name="Count">How many.</param>
public sealed record Remnant(Length Length, int Count);

/// <summary>What to cut, and from what.</summary>
public sealed record CutJob
{
    /// <summary>The pieces.</summary>
    public required ImmutableArray<CutPiece> Pieces { get; init; }

    /// <summary>The stock lengths.</summary>
    public required ImmutableArray<StockLength> Stock { get; init; }

    /// <summary>The remnants in stock.</summary>
    public ImmutableArray<Remnant> Remnants { get; init; } = [];

    /// <summary>The width of one saw cut. n pieces that fill a length exactly need n − 1 of them.</summary>
    public Length Kerf { get; init; }

    /// <summary>Taken off each stock length before the first cut, with the cut that takes it off. Remnants are not trimmed again.</summary>
    public Length EndTrim { get; init; }

    /// <summary>The shortest offcut worth keeping; shorter ones are waste.</summary>
    public Length ShortestRemnant { get; init; } = Length.FromMillimetres(300);
}

/// <summary>Which stock lengths to cut into which pieces.</summary>
/// <param name="StockLengths">What it takes, by stock length.</param>
/// <param name="Patterns">How each is cut, the most used first.</param>
/// <param name="WasteRatio">The share of the stock's length that becomes neither a piece nor a remnant worth keeping, 0 to 1.</param>
/// <param name="LowerBound">No plan takes fewer stock lengths, or costs less where costs are given; in the unit that <see cref="Measure"/> names.</param>
/// <param name="Proven">Whether this plan reaches the bound: <see cref="Total"/> = <see cref="LowerBound"/>.</param>
public sealed record CutPlan(
    ImmutableArray<StockUse> StockLengths, ImmutableArray<CutPattern> Patterns, double WasteRatio, decimal LowerBound, bool Proven)
{
    /// <summary>What the plan makes smallest. Remnants count as nothing.</summary>
    public CutMeasure Measure { get; init; }

    /// <summary>What this plan comes to, in the unit that <see cref="Measure"/> names.</summary>
    public decimal Total { get; init; }

    /// <summary>
    /// The plan of several kits alike, each cut as this plan says. It takes exactly so many times the stock, which is what is
    /// reserved for them. The bound is that of plans which cut each kit by itself; one that mixes kits may take less.
    /// </summary>
    public CutPlan Times(int kits) => kits == 1 ? this : this with
    {
        StockLengths = [.. StockLengths.Select(s => s with { Count = s.Count * kits })],
        Patterns = [.. Patterns.Select(p => p with { Count = p.Count * kits })],
        LowerBound = LowerBound * kits,
        Total = Total * kits,
    };
}

/// <summary>What a cut plan makes smallest, and so the unit of its bound.</summary>
public enum CutMeasure
{
    /// <summary>The number of stock lengths: one stock length is on offer, without a cost.</summary>
    Count,

    /// <summary>The millimetres of stock lengths: several are on offer, without costs.</summary>
    Millimetres,

    /// <summary>The cost of the stock lengths, in the unit of <see cref="StockLength.Cost"/>.</summary>
    Cost,
}

/// <summary>How many of one stock length a plan takes.</summary>
/// <param name="Sku">The stock code.</param>
/// <param name="Length">The length.</param>
/// <param name="Count">How many.</param>
public sealed record StockUse(string Sku, Length Length, int Count);

/// <summary>One way of cutting one length, done one or more times.</summary>
/// <param name="Count">How many times.</param>
/// <param name="Sku">The stock code of the length cut; null for a remnant.</param>
/// <param name="StockLength">The length cut.</param>
/// <param name="Cuts">What it gives.</param>
/// <param name="Remnant">What is left at the end.</param>
public sealed record CutPattern(int Count, string? Sku, Length StockLength, ImmutableArray<CutPiece> Cuts, Length Remnant);
