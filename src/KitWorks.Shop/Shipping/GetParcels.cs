using KitWorks.Geometry;
using KitWorks.Kits.Parcels;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Shipping;

/// <summary>The parcels of an order: as they were planned, or where they are not yet, as they would be.</summary>
/// <param name="OrderId">The order.</param>
/// <param name="KeptOnly">Whether an order whose parcels are not planned has none, for whoever would not wait for a plan.</param>
public sealed record GetParcels(Guid OrderId, bool KeptOnly = false) : IQuery<OrderParcels>;

/// <summary>The parcels of an order.</summary>
/// <param name="OrderId">The order.</param>
/// <param name="Number">The order's number.</param>
/// <param name="Planned">Whether they are kept; those that are not have no SSCC yet and may come out otherwise.</param>
/// <param name="LowerBound">No plan has fewer parcels.</param>
/// <param name="Proven">Whether there is no plan with fewer.</param>
/// <param name="Parcels">The parcels.</param>
public sealed record OrderParcels(Guid OrderId, int Number, bool Planned, int LowerBound, bool Proven, IReadOnlyList<ParcelAnswer> Parcels);

/// <summary>One parcel.</summary>
/// <param name="Number">Its place in the order, from 1.</param>
/// <param name="Kind">What the carrier calls it.</param>
/// <param name="Sscc">Its serial shipping container code; null where it has none.</param>
/// <param name="MassGrams">Its mass, wrapping with it.</param>
/// <param name="Length">Its longest side.</param>
/// <param name="Side">Each of the two others, where it is square.</param>
/// <param name="Bundles">What is in it, from the bottom up.</param>
public sealed record ParcelAnswer(int Number, string Kind, string? Sscc, int MassGrams, Length Length, Length Side, IReadOnlyList<BundleAnswer> Bundles);

sealed class GetParcelsHandler(ShopDb db, IMediator mediator) : IRequestHandler<GetParcels, Outcome<OrderParcels>>
{
    public async Task<Outcome<OrderParcels>> Handle(GetParcels query, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetOrderKit(query.OrderId), cancellationToken)).Succeeds(out var order, out var refusal)) return refusal;
        if (await Kept(db, mediator, order, cancellationToken) is { } kept) return kept;
        if (query.KeptOnly) return new OrderParcels(order.OrderId, order.Number, false, 0, false, []);
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out refusal)) return refusal;
        if (!ParcelPlanner.Plan(order.Kit, order.Quantity, catalog.Parcels).Succeeds(out var plan, out refusal)) return refusal;
        return Answer(order, PlanParcelsHandler.RowsOf(plan, order), await BundlesOf(order, mediator, cancellationToken), planned: false);
    }

    /// <summary>The parcels that are kept; null where there are none, or where the order has been changed since.</summary>
    public static async Task<OrderParcels?> Kept(ShopDb db, IMediator mediator, OrderedKit order, CancellationToken cancellationToken)
    {
        var rows = await db.Parcels.AsNoTracking().Where(p => p.OrderId == order.OrderId).OrderBy(p => p.Number).ToListAsync(cancellationToken);
        return rows.Count > 0 && rows[0].Kits == order.Quantity ? Answer(order, rows, await BundlesOf(order, mediator, cancellationToken), planned: true) : null;
    }

    public static async Task<Dictionary<int, BundleAnswer>> BundlesOf(OrderedKit order, IMediator mediator, CancellationToken cancellationToken) =>
        (await mediator.Send(new ListBundles(order.OrderId), cancellationToken)).Value.ToDictionary(b => b.Number);

    public static OrderParcels Answer(OrderedKit order, IReadOnlyList<ShippedParcel> rows, Dictionary<int, BundleAnswer> bundles, bool planned) => new(
        order.OrderId, order.Number, planned, rows[0].LowerBound, rows[0].LowerBound == rows.Count,
        [
            .. rows.Select(p => new ParcelAnswer(
                p.Number, p.Kind, p.Sscc, p.MassGrams, Length.FromTenths(p.LengthTenths), Length.FromTenths(p.SideTenths),
                [.. StoredJson.Read<List<int>>(p.Bundles).Select(n => bundles[n])])),
        ]);
}
