using System.Collections.Immutable;

namespace KitWorks.Kits.Catalog;

/// <summary>An amount of money, exact.</summary>
/// <param name="Amount">The amount, in whole units of the currency and fractions of them.</param>
/// <param name="Currency">The ISO 4217 code.</param>
public sealed record Money(decimal Amount, string Currency);

/// <summary>
/// What things and work cost the shop, and what it adds. Costs may be finer than the smallest coin: what is charged is
/// rounded once, on each line of a price.
/// </summary>
public sealed record PriceBook
{
    /// <summary>The ISO 4217 code of every price here.</summary>
    public required string Currency { get; init; }

    /// <summary>The cost of one unit of each stock item.</summary>
    public required ImmutableDictionary<string, decimal> UnitCosts { get; init; }

    /// <summary>
    /// What is spoilt of a stock item beside what a kit takes, in per cent of it: breakage, the ends of a roll. Pipe is
    /// charged in whole lengths, offcuts and sawdust with it, and needs none for those.
    /// </summary>
    public ImmutableDictionary<string, decimal> WastePercent { get; init; } = ImmutableDictionary<string, decimal>.Empty;

    /// <summary>The cost of one saw cut; of its tag too, where <see cref="PerTag"/> is nothing.</summary>
    public decimal PerCut { get; init; }

    /// <summary>The cost of tagging one strut.</summary>
    public decimal PerTag { get; init; }

    /// <summary>The cost of setting the saw's stop to one strut length: once for an order, however many kits it has.</summary>
    public decimal PerSawSetting { get; init; }

    /// <summary>The cost of packing and labelling one bundle.</summary>
    public decimal PerBundle { get; init; }

    /// <summary>The cost of what is done once for each kit: its papers, the last look.</summary>
    public decimal PerKit { get; init; }

    /// <summary>The cost of filling, closing and labelling one parcel.</summary>
    public decimal PerParcel { get; init; }

    /// <summary>Added to materials and labour for rent, tools and light, in per cent.</summary>
    public decimal OverheadPercent { get; init; }

    /// <summary>Added to all costs, overhead with them, in per cent: the margin.</summary>
    public decimal MarkupPercent { get; init; }

    /// <summary>What is taken off for many kits at once.</summary>
    public ImmutableArray<QuantityBreak> QuantityBreaks { get; init; } = [];

    /// <summary>What the carrier takes for one parcel; empty where shipping is not in the price.</summary>
    public ImmutableArray<ShippingRate> Shipping { get; init; } = [];

    /// <summary>What to do where something has no cost here.</summary>
    public WhenCostMissing WhenCostMissing { get; init; }
}

/// <summary>What to do where the price book lacks the cost of something.</summary>
public enum WhenCostMissing
{
    /// <summary>Give no price, and say what lacks a cost.</summary>
    Refuse,

    /// <summary>Give the price without it, with a warning.</summary>
    Warn,
}

/// <summary>A discount for many kits.</summary>
/// <param name="From">From how many kits; 2 or more.</param>
/// <param name="PercentOff">What is taken off everything but shipping, in per cent.</param>
public sealed record QuantityBreak(int From, decimal PercentOff);

/// <summary>What the carrier takes for one parcel.</summary>
/// <param name="UpToGrams">The heaviest parcel that this rate is for.</param>
/// <param name="Price">What it takes.</param>
/// <param name="Kind">The kind of parcel it is for; null for those that have no rates of their own.</param>
public sealed record ShippingRate(int UpToGrams, decimal Price, string? Kind = null);
