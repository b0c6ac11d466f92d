using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Parcels;
using KitWorks.Labels;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Shipping;

/// <summary>
/// Plans the parcels of an order and keeps them, each with an SSCC where the shop has a GS1 prefix. Parcels that are kept
/// stay as they are, unless they are to be planned anew: then each gets a new SSCC, and the old ones are never used again.
/// </summary>
public sealed record PlanParcels(Guid OrderId, bool Anew = false) : IPreparedCommand<OrderParcels>;

sealed class PlanParcelsHandler(ShopDb db, IMediator mediator) : IRequestHandler<PlanParcels, Outcome<OrderParcels>>
{
    public async Task<Outcome<OrderParcels>> Handle(PlanParcels command, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetOrderKit(command.OrderId), cancellationToken)).Succeeds(out var order, out var refusal)) return refusal;
        if (!command.Anew && await GetParcelsHandler.Kept(db, mediator, order, cancellationToken) is { } kept) return kept;
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out refusal)) return refusal;
        return ParcelPlanner.Plan(order.Kit, order.Quantity, catalog.Parcels).Succeeds(out var plan, out refusal)
            ? await mediator.Send(new KeepParcels(order, plan, catalog.Parcels, command.Anew), cancellationToken)
            : refusal;
    }

    /// <summary>The rows of a plan, without SSCCs.</summary>
    public static List<ShippedParcel> RowsOf(ParcelPlan plan, OrderedKit order) => [.. plan.Parcels.Select(p => RowOf(p, plan, order, null))];

    public static ShippedParcel RowOf(Parcel parcel, ParcelPlan plan, OrderedKit order, string? sscc) => new()
    {
        OrderId = order.OrderId,
        Number = parcel.Number,
        Kits = order.Quantity,
        Kind = parcel.Kind.Name,
        Sscc = sscc,
        MassGrams = parcel.MassGrams,
        LengthTenths = parcel.Length.Tenths,
        SideTenths = parcel.Side.Tenths,
        Bundles = StoredJson.Write(parcel.Bundles.Select(b => b.Number)),
        LowerBound = plan.LowerBound,
    };
}

/// <summary>Keeps parcels that are planned.</summary>
sealed record KeepParcels(OrderedKit Order, ParcelPlan Plan, ParcelRules Rules, bool Anew) : ICommand<OrderParcels>;

sealed class KeepParcelsHandler(ShopDb db, IMediator mediator) : IRequestHandler<KeepParcels, Outcome<OrderParcels>>
{
    public async Task<Outcome<OrderParcels>> Handle(KeepParcels command, CancellationToken cancellationToken)
    {
        var order = command.Order;
        var status = (await mediator.Send(new GetOrder(order.OrderId), cancellationToken)).Value;
        if (status.Status is OrderStatus.Shipped or OrderStatus.Cancelled)
            return new Refusal(RefusalKind.Conflict, "order.status", $"Order {order.Number} is {status.Status.ToString().ToLowerInvariant()}; its parcels are not planned any more.");
        if (status.Quantity != order.Quantity)
            return new Refusal(RefusalKind.Conflict, "order.changed", $"Order {order.Number} was changed meanwhile. Plan its parcels again.");
        // Someone may have planned them since this was prepared.
        if (!command.Anew && await GetParcelsHandler.Kept(db, mediator, order, cancellationToken) is { } kept) return kept;
        await db.Parcels.Where(p => p.OrderId == order.OrderId).ExecuteDeleteAsync(cancellationToken);
        var rows = new List<ShippedParcel>();
        foreach (var parcel in command.Plan.Parcels)
        {
            if (!(await NextSscc(command.Rules, cancellationToken)).Succeeds(out var sscc, out var refusal)) return refusal;
            rows.Add(PlanParcelsHandler.RowOf(parcel, command.Plan, order, sscc));
        }
        db.Parcels.AddRange(rows);
        return GetParcelsHandler.Answer(order, rows, await GetParcelsHandler.BundlesOf(order, mediator, cancellationToken), planned: true);
    }

    /// <summary>The counter goes up only and is part of this transaction, so that no serial is ever given twice.</summary>
    async Task<Outcome<string?>> NextSscc(ParcelRules rules, CancellationToken cancellationToken)
    {
        if (rules.Gs1CompanyPrefix is not { } prefix) return (string?)null;
        return Sscc.Of(rules.SsccExtension, prefix, await db.TakeNumbers(CounterQueries.Sscc, 1, cancellationToken)).Select(sscc => (string?)sscc.ToString());
    }
}
