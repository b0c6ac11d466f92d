using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>Calls an order off and takes back what was reserved for it.</summary>
public sealed record CancelOrder(Guid Id) : ICommand<OrderAnswer>;

sealed class CancelOrderHandler(ShopDb db, IMediator mediator, Call call, TimeProvider clock) : IRequestHandler<CancelOrder, Outcome<OrderAnswer>>
{
    public async Task<Outcome<OrderAnswer>> Handle(CancelOrder command, CancellationToken cancellationToken)
    {
        var order = await db.Orders.FirstOrDefaultAsync(o => o.Id == command.Id && (call.SeesOnly == null || o.Owner == call.SeesOnly), cancellationToken);
        if (order is null) return GetOrderHandler.Unknown(command.Id);
        if (order.Status is OrderStatus.Shipped or OrderStatus.Cancelled)
            return new Refusal(RefusalKind.Conflict, "order.status", $"Order {order.Number} is {order.Status.ToString().ToLowerInvariant()} and cannot be cancelled.");

        if (order is { Batch: { } batch, IsCut: false })
            return new Refusal(RefusalKind.Conflict, "order.in-batch", $"Order {order.Number} is cut in batch {batch}. Dissolve the batch, or cut it first.");

        var heldStock = order.HoldsStock;
        order.Become(OrderStatus.Cancelled, call.Actor, clock.Moment());
        await db.SaveChangesAsync(cancellationToken);
        if (heldStock) await mediator.Send(new ReleaseStock(order.Lines(), order.StockReference), cancellationToken);
        if (order.IsCut) await mediator.Publish(new CutOrderCancelled(order.Id), cancellationToken);
        return await mediator.Send(new GetOrder(order.Id), cancellationToken);
    }
}
