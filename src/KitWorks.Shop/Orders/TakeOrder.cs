using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Shop.Auditing;
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

/// <summary>
/// Takes an order whose kit is made: gives it a number, reserves all of its stock or none, and opens its bundles. It waits
/// at the <see cref="OrderDesk"/>, where orders that come at the same time are taken together.
/// </summary>
sealed record TakeOrder(Kit Kit, Price Price, int Quantity, Customer Customer, string? Reference, WhenShort WhenShort) : IPreparedCommand<OrderAnswer>
{
    public IReadOnlyList<StockLine> Lines { get; } = Order.LinesOf(Kit, Quantity);
    public byte[] PackedKit { get; } = StoredJson.Pack(Kit);
    public BundleContents Bundles { get; } = new(Kit);
}

sealed class TakeOrderHandler(OrderDesk desk, Call call, Answering answering, AuditTrail audit) : IRequestHandler<TakeOrder, Outcome<OrderAnswer>>
{
    public Task<Outcome<OrderAnswer>> Handle(TakeOrder command, CancellationToken cancellationToken) => desk.Take(command, call.Actor, answering, audit, cancellationToken);
}
