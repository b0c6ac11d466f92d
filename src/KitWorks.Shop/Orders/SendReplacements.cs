using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>Takes parts from stock to replace what was missing or broke in an order that was shipped.</summary>
public sealed record SendReplacements(Guid Id, IReadOnlyList<StockLine> Lines, string Reason) : ICommand<OrderAnswer>;

/// <summary>Takes parts of a shipped order back into stock, at most what went out with it.</summary>
public sealed record TakeBack(Guid Id, IReadOnlyList<StockLine> Lines, string Reason) : ICommand<OrderAnswer>;

sealed class SendReplacementsValidator : AbstractValidator<SendReplacements>
{
    public SendReplacementsValidator()
    {
        RuleFor(c => c.Lines).SetValidator(new PartLinesValidator());
        RuleFor(c => c.Reason).NotEmpty().WithMessage("Say why, for the ledger.").MaximumLength(200).WithMessage("A reason is at most 200 characters.");
    }
}

sealed class TakeBackValidator : AbstractValidator<TakeBack>
{
    public TakeBackValidator()
    {
        RuleFor(c => c.Lines).SetValidator(new PartLinesValidator());
        RuleFor(c => c.Reason).NotEmpty().WithMessage("Say why, for the ledger.").MaximumLength(200).WithMessage("A reason is at most 200 characters.");
    }
}

sealed class PartLinesValidator : AbstractValidator<IReadOnlyList<StockLine>>
{
    public PartLinesValidator()
    {
        RuleFor(l => l.Count).InclusiveBetween(1, 500).WithMessage("Give 1 to 500 lines.");
        RuleForEach(l => l).ChildRules(line =>
            line.RuleFor(l => l.Quantity).InclusiveBetween(1, 1_000_000).WithMessage("'{PropertyValue}' is not a quantity; it is 1 to 1,000,000."));
    }
}

sealed class SendReplacementsHandler(ShopDb db, IMediator mediator, Call call, TimeProvider clock) :
    IRequestHandler<SendReplacements, Outcome<OrderAnswer>>, IRequestHandler<TakeBack, Outcome<OrderAnswer>>
{
    public async Task<Outcome<OrderAnswer>> Handle(SendReplacements command, CancellationToken cancellationToken) =>
        await AfterShipping(command.Id, $"replaced: {command.Reason}",
            order => mediator.Send(new ReplaceStock(command.Lines, order.StockReference, command.Reason), cancellationToken), cancellationToken);

    public async Task<Outcome<OrderAnswer>> Handle(TakeBack command, CancellationToken cancellationToken) =>
        await AfterShipping(command.Id, $"taken back: {command.Reason}",
            order => mediator.Send(new ReturnStock(command.Lines, order.StockReference, command.Reason), cancellationToken), cancellationToken);

    async Task<Outcome<OrderAnswer>> AfterShipping(Guid id, string note, Func<Order, Task<Outcome<Unit>>> move, CancellationToken cancellationToken)
    {
        if (await db.Orders.FirstOrDefaultAsync(o => o.Id == id, cancellationToken) is not { } order) return GetOrderHandler.Unknown(id);
        if (order.Status != OrderStatus.Shipped)
            return new Refusal(RefusalKind.Conflict, "order.status", $"Order {order.Number} is {order.StatusWord}; parts are replaced and taken back when it has shipped.");
        order.Become(OrderStatus.Shipped, call.Actor, clock.Moment(), note);
        await db.SaveChangesAsync(cancellationToken);
        if (!(await move(order)).Succeeds(out _, out var refusal)) return refusal;
        return await mediator.Send(new GetOrder(order.Id), cancellationToken);
    }
}
