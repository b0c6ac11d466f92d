using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Kits.Batches;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Sawing;

/// <summary>The struts that lie ready cut, by pipe and length.</summary>
public sealed record ListReadyStruts : IQuery<IReadOnlyList<CutStruts>>;

/// <summary>So many struts of a length lie ready cut: what was counted stands.</summary>
public sealed record CountReadyStruts(string PipeSku, Length Length, int Counted) : ICommand<CutStruts>;

sealed class CountReadyStrutsValidator : AbstractValidator<CountReadyStruts>
{
    public CountReadyStrutsValidator()
    {
        RuleFor(c => c.Length).Must(l => l.Millimetres is >= 10 and <= 20_000).WithMessage("A strut is 10 mm to 20 m long.");
        RuleFor(c => c.Counted).InclusiveBetween(0, 1_000_000).WithMessage("'{PropertyValue}' struts: 0 to 1,000,000.");
    }
}

sealed class ListReadyStrutsHandler(ShopDb db) : IRequestHandler<ListReadyStruts, Outcome<IReadOnlyList<CutStruts>>>
{
    public async Task<Outcome<IReadOnlyList<CutStruts>>> Handle(ListReadyStruts query, CancellationToken cancellationToken) =>
        (await db.ReadyStruts.AsNoTracking().Where(s => s.OnHand > 0).OrderBy(s => s.PipeSku).ThenBy(s => s.LengthTenths).ToListAsync(cancellationToken))
        .ConvertAll(s => new CutStruts(s.PipeSku, Length.FromTenths(s.LengthTenths), s.OnHand));
}

sealed class CountReadyStrutsHandler(ShopDb db, IMediator mediator) : IRequestHandler<CountReadyStruts, Outcome<CutStruts>>
{
    public async Task<Outcome<CutStruts>> Handle(CountReadyStruts command, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new KnownItems([command.PipeSku]), cancellationToken)).Succeeds(out _, out var refusal))
            return refusal with { Errors = [new("pipeSku", refusal.Detail)] };
        var there = await db.ReadyStruts.FirstOrDefaultAsync(s => s.PipeSku == command.PipeSku && s.LengthTenths == command.Length.Tenths, cancellationToken);
        if (there is null) db.ReadyStruts.Add(new() { PipeSku = command.PipeSku, LengthTenths = command.Length.Tenths, OnHand = command.Counted });
        else there.OnHand = command.Counted;
        return new CutStruts(command.PipeSku, command.Length, command.Counted);
    }
}

/// <summary>The struts of an order that was cut in a batch and is then cancelled lie ready for others.</summary>
sealed class KeepStrutsOfCancelled(ShopDb db, IMediator mediator) : INotificationHandler<CutOrderCancelled>
{
    public async Task Handle(CutOrderCancelled notification, CancellationToken cancellationToken)
    {
        var order = (await mediator.Send(new GetOrderKit(notification.OrderId), cancellationToken)).Value;
        foreach (var type in order.Kit.StrutTypes)
            await db.AddReady(order.Kit.CutPlan.StockLengths[0].Sku, type.CutLength, type.Count * order.Quantity, cancellationToken);
    }
}
