using KitWorks.Geometry;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>The orders that are neither with the carrier nor called off, the oldest promise first.</summary>
public sealed record GetOpenOrders(int Limit = 200) : IQuery<IReadOnlyList<OpenOrder>>;

/// <summary>An order that somebody still has to do something for.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Number">Its number.</param>
/// <param name="Status">Where it stands.</param>
/// <param name="Quantity">How many kits.</param>
/// <param name="Customer">Who it is for.</param>
/// <param name="Reference">The customer's own name for it.</param>
/// <param name="PlacedAt">When it was placed.</param>
/// <param name="ShipBy">When it should leave; null while it waits for stock.</param>
/// <param name="Bundles">How far its bundles are.</param>
public sealed record OpenOrder(
    Guid Id, int Number, OrderStatus Status, int Quantity, string Customer, string? Reference, DateTimeOffset PlacedAt, DateOnly? ShipBy, BundleCount Bundles);

sealed class GetOpenOrdersHandler(ShopDb db, IMediator mediator, Call call) : IRequestHandler<GetOpenOrders, Outcome<IReadOnlyList<OpenOrder>>>
{
    public async Task<Outcome<IReadOnlyList<OpenOrder>>> Handle(GetOpenOrders query, CancellationToken cancellationToken)
    {
        var orders = await db.VisibleOrders(call).Where(o => o.Status != OrderStatus.Shipped && o.Status != OrderStatus.Cancelled)
            .OrderBy(o => o.Number).Take(query.Limit)
            .Select(o => new { o.Id, o.Number, o.Status, o.Quantity, o.CustomerName, o.Reference, o.PlacedAt }).ToListAsync(cancellationToken);
        var bundles = (await mediator.Send(new CountBundles([.. orders.Select(o => o.Id)]), cancellationToken)).Value;
        var catalog = (await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var found, out _) ? found : null;
        return orders
            .Select(o => new OpenOrder(
                o.Id, o.Number, o.Status, o.Quantity, o.CustomerName, o.Reference, o.PlacedAt,
                o.Status == OrderStatus.Waiting ? null : catalog?.Calendar.After(DateOnly.FromDateTime(o.PlacedAt.UtcDateTime), catalog.Workshop.LeadDays),
                bundles.GetValueOrDefault(o.Id, new(0, 0))))
            .OrderBy(o => o.ShipBy ?? DateOnly.MaxValue).ThenBy(o => o.Number).ToList();
    }
}
