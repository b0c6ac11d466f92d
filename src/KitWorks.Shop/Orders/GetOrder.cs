using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>One order, as far as the caller may see it.</summary>
public sealed record GetOrder(Guid Id) : IQuery<OrderAnswer>;

/// <summary>The kit of an order, as it was computed when the order was placed.</summary>
public sealed record GetOrderKit(Guid Id) : IQuery<OrderedKit>;

/// <summary>Orders, newest first.</summary>
public sealed record ListOrders(int Limit, string? After, OrderStatus? Status = null) : IQuery<Page<OrderSummary>>;

/// <summary>An order.</summary>
public sealed record OrderAnswer
{
    /// <summary>Its id, in addresses.</summary>
    public required Guid Id { get; init; }

    /// <summary>Its number, on papers.</summary>
    public required int Number { get; init; }

    /// <summary>Where it stands.</summary>
    public required OrderStatus Status { get; init; }

    /// <summary>Of the orders that wait, those with the higher priority are served first.</summary>
    public int Priority { get; init; }

    /// <summary>How many kits.</summary>
    public required int Quantity { get; init; }

    /// <summary>Who it is for.</summary>
    public required Customer Customer { get; init; }

    /// <summary>The caller's own number for it.</summary>
    public string? Reference { get; init; }

    /// <summary>The same for the same design.</summary>
    public required string DesignId { get; init; }

    /// <summary>What it costs.</summary>
    public required Price Price { get; init; }

    /// <summary>What is reserved for it.</summary>
    public required IReadOnlyList<StockLine> Reservations { get; init; }

    /// <summary>What it waits for, as stock stands now.</summary>
    public required IReadOnlyList<Shortage> Shortages { get; init; }

    /// <summary>Its bundles.</summary>
    public required IReadOnlyList<BundleAnswer> Bundles { get; init; }

    /// <summary>Its life so far.</summary>
    public required IReadOnlyList<OrderStep> History { get; init; }

    /// <summary>The batch that cuts its pipe; null where it is cut by itself.</summary>
    public int? Batch { get; init; }

    /// <summary>Who carries it.</summary>
    public string? Carrier { get; init; }

    /// <summary>The carrier's number for it.</summary>
    public string? Tracking { get; init; }

    /// <summary>When it was placed.</summary>
    public required DateTimeOffset PlacedAt { get; init; }
}

/// <summary>One step in an order's life.</summary>
public sealed record OrderStep(OrderStatus Status, string Actor, DateTimeOffset At, string? Note = null);

/// <summary>An order in a list.</summary>
public sealed record OrderSummary(Guid Id, int Number, OrderStatus Status, int Quantity, string Customer, string? Reference, DateTimeOffset PlacedAt);

/// <summary>The kit of an order, and how many of it.</summary>
public sealed record OrderedKit(Guid OrderId, int Number, int Quantity, string Customer, Kit Kit, int? Batch = null);

sealed class GetOrderHandler(ShopDb db, IMediator mediator, Call call) : IRequestHandler<GetOrder, Outcome<OrderAnswer>>
{
    public async Task<Outcome<OrderAnswer>> Handle(GetOrder query, CancellationToken cancellationToken)
    {
        if (await db.VisibleOrders(call).Include(o => o.History).FirstOrDefaultAsync(o => o.Id == query.Id, cancellationToken) is not { } order)
            return Unknown(query.Id);
        var lines = order.Lines();
        var shortages = order.Status == OrderStatus.Waiting ? (await mediator.Send(new FindShortages(lines), cancellationToken)).Value : [];
        return order.Answer(lines, shortages, (await mediator.Send(new ListBundles(order.Id), cancellationToken)).Value);
    }

    public static Refusal Unknown(Guid id) => new(RefusalKind.NotFound, "order.unknown", $"There is no order '{id}' for this key.");
}

sealed class GetOrderKitHandler(ShopDb db, Call call) : IRequestHandler<GetOrderKit, Outcome<OrderedKit>>
{
    public async Task<Outcome<OrderedKit>> Handle(GetOrderKit query, CancellationToken cancellationToken) =>
        await db.VisibleOrders(call).Where(o => o.Id == query.Id)
            .Join(db.OrderKits, o => o.Id, k => k.OrderId, (o, k) => new { o.Id, o.Number, o.Quantity, o.CustomerName, o.Batch, k.Packed })
            .FirstOrDefaultAsync(cancellationToken) is { } order
            ? new OrderedKit(order.Id, order.Number, order.Quantity, order.CustomerName, StoredJson.Unpack<Kit>(order.Packed), order.Batch)
            : GetOrderHandler.Unknown(query.Id);
}

sealed class ListOrdersHandler(ShopDb db, Call call) : IRequestHandler<ListOrders, Outcome<Page<OrderSummary>>>
{
    public async Task<Outcome<Page<OrderSummary>>> Handle(ListOrders query, CancellationToken cancellationToken)
    {
        var before = int.MaxValue;
        if (query.After is { } after && !int.TryParse(after, out before)) return Pages.BadCursor;
        var orders = await db.VisibleOrders(call)
            .Where(o => o.Number < before && (query.Status == null || o.Status == query.Status))
            .OrderByDescending(o => o.Number).Take(query.Limit + 1)
            .Select(o => new OrderSummary(o.Id, o.Number, o.Status, o.Quantity, o.CustomerName, o.Reference, o.PlacedAt))
            .ToListAsync(cancellationToken);
        return Pages.Of(orders, query.Limit, o => o.Number.ToString());
    }
}

static class OrderQueries
{
    /// <summary>The orders that the caller may see.</summary>
    public static IQueryable<Order> VisibleOrders(this ShopDb db, Call call) =>
        db.Orders.AsNoTracking().Where(o => call.SeesOnly == null || o.Owner == call.SeesOnly);

    /// <summary>The answer for an order.</summary>
    public static OrderAnswer Answer(this Order order, IReadOnlyList<StockLine> lines, IReadOnlyList<Shortage> shortages, IReadOnlyList<BundleAnswer> bundles) => new()
    {
        Id = order.Id,
        Number = order.Number,
        Status = order.Status,
        Priority = order.Priority,
        Quantity = order.Quantity,
        Customer = new(order.CustomerName, order.CustomerEmail, order.CustomerAddress),
        Reference = order.Reference,
        DesignId = order.DesignId,
        Price = StoredJson.Read<Price>(order.Price),
        Reservations = order.HoldsStock ? lines : [],
        Shortages = shortages,
        Bundles = bundles,
        // An event that is not written yet has no number yet, and is the newest.
        History = [.. order.History.OrderBy(e => e.Id == 0 ? long.MaxValue : e.Id).Select(e => new OrderStep(e.Status, e.Actor, e.At, e.Note))],
        Batch = order.Batch,
        Carrier = order.Carrier,
        Tracking = order.Tracking,
        PlacedAt = order.PlacedAt,
    };
}
