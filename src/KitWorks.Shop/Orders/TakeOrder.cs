using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;

namespace KitWorks.Shop.Orders;

/// <summary>What to do when stock does not cover an order.</summary>
public enum WhenShort
{
    /// <summary>Take the order and wait for stock.</summary>
    Wait,

    /// <summary>Refuse the order.</summary>
    Refuse,
}

/// <summary>Takes an order whose kit is made: gives it a number, reserves all of its stock or none, and opens its bundles.</summary>
sealed record TakeOrder(Kit Kit, byte[] PackedKit, Price Price, int Quantity, Customer Customer, string? Reference, WhenShort WhenShort) : ICommand<OrderAnswer>
{
    public IReadOnlyList<StockLine> Lines { get; } = Order.LinesOf(Kit, Quantity);
}

sealed class TakeOrderHandler(ShopDb db, IMediator mediator, Call call, TimeProvider clock) : IRequestHandler<TakeOrder, Outcome<OrderAnswer>>
{
    public async Task<Outcome<OrderAnswer>> Handle(TakeOrder command, CancellationToken cancellationToken)
    {
        var now = clock.Moment();
        var order = Order.Place(await db.TakeNumber(CounterQueries.Order, cancellationToken), call.Actor, command, now);
        if (!(await Reserve(order, command.Lines, cancellationToken)).Succeeds(out var reservation, out var refusal)) return refusal;
        if (reservation.IsWhole) order.Become(OrderStatus.Reserved, call.Actor, now);
        else if (command.WhenShort == WhenShort.Refuse) return Short(reservation.Shortages);

        db.Orders.Add(order);
        db.OrderKits.Add(new() { OrderId = order.Id, Packed = command.PackedKit });
        var bundles = (await mediator.Send(new OpenBundles(order.Id, order.Number, command.Kit, command.Quantity), cancellationToken)).Value;
        return order.Answer(command.Lines, reservation.Shortages, bundles);
    }

    /// <summary>Reserves, unless an order that waits has the first right to what this one takes.</summary>
    async Task<Outcome<Reservation>> Reserve(Order order, IReadOnlyList<StockLine> lines, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetTurns(), cancellationToken)).Succeeds(out var turns, out var refusal)) return refusal;
        if (turns == Turns.OldestFirst)
        {
            var awaited = (await mediator.Send(new FindAwaited(), cancellationToken)).Value;
            if (lines.Where(l => awaited.Contains(l.Sku)).Select(l => new Shortage(l.Sku, l.Quantity)).ToList() is [_, ..] left) return new Reservation(left);
        }
        return await mediator.Send(new ReserveStock(lines, order.StockReference), cancellationToken);
    }

    static Refusal Short(IReadOnlyList<Shortage> shortages) => new(RefusalKind.Conflict, "stock.short",
        $"Stock is short of {string.Join(", ", shortages.Select(s => $"{s.Short} × {s.Sku}"))}. Order with whenShort \"wait\", or fewer kits.");
}
