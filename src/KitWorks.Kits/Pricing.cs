using System.Collections.Immutable;
using KitWorks.Kits.Catalog;

namespace KitWorks.Kits;

/// <summary>What an order of kits costs the customer, line by line.</summary>
/// <param name="Lines">The lines, each explaining itself.</param>
/// <param name="Total">Their sum.</param>
public sealed record Price(ImmutableArray<PriceLine> Lines, Money Total)
{
    /// <summary>
    /// The price of a number of kits. Each line is rounded to the cent, halves away from zero, and the total is the sum of
    /// the rounded lines. A stock item without a cost in the price book is taken at nothing.
    /// </summary>
    /// <param name="kit">The kit.</param>
    /// <param name="quantity">How many; 1 or more.</param>
    /// <param name="book">The price book.</param>
    /// <exception cref="ArgumentOutOfRangeException">The quantity is below 1.</exception>
    /// <exception cref="OverflowException">There are more than two thousand million of one thing.</exception>
    public static Price Of(Kit kit, int quantity, PriceBook book)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(quantity, 1);
        var cuts = checked(kit.StrutTypes.Sum(t => t.Count) * quantity);
        var bundles = checked(kit.Bundles.Length * quantity);
        var atCost = kit.Parts
            .Select(p => (p.Description, Count: checked(p.Quantity * quantity), Each: book.UnitCosts.GetValueOrDefault(p.Sku)))
            .Append(("Cutting and tagging struts", cuts, book.PerCut))
            .Append(("Packing and labelling bundles", bundles, book.PerBundle))
            .Select(x => new PriceLine(x.Item1, x.Item2, new(x.Item3, book.Currency), new(Cents(x.Item2 * x.Item3), book.Currency)))
            .ToList();
        var costs = atCost.Sum(l => l.Amount.Amount);
        var markup = new Money(Cents(costs * book.MarkupPercent / 100), book.Currency);
        ImmutableArray<PriceLine> lines = [.. atCost, new($"Overhead and margin, {book.MarkupPercent:0.#} %", 1, markup, markup)];
        return new(lines, new(lines.Sum(l => l.Amount.Amount), book.Currency));
    }

    static decimal Cents(decimal amount) => Math.Round(amount, 2, MidpointRounding.AwayFromZero);
}

/// <summary>One line of a price.</summary>
/// <param name="Description">What it is for.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Each">What one costs.</param>
/// <param name="Amount">Quantity times each, to the cent.</param>
public sealed record PriceLine(string Description, int Quantity, Money Each, Money Amount);
