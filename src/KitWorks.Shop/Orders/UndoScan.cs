using KitWorks.Geometry;
using KitWorks.Shop.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>Takes a scan back: the bundle is open again, and the order stands where it stood before.</summary>
public sealed record UndoScan(string Code) : ICommand<ScanAnswer>;

sealed class UndoScanHandler(ShopDb db, IMediator mediator, Call call, TimeProvider clock) : IRequestHandler<UndoScan, Outcome<ScanAnswer>>
{
    public async Task<Outcome<ScanAnswer>> Handle(UndoScan command, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetBundle(ScanBundleHandler.CodeIn(command.Code)), cancellationToken)).Succeeds(out var scanned, out var refusal))
            return refusal with { Kind = RefusalKind.Impossible, Errors = [new("code", refusal.Detail)] };
        var order = await db.Orders.SingleAsync(o => o.Id == scanned.OrderId, cancellationToken);
        if (scanned.Status == BundleStatus.Packed && order.Status is not (OrderStatus.Picking or OrderStatus.Packed))
            return new Refusal(RefusalKind.Conflict, "order.status", $"Order {order.Number} is {order.Status.ToString().ToLowerInvariant()}; its bundles stay as they are. Nothing was changed.");

        if (!(await mediator.Send(new UnpackBundle(scanned.Code), cancellationToken)).Succeeds(out var opened, out refusal)) return refusal;
        var bundles = (await mediator.Send(new ListBundles(order.Id), cancellationToken)).Value;
        var open = bundles.Where(b => b.Status == BundleStatus.Open).Select(b => b.Code).ToList();
        var status = open.Count == bundles.Count ? OrderStatus.Reserved : OrderStatus.Picking;
        if (order.Status != status) order.Become(status, call.Actor, clock.Moment());
        return new ScanAnswer(opened, order.Number, order.Status, open);
    }
}
