using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>Sets an order's priority. Of the orders that wait, the higher is served first; of equals, the older.</summary>
public sealed record PreferOrder(Guid Id, int Priority) : ICommand<OrderAnswer>;

sealed class PreferOrderValidator : AbstractValidator<PreferOrder>
{
    public PreferOrderValidator() =>
        RuleFor(c => c.Priority).InclusiveBetween(-100, 100).WithMessage("'{PropertyValue}' is not a priority; it is -100 to 100, and 0 is usual.");
}

sealed class PreferOrderHandler(ShopDb db, IMediator mediator, Call call, TimeProvider clock) : IRequestHandler<PreferOrder, Outcome<OrderAnswer>>
{
    public async Task<Outcome<OrderAnswer>> Handle(PreferOrder command, CancellationToken cancellationToken)
    {
        if (await db.Orders.FirstOrDefaultAsync(o => o.Id == command.Id, cancellationToken) is not { } order) return GetOrderHandler.Unknown(command.Id);
        if (order.Status is OrderStatus.Shipped or OrderStatus.Cancelled)
            return new Refusal(RefusalKind.Conflict, "order.status", $"Order {order.Number} is {order.StatusWord}; it waits for nothing any more.");

        order.Prefer(command.Priority, call.Actor, clock.Moment());
        // The one that held the others up may stand behind them now.
        await mediator.Publish(new StockBecameAvailable(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return await mediator.Send(new GetOrder(order.Id), cancellationToken);
    }
}
