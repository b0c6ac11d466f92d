using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Parcels;

namespace KitWorks.Kits;

/// <summary>
/// What an order of kits costs the customer, line by line. Each line is rounded to the currency's smallest amount, halves
/// away from zero, and the total is the sum of the rounded lines; nothing else is rounded.
/// </summary>
/// <param name="Lines">The lines, each explaining itself.</param>
/// <param name="Total">Their sum.</param>
public sealed record Price(ImmutableArray<PriceLine> Lines, Money Total)
{
    /// <summary>What is not in the price, and why.</summary>
    public ImmutableArray<Warning> Warnings { get; init; } = [];

    /// <summary>The price of a number of kits, packed and priced by a catalog as it stands. Where their bundles go into no parcel, shipping is left out and the price warns of it.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="quantity">How many; 1 or more.</param>
    /// <param name="catalog">The catalog.</param>
    /// <returns>The price, or the refusal <c>price.no-cost</c> that names what has no cost in the book.</returns>
    public static Outcome<Price> Of(Kit kit, int quantity, ShopCatalog catalog)
    {
        ArgumentNullException.ThrowIfNull(catalog);
        if (catalog.Prices.Shipping.IsEmpty && catalog.Prices.PerParcel == 0) return Of(kit, quantity, catalog.Prices);
        ParcelPlanner.Plan(kit, quantity, catalog.Parcels).Succeeds(out var parcels, out var refusal);
        return Of(kit, quantity, catalog.Prices, parcels).Select(price => refusal is null || catalog.Prices.Shipping.IsEmpty
            ? price : price with { Warnings = price.Warnings.Add(new("price.without-shipping", $"Shipping is not in this price. {refusal.Detail}")) });
    }

    /// <summary>The price of a number of kits.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="quantity">How many; 1 or more.</param>
    /// <param name="book">The price book. One without a single cost prices nothing, and the price warns of it.</param>
    /// <param name="parcels">How they are packed for the carrier; null leaves shipping out.</param>
    /// <returns>The price, or the refusal <c>price.no-cost</c> that names what has no cost in the book.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The quantity is below 1.</exception>
    /// <exception cref="OverflowException">There are more than two thousand million of one thing.</exception>
    public static Outcome<Price> Of(Kit kit, int quantity, PriceBook book, ParcelPlan? parcels = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(quantity, 1);
        var sheet = new PriceSheet(book);
        sheet.AddMaterials(kit, quantity);
        sheet.AddWork(kit, quantity, parcels);
        sheet.AddOverheadAndMargin();
        sheet.TakeOffForMany(quantity);
        sheet.AddShipping(parcels);
        return sheet.Price();
    }
}

/// <summary>What a line of a price is for.</summary>
public enum PriceLineKind
{
    /// <summary>Something from stock, at cost.</summary>
    Material,

    /// <summary>What is spoilt of a material.</summary>
    Waste,

    /// <summary>Work.</summary>
    Labour,

    /// <summary>The shop's standing costs.</summary>
    Overhead,

    /// <summary>What the shop earns.</summary>
    Margin,

    /// <summary>Taken off for many kits.</summary>
    Discount,

    /// <summary>What the carrier takes.</summary>
    Shipping,
}

/// <summary>One line of a price.</summary>
/// <param name="Description">What it is for.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Each">What one costs, exact.</param>
/// <param name="Amount">Quantity times each, rounded as it is paid.</param>
public sealed record PriceLine(string Description, int Quantity, Money Each, Money Amount)
{
    /// <summary>What sort of line it is.</summary>
    public PriceLineKind Kind { get; init; }

    /// <summary>Why there are so many, or how it is reckoned.</summary>
    public string Why { get; init; } = "";
}
