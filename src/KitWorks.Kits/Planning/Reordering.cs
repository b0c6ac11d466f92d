using KitWorks.Kits.Catalog;

namespace KitWorks.Kits.Planning;

/// <summary>How a stock item stands, for buying.</summary>
/// <param name="Sku">The stock code.</param>
/// <param name="Description">Its name for people.</param>
/// <param name="Available">On hand and promised to nobody.</param>
/// <param name="Awaited">What orders wait for.</param>
/// <param name="Expected">What is on its way.</param>
/// <param name="ReorderAt">At or below how many to order.</param>
public sealed record ItemStanding(string Sku, string Description, int Available, int Awaited, int Expected, int ReorderAt)
{
    /// <summary>What there will be when all is in and all that wait are served; below zero where that cannot be.</summary>
    public int Projected => Available - Awaited + Expected;
}

/// <summary>Something to buy.</summary>
/// <param name="Sku">The stock code.</param>
/// <param name="Description">Its name for people.</param>
/// <param name="Supplier">Who sells it.</param>
/// <param name="Packs">How many packs.</param>
/// <param name="PackSize">How many in a pack.</param>
/// <param name="Quantity">How many in all.</param>
/// <param name="ArrivesBy">When they are there if they are ordered today.</param>
/// <param name="Standing">What it is reckoned from.</param>
/// <param name="Why">A sentence for a person.</param>
public sealed record ReorderLine(
    string Sku, string Description, string Supplier, int Packs, int PackSize, int Quantity, DateOnly ArrivesBy, ItemStanding Standing, string Why);

/// <summary>What to buy.</summary>
public static class Reordering
{
    /// <summary>
    /// The items that will be short, or at their reorder point or below: whole packs, so many that they are above it again,
    /// or at the level that the shop orders up to. Those that orders wait for come first.
    /// </summary>
    public static IReadOnlyList<ReorderLine> List(
        IEnumerable<ItemStanding> items, IReadOnlyList<Supply> supplies, Workshop workshop, WorkCalendar calendar, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(workshop);
        ArgumentNullException.ThrowIfNull(calendar);
        var supplyOf = supplies.ToDictionary(s => s.Sku);
        return
        [
            .. items.Where(i => i.Projected < 0 || (i.ReorderAt > 0 && i.Projected <= i.ReorderAt))
                .OrderBy(i => Math.Min(0, i.Projected)).ThenBy(i => i.Sku, StringComparer.Ordinal)
                .Select(i => LineOf(i, supplyOf.GetValueOrDefault(i.Sku) ?? new() { Sku = i.Sku })),
        ];

        ReorderLine LineOf(ItemStanding item, Supply supply)
        {
            var level = Math.Max(supply.OrderUpTo ?? 0, item.ReorderAt > 0 ? item.ReorderAt + 1 : 0);
            var packs = (int)(((long)level - item.Projected + supply.PackSize - 1) / supply.PackSize);
            return new(
                item.Sku, item.Description, supply.Supplier, packs, supply.PackSize, checked(packs * supply.PackSize),
                calendar.After(today, supply.LeadDays ?? workshop.RestockDays), item,
                $"{item.Available:N0} available, {item.Awaited:N0} awaited by orders, {item.Expected:N0} on their way: {item.Projected:N0} left; to be ordered at {item.ReorderAt:N0}.");
        }
    }
}
