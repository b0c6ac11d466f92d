using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>Hands a packed order to the carrier; its stock leaves the house.</summary>
public sealed record ShipOrder(Guid Id, string? Carrier, string? Tracking) : ICommand<OrderAnswer>;

sealed class ShipOrderValidator : AbstractValidator<ShipOrder>
{
    public ShipOrderValidator()
    {
        RuleFor(c => c.Carrier).MaximumLength(100).WithMessage("A carrier's name is at most 100 characters.");
        RuleFor(c => c.Tracking).MaximumLength(100).WithMessage("A tracking number is at most 100 characters.");
    }
}

sealed class ShipOrderHandler(ShopDb db, IMediator mediator, Call call, TimeProvider clock) : IRequestHandler<ShipOrder, Outcome<OrderAnswer>>
{
    public async Task<Outcome<OrderAnswer>> Handle(ShipOrder command, CancellationToken cancellationToken)
    {
        if (await db.Orders.FirstOrDefaultAsync(o => o.Id == command.Id, cancellationToken) is not { } order) return GetOrderHandler.Unknown(command.Id);
        if (order.Status != OrderStatus.Packed)
            return new Refusal(RefusalKind.Conflict, "order.status",
                $"Order {order.Number} is {order.Status.ToString().ToLowerInvariant()}; an order ships when every bundle is packed. Scan the bundles at the bench.");

        order.ShipBy(command.Carrier, command.Tracking, call.Actor, clock.Moment());
        await db.SaveChangesAsync(cancellationToken);
        await mediator.Send(new ConsumeStock(order.Lines(), order.StockReference), cancellationToken);
        await mediator.Send(new ShipBundles(order.Id), cancellationToken);
        return await mediator.Send(new GetOrder(order.Id), cancellationToken);
    }
}
