using KitWorks.Shop.Inventory;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>
/// When stock becomes available, reserves it for the orders that wait, oldest first, in the same transaction. What an
/// older order is short of, no younger order takes before it.
/// </summary>
sealed class ServeWaitingOrders(ShopDb db, IMediator mediator, Call call, TimeProvider clock) : INotificationHandler<StockBecameAvailable>
{
    public async Task Handle(StockBecameAvailable notification, CancellationToken cancellationToken)
    {
        var awaited = new HashSet<string>();
        foreach (var order in await db.Orders.Where(o => o.Status == OrderStatus.Waiting).OrderBy(o => o.Number).ToListAsync(cancellationToken))
        {
            var lines = Order.LinesOf(order.Kit(), order.Quantity);
            if (lines.Any(l => awaited.Contains(l.Sku))) continue;
            var outcome = await mediator.Send(new ReserveStock(lines, order.StockReference), cancellationToken);
            // Refused in the middle of its lines: what was taken of them must go back with the whole transaction.
            if (!outcome.Succeeds(out var reservation, out var refusal)) throw new DbUpdateConcurrencyException(refusal.Detail);
            if (reservation.IsWhole) order.Become(OrderStatus.Reserved, call.Actor, clock.GetUtcNow());
            else awaited.UnionWith(reservation.Shortages.Select(s => s.Sku));
        }
    }
}
