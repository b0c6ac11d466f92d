using KitWorks.Geometry;
using KitWorks.Kits.Planning;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Planning;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>When an order can leave, and what it waits for.</summary>
public sealed record FindOrderShipDate(Guid Id) : IQuery<Promise>;

sealed class FindDemandHandler(ShopDb db) : IRequestHandler<FindDemand, Outcome<Demand>>
{
    public async Task<Outcome<Demand>> Handle(FindDemand query, CancellationToken cancellationToken) => await Of(db.Orders, cancellationToken);

    public static async Task<Demand> Of(IQueryable<Order> orders, CancellationToken cancellationToken)
    {
        var waiting = await orders.Where(o => o.Status == OrderStatus.Waiting).Select(o => o.StockLines).ToListAsync(cancellationToken);
        var open = orders.Where(o => o.Status == OrderStatus.Waiting || o.Status == OrderStatus.Reserved || o.Status == OrderStatus.Picking);
        var work = await open.GroupBy(_ => 1).Select(g => new { Cuts = g.Sum(o => o.Cuts), Bundles = g.Sum(o => o.BundleCount) }).FirstOrDefaultAsync(cancellationToken);
        return new(
            waiting.SelectMany(StoredJson.Read<List<StockLine>>).GroupBy(l => l.Sku).ToDictionary(g => g.Key, g => g.Sum(l => l.Quantity)),
            new(work?.Cuts ?? 0, work?.Bundles ?? 0));
    }
}

sealed class FindOrderShipDateHandler(ShopDb db, IMediator mediator, Call call) : IRequestHandler<FindOrderShipDate, Outcome<Promise>>
{
    public async Task<Outcome<Promise>> Handle(FindOrderShipDate query, CancellationToken cancellationToken)
    {
        if (await db.VisibleOrders(call).FirstOrDefaultAsync(o => o.Id == query.Id, cancellationToken) is not { } order) return GetOrderHandler.Unknown(query.Id);
        if (order.Status is OrderStatus.Shipped or OrderStatus.Cancelled)
            return new Refusal(RefusalKind.Conflict, "order.status", $"Order {order.Number} is {order.StatusWord}.");
        var work = order.Status == OrderStatus.Packed ? default : new Work(order.Cuts, order.BundleCount);
        var before = await FindDemandHandler.Of(
            db.Orders.Where(o => o.Priority > order.Priority || (o.Priority == order.Priority && o.Number < order.Number)), cancellationToken);
        return await mediator.Send(new FindShipDate(order.Lines(), work, new(order.HoldsStock, before)), cancellationToken);
    }
}
