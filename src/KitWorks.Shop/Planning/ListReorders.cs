using KitWorks.Geometry;
using KitWorks.Kits.Planning;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Planning;

/// <summary>What to buy, from what is there, what is promised, what orders wait for and what is on its way.</summary>
public sealed record ListReorders : IQuery<ReorderList>;

/// <summary>What to buy.</summary>
/// <param name="On">The day it was reckoned.</param>
/// <param name="Items">The items; those that orders wait for come first.</param>
public sealed record ReorderList(DateOnly On, IReadOnlyList<ReorderLine> Items);

/// <summary>What the orders in hand need that is not theirs yet. Answered by whoever knows the orders.</summary>
public sealed record FindDemand : IQuery<Demand>;

/// <summary>What the orders in hand need.</summary>
/// <param name="Awaited">What those that wait take of each item.</param>
/// <param name="Backlog">The work of those that are not packed yet.</param>
public sealed record Demand(IReadOnlyDictionary<string, int> Awaited, Work Backlog);

sealed class ListReordersHandler(ShopDb db, IMediator mediator, TimeProvider clock) : IRequestHandler<ListReorders, Outcome<ReorderList>>
{
    public async Task<Outcome<ReorderList>> Handle(ListReorders query, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out var refusal)) return refusal;
        var awaited = (await mediator.Send(new FindDemand(), cancellationToken)).Value.Awaited;
        var expected = await db.Outstanding(null, cancellationToken);
        var items = (await mediator.Send(new ListStock(int.MaxValue - 1, null), cancellationToken)).Value.Items;
        var today = DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime);
        return new ReorderList(today, Reordering.List(
            items.Select(i => new ItemStanding(
                i.Sku, i.Description, i.Available, awaited.GetValueOrDefault(i.Sku), expected[i.Sku].Sum(a => a.Quantity), i.ReorderAt)),
            catalog.Supplies, catalog.Workshop, catalog.Calendar, today));
    }
}

static class Arrivals
{
    /// <summary>What is on its way of these items, or of all.</summary>
    public static async Task<ILookup<string, Arrival>> Outstanding(this ShopDb db, IReadOnlyList<string>? skus, CancellationToken cancellationToken) =>
        (await db.Purchases.AsNoTracking().Where(p => !p.IsClosed && (skus == null || p.Lines.Any(l => skus.Contains(l.Sku)))).ToListAsync(cancellationToken))
        .SelectMany(p => p.Lines.Where(l => l.Outstanding > 0), (p, l) => (l.Sku, Arrival: new Arrival(p.ExpectedOn, l.Outstanding, p.Reference)))
        .ToLookup(x => x.Sku, x => x.Arrival);
}
