using System.Collections.Immutable;

namespace KitWorks.Kits.Catalog;

/// <summary>An amount of money, to the cent.</summary>
/// <param name="Amount">The amount, two decimals.</param>
/// <param name="Currency">The ISO 4217 code.</param>
public sealed record Money(decimal Amount, string Currency);

/// <summary>What a shop charges.</summary>
public sealed record PriceBook
{
    /// <summary>The ISO 4217 code of every price here.</summary>
    public required string Currency { get; init; }

    /// <summary>The cost of one unit of each stock item.</summary>
    public required ImmutableDictionary<string, decimal> UnitCosts { get; init; }

    /// <summary>The cost of one saw cut, tagging included.</summary>
    public decimal PerCut { get; init; }

    /// <summary>The cost of packing and labelling one bundle.</summary>
    public decimal PerBundle { get; init; }

    /// <summary>Added to all costs, in per cent.</summary>
    public decimal MarkupPercent { get; init; }
}
