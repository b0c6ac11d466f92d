using System.Collections.Immutable;
using KitWorks.Kits.Catalog;

namespace KitWorks.Kits.Planning;

/// <summary>Work at the saw and at the bench.</summary>
/// <param name="Cuts">Struts to cut.</param>
/// <param name="Bundles">Bundles to pack.</param>
public readonly record struct Work(int Cuts, int Bundles);

/// <summary>Goods on their way.</summary>
/// <param name="On">The day they are due.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Reference">The purchase they belong to.</param>
public sealed record Arrival(DateOnly On, int Quantity, string Reference);

/// <summary>A stock item that an order is short of.</summary>
/// <param name="Sku">The stock code.</param>
/// <param name="Short">How many more it takes, with what orders before it wait for.</param>
/// <param name="Arrivals">What is on its way.</param>
/// <param name="LeadDays">Working days in which it can be bought.</param>
public sealed record MissingItem(string Sku, int Short, ImmutableArray<Arrival> Arrivals, int LeadDays);

/// <summary>What an order waits for.</summary>
/// <param name="What"><c>stock</c>, <c>saw</c>, <c>bench</c> or <c>carrier</c>.</param>
/// <param name="Until">The day when that is over.</param>
/// <param name="Detail">A sentence for a person.</param>
public sealed record WaitsFor(string What, DateOnly Until, string Detail);

/// <summary>When an order can leave, and what it waits for until then, in that order.</summary>
/// <param name="ShipBy">The day by which it is with the carrier.</param>
/// <param name="WaitsFor">What it waits for.</param>
public sealed record ShipDate(DateOnly ShipBy, ImmutableArray<WaitsFor> WaitsFor)
{
    /// <summary>
    /// When an order can leave: its stock first; then its turn at the saw and the bench, which work side by side, so that
    /// the busier of the two counts; then the shop's lead days. A machine's day is full days of work before it: what fits
    /// into the day on which it starts takes no day more.
    /// </summary>
    /// <param name="today">The day of the question.</param>
    /// <param name="calendar">The shop's days.</param>
    /// <param name="work">The order's own work.</param>
    /// <param name="backlog">The work that comes before it.</param>
    /// <param name="missing">What it is short of.</param>
    /// <param name="leadDays">Working days from stock to carrier.</param>
    public static ShipDate Of(DateOnly today, WorkCalendar calendar, Work work, Work backlog, IReadOnlyList<MissingItem> missing, int leadDays)
    {
        ArgumentNullException.ThrowIfNull(calendar);
        ArgumentNullException.ThrowIfNull(missing);
        var waits = missing.Select(item => StockOf(item, today, calendar)).OrderBy(w => w.Until).ToList();
        var stocked = waits.Count == 0 ? today : waits[^1].Until;
        var done = stocked;
        foreach (var (what, own, before, perDay, words) in new[]
                 {
                     ("saw", work.Cuts, backlog.Cuts, calendar.CutsPerDay, "cuts"),
                     ("bench", work.Bundles, backlog.Bundles, calendar.BundlesPerDay, "bundles"),
                 })
        {
            if (perDay is not { } most || own == 0) continue;
            var turn = calendar.After(today, FullDays(before + (long)own, most));
            var alone = calendar.After(stocked, FullDays(own, most));
            var until = turn > alone ? turn : alone;
            if (until > stocked) waits.Add(new(what, until, $"{own:N0} {words} after {before:N0} of other orders, {most:N0} a day."));
            if (until > done) done = until;
        }
        var shipBy = calendar.After(done, leadDays);
        waits.Add(new("carrier", shipBy, $"{leadDays} working days to cut, pack and hand over."));
        return new(shipBy, [.. waits]);
    }

    static int FullDays(long amount, int perDay) => (int)Math.Min(2_000, (amount - 1) / perDay);

    static WaitsFor StockOf(MissingItem item, DateOnly today, WorkCalendar calendar)
    {
        var still = item.Short;
        foreach (var arrival in item.Arrivals.OrderBy(a => a.On).ThenBy(a => a.Reference, StringComparer.Ordinal))
        {
            still -= arrival.Quantity;
            if (still > 0) continue;
            // What is overdue may come any day: tomorrow at the earliest.
            var on = arrival.On > today ? arrival.On : calendar.After(today, 1);
            return new("stock", on, $"{item.Short:N0} × {item.Sku}, due on {on:yyyy-MM-dd} with {arrival.Reference}.");
        }
        var bought = calendar.After(today, item.LeadDays);
        return new("stock", bought, $"{item.Short:N0} × {item.Sku}, of which {still:N0} are not ordered yet; they take {item.LeadDays} working days.");
    }
}
