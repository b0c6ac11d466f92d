using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>An order gives up its pipe to a batch that cuts it with others; answers what it would have taken.</summary>
public sealed record HandOverPipe(Guid OrderId, int Batch, int Quantity) : ICommand<IReadOnlyList<StockLine>>;

/// <summary>The batch of an order is taken apart: it takes its own pipe again, or waits where that is short.</summary>
public sealed record TakePipeBack(Guid OrderId, IReadOnlyList<StockLine> Pipe) : ICommand<Unit>;

/// <summary>The batch of an order is cut.</summary>
public sealed record HavePipeCut(Guid OrderId) : ICommand<Unit>;

/// <summary>An order was cancelled whose struts are cut. Sent inside the same transaction.</summary>
public sealed record CutOrderCancelled(Guid OrderId) : INotification;

sealed class HandOverPipeHandler(ShopDb db, IMediator mediator, Call call, TimeProvider clock) : IRequestHandler<HandOverPipe, Outcome<IReadOnlyList<StockLine>>>
{
    public async Task<Outcome<IReadOnlyList<StockLine>>> Handle(HandOverPipe command, CancellationToken cancellationToken)
    {
        var order = await db.Orders.SingleAsync(o => o.Id == command.OrderId, cancellationToken);
        if (order.Batch is { } batch) return new Refusal(RefusalKind.Conflict, "order.in-batch", $"Order {order.Number} is in batch {batch} already.");
        if (order.Status is not (OrderStatus.Waiting or OrderStatus.Reserved))
            return new Refusal(RefusalKind.Conflict, "order.status", $"Order {order.Number} is {order.StatusWord}; only those that wait or are reserved are batched.");
        if (order.Quantity != command.Quantity) return new Refusal(RefusalKind.Conflict, "order.changed", $"Order {order.Number} was changed meanwhile. Plan the batch again.");
        var pipes = (await mediator.Send(new GetOrderKit(order.Id), cancellationToken)).Value.Kit.CutPlan.StockLengths.Select(s => s.Sku).ToHashSet();
        var pipe = order.Lines().Where(l => pipes.Contains(l.Sku)).ToList();
        if (order.HoldsStock) await mediator.Send(new ReleaseStock(pipe, order.StockReference, Serve: false), cancellationToken);
        order.GoIntoBatch(command.Batch, [.. order.Lines().Where(l => !pipes.Contains(l.Sku))], call.Actor, clock.Moment());
        return pipe;
    }
}

sealed class TakePipeBackHandler(ShopDb db, IMediator mediator, Call call, TimeProvider clock) : IRequestHandler<TakePipeBack, Outcome<Unit>>
{
    public async Task<Outcome<Unit>> Handle(TakePipeBack command, CancellationToken cancellationToken)
    {
        var order = await db.Orders.SingleAsync(o => o.Id == command.OrderId, cancellationToken);
        if (order.Status is OrderStatus.Cancelled) return Unit.Value;
        if (order.Status is not (OrderStatus.Waiting or OrderStatus.Reserved))
            return new Refusal(RefusalKind.Conflict, "order.status", $"Order {order.Number} is {order.StatusWord}; its batch cannot be taken apart any more.");
        var rest = order.Lines();
        order.LeaveBatch([.. rest, .. command.Pipe], call.Actor, clock.Moment());
        if (!order.HoldsStock) return Unit.Value;
        if ((await mediator.Send(new ReserveStock(command.Pipe, order.StockReference), cancellationToken)).Value.IsWhole) return Unit.Value;
        order.Become(OrderStatus.Waiting, call.Actor, clock.Moment());
        await mediator.Send(new ReleaseStock(rest, order.StockReference, Serve: false), cancellationToken);
        return Unit.Value;
    }
}

sealed class HavePipeCutHandler(ShopDb db, Call call, TimeProvider clock) : IRequestHandler<HavePipeCut, Outcome<Unit>>
{
    public async Task<Outcome<Unit>> Handle(HavePipeCut command, CancellationToken cancellationToken)
    {
        var order = await db.Orders.SingleAsync(o => o.Id == command.OrderId, cancellationToken);
        order.HavePipeCut(call.Actor, clock.Moment());
        return Unit.Value;
    }
}
