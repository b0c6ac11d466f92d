using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Planning;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;

namespace KitWorks.Shop.Planning;

/// <summary>When an order of these lines and this work can leave.</summary>
/// <param name="Lines">What it takes from stock.</param>
/// <param name="Work">Its work at the saw and the bench.</param>
/// <param name="Standing">How the order stands where it is in hand already; null for one that would come last.</param>
public sealed record FindShipDate(IReadOnlyList<StockLine> Lines, Work Work, OrderStanding? Standing = null) : IQuery<Promise>
{
    /// <summary>For so many of a kit that nobody has ordered yet.</summary>
    public static FindShipDate Of(Kit kit, int quantity)
    {
        ArgumentNullException.ThrowIfNull(kit);
        return new(
            [.. kit.Parts.Select(p => new StockLine(p.Sku, p.Quantity * quantity))],
            new(kit.StrutTypes.Sum(t => t.Count) * quantity, kit.Bundles.Length * quantity));
    }
}

/// <summary>How an order in hand stands.</summary>
/// <param name="HoldsStock">Whether its stock is reserved.</param>
/// <param name="Before">What the orders before it need.</param>
public sealed record OrderStanding(bool HoldsStock, Demand Before);

/// <summary>What an order is short of, when it can leave, and what it waits for until then.</summary>
public sealed record Promise(IReadOnlyList<Shortage> Shortages, ShipDate Date);

sealed class FindShipDateHandler(ShopDb db, IMediator mediator, TimeProvider clock) : IRequestHandler<FindShipDate, Outcome<Promise>>
{
    public async Task<Outcome<Promise>> Handle(FindShipDate query, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out var refusal)) return refusal;
        var shortages = query.Standing is { HoldsStock: true } ? [] : (await mediator.Send(new FindShortages(query.Lines), cancellationToken)).Value;
        var before = query.Standing?.Before ?? (await mediator.Send(new FindDemand(), cancellationToken)).Value;
        var missing = shortages.Count == 0 ? [] : await Missing(shortages, before, catalog, cancellationToken);
        var today = DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime);
        return new Promise(shortages, ShipDate.Of(today, catalog.Calendar, query.Work, before.Backlog, missing, catalog.Workshop.LeadDays));
    }

    /// <summary>What comes in goes to the orders before this one first: what they lack is lacking too.</summary>
    async Task<List<MissingItem>> Missing(IReadOnlyList<Shortage> shortages, Demand before, ShopCatalog catalog, CancellationToken cancellationToken)
    {
        var skus = shortages.Select(s => s.Sku).ToList();
        var arrivals = await db.Outstanding(skus, cancellationToken);
        return [.. shortages.Select(s => new MissingItem(
            s.Sku, s.Short + before.Awaited.GetValueOrDefault(s.Sku), [.. arrivals[s.Sku]],
            catalog.Supplies.FirstOrDefault(x => x.Sku == s.Sku)?.LeadDays ?? catalog.Workshop.RestockDays))];
    }
}
