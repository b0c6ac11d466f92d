using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>The number of the newest order event; 0 before the first.</summary>
public sealed record LastOrderEvent : IQuery<long>;

/// <summary>The first order event behind a number, of one owner's orders or, where that is null, of all.</summary>
public sealed record NextOrderEvent(long After, string? Owner) : IQuery<FoundEvent>;

/// <summary>How many order events there are behind a number.</summary>
public sealed record CountOrderEvents(long After, string? Owner) : IQuery<int>;

/// <summary>An order event, or none.</summary>
public sealed record FoundEvent(OrderEventAnswer? Event);

/// <summary>Something that became of an order. What it says never changes.</summary>
public sealed record OrderEventAnswer(
    long Number, DateTimeOffset At, Guid OrderId, int OrderNumber, string? Reference, OrderStatus Status, string? Note, string? Carrier, string? Tracking);

sealed class OrderEventsHandler(ShopDb db) :
    IRequestHandler<LastOrderEvent, Outcome<long>>, IRequestHandler<NextOrderEvent, Outcome<FoundEvent>>, IRequestHandler<CountOrderEvents, Outcome<int>>
{
    public async Task<Outcome<long>> Handle(LastOrderEvent query, CancellationToken cancellationToken) =>
        await db.Set<OrderEvent>().MaxAsync(e => (long?)e.Id, cancellationToken) ?? 0;

    public async Task<Outcome<FoundEvent>> Handle(NextOrderEvent query, CancellationToken cancellationToken) =>
        new FoundEvent(await Behind(query.After, query.Owner).OrderBy(x => x.Event.Id)
            .Select(x => new OrderEventAnswer(
                x.Event.Id, x.Event.At, x.Order.Id, x.Order.Number, x.Order.Reference, x.Event.Status, x.Event.Note,
                x.Event.Status == OrderStatus.Shipped ? x.Order.Carrier : null, x.Event.Status == OrderStatus.Shipped ? x.Order.Tracking : null))
            .FirstOrDefaultAsync(cancellationToken));

    public async Task<Outcome<int>> Handle(CountOrderEvents query, CancellationToken cancellationToken) =>
        await Behind(query.After, query.Owner).CountAsync(cancellationToken);

    IQueryable<EventOfOrder> Behind(long after, string? owner) => db.Set<OrderEvent>().AsNoTracking().Where(e => e.Id > after)
        .Join(db.Orders, e => EF.Property<Guid>(e, "OrderId"), o => o.Id, (e, o) => new EventOfOrder { Event = e, Order = o })
        .Where(x => owner == null || x.Order.Owner == owner);

    sealed class EventOfOrder
    {
        public required OrderEvent Event { get; init; }
        public required Order Order { get; init; }
    }
}
