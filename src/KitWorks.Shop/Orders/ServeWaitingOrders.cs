using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>The items that orders which wait are short of.</summary>
sealed record FindAwaited : IQuery<IReadOnlySet<string>>;

/// <summary>
/// When stock becomes available, reserves it in the same transaction for the orders that wait: the higher priority first,
/// then the older. What one is short of, none behind it takes, unless the shop has set that whoever fits may go first.
/// </summary>
sealed class ServeWaitingOrders(ShopDb db, IMediator mediator, Call call, TimeProvider clock) : INotificationHandler<StockBecameAvailable>
{
    public async Task Handle(StockBecameAvailable notification, CancellationToken cancellationToken)
    {
        var line = await WaitingLine.Read(db, mediator, cancellationToken);
        if (line.IsEmpty) return;
        var turns = (await mediator.Send(new GetTurns(), cancellationToken)).Value;
        foreach (var waiting in line.Serve(passing: turns == Turns.WhoeverFits))
        {
            var reservation = (await mediator.Send(new ReserveStock(waiting.Lines, Order.ReferenceOf(waiting.Number)), cancellationToken)).Value;
            if (!reservation.IsWhole) throw new InvalidOperationException($"Order {waiting.Number} was to be served, and is short.");
            var order = await db.Orders.SingleAsync(o => o.Id == waiting.Id, cancellationToken);
            order.Become(OrderStatus.Reserved, call.Actor, clock.Moment());
        }
    }
}

sealed class FindAwaitedHandler(ShopDb db, IMediator mediator) : IRequestHandler<FindAwaited, Outcome<IReadOnlySet<string>>>
{
    public async Task<Outcome<IReadOnlySet<string>>> Handle(FindAwaited query, CancellationToken cancellationToken) =>
        (await WaitingLine.Read(db, mediator, cancellationToken)).Awaited();
}

/// <summary>The orders that wait, in the order in which they are served, and what is available.</summary>
sealed class WaitingLine(IReadOnlyList<WaitingOrder> orders, Dictionary<string, int> available)
{
    public bool IsEmpty => orders.Count == 0;

    public static async Task<WaitingLine> Read(ShopDb db, IMediator mediator, CancellationToken cancellationToken)
    {
        // What this transaction has changed so far counts.
        await db.SaveChangesAsync(cancellationToken);
        var orders = (await db.Orders.Where(o => o.Status == OrderStatus.Waiting).OrderByDescending(o => o.Priority).ThenBy(o => o.Number)
            .Select(o => new { o.Id, o.Number, o.StockLines }).ToListAsync(cancellationToken))
            .ConvertAll(o => new WaitingOrder(o.Id, o.Number, StoredJson.Read<List<StockLine>>(o.StockLines)));
        if (orders.Count == 0) return new([], []);
        var skus = orders.SelectMany(o => o.Lines).Select(l => l.Sku).Distinct().ToList();
        return new(orders, new((await mediator.Send(new FindAvailable(skus), cancellationToken)).Value));
    }

    /// <summary>The orders that what is available is enough for, taking it off as it goes to them.</summary>
    public IEnumerable<WaitingOrder> Serve(bool passing)
    {
        var awaited = new HashSet<string>();
        foreach (var order in orders)
        {
            if (!passing && order.Lines.Any(l => awaited.Contains(l.Sku))) continue;
            var shortOf = order.Lines.Where(l => l.Quantity > available.GetValueOrDefault(l.Sku)).Select(l => l.Sku).ToList();
            awaited.UnionWith(shortOf);
            if (shortOf.Count > 0) continue;
            foreach (var line in order.Lines) available[line.Sku] -= line.Quantity;
            yield return order;
        }
    }

    public HashSet<string> Awaited() =>
        [.. orders.SelectMany(o => o.Lines).Where(l => l.Quantity > available.GetValueOrDefault(l.Sku)).Select(l => l.Sku)];
}

/// <summary>An order that waits.</summary>
sealed record WaitingOrder(Guid Id, int Number, IReadOnlyList<StockLine> Lines);
