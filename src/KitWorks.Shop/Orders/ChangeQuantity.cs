using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>
/// Changes how many kits an order is for, before its first bundle is packed. A reserved order keeps what it needs and gives
/// the rest back, or reserves what it needs more; where that is short it gives all back and waits in its old place. It is
/// priced by the price book as it stands now.
/// </summary>
public sealed record ChangeQuantity(Guid Id, int Quantity) : ICommand<OrderAnswer>;

sealed class ChangeQuantityValidator : AbstractValidator<ChangeQuantity>
{
    public ChangeQuantityValidator() =>
        RuleFor(c => c.Quantity).InclusiveBetween(1, 100).WithMessage("'{PropertyValue}' kits cannot be ordered; it is 1 to 100.");
}

sealed class ChangeQuantityHandler(ShopDb db, IMediator mediator, Call call, TimeProvider clock) : IRequestHandler<ChangeQuantity, Outcome<OrderAnswer>>
{
    public async Task<Outcome<OrderAnswer>> Handle(ChangeQuantity command, CancellationToken cancellationToken)
    {
        var order = await db.Orders.FirstOrDefaultAsync(o => o.Id == command.Id && (call.SeesOnly == null || o.Owner == call.SeesOnly), cancellationToken);
        if (order is null) return GetOrderHandler.Unknown(command.Id);
        if (order.Status is not (OrderStatus.Waiting or OrderStatus.Reserved))
            return new Refusal(RefusalKind.Conflict, "order.status", $"Order {order.Number} is {order.StatusWord}; its quantity can be changed until the first bundle is packed.");
        if (order.Batch is { } batch)
            return new Refusal(RefusalKind.Conflict, "order.in-batch", $"Order {order.Number} is cut in batch {batch}; its quantity stays. Dissolve the batch first, or place another order.");
        if (order.Quantity == command.Quantity) return await mediator.Send(new GetOrder(order.Id), cancellationToken);
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out var refusal)) return refusal;
        var kit = (await mediator.Send(new GetOrderKit(order.Id), cancellationToken)).Value.Kit;
        if (!Price.Of(kit, command.Quantity, catalog).Succeeds(out var price, out refusal)) return refusal;

        var held = order.Lines();
        var lines = Order.LinesOf(kit, command.Quantity);
        var wasReserved = order.HoldsStock;
        order.BecomeFor(command.Quantity, lines, price, call.Actor, clock.Moment());
        await mediator.Send(new OpenBundles([new(order.Id, order.Number, new(kit), command.Quantity, Anew: true)]), cancellationToken);
        if (wasReserved && await Keep(order, held, lines, cancellationToken)) order.Become(OrderStatus.Reserved, call.Actor, clock.Moment());
        // What was given back may be enough for others, and fewer kits may be enough for this one.
        await mediator.Publish(new StockBecameAvailable(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return await mediator.Send(new GetOrder(order.Id), cancellationToken);
    }

    async Task<bool> Keep(Order order, List<StockLine> held, List<StockLine> lines, CancellationToken cancellationToken)
    {
        var heldOf = held.ToDictionary(l => l.Sku, l => l.Quantity);
        var more = lines.Select(l => new StockLine(l.Sku, l.Quantity - heldOf[l.Sku])).ToList();
        if (more.TrueForAll(l => l.Quantity <= 0))
        {
            await mediator.Send(new ReleaseStock(more.ConvertAll(l => new StockLine(l.Sku, -l.Quantity)), order.StockReference, Serve: false), cancellationToken);
            return true;
        }
        if ((await mediator.Send(new ReserveStock(more, order.StockReference), cancellationToken)).Value.IsWhole) return true;
        await mediator.Send(new ReleaseStock(held, order.StockReference, Serve: false), cancellationToken);
        return false;
    }
}
