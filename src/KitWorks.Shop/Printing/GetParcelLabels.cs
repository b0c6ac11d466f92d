using System.Globalization;
using KitWorks.Geometry;
using KitWorks.Labels;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Shipping;
using MediatR;

namespace KitWorks.Shop.Printing;

/// <summary>The labels of an order's parcels, for the carrier; their parcels are planned and have SSCCs.</summary>
/// <param name="OrderId">The order.</param>
/// <param name="How">How they are printed.</param>
/// <param name="Parcel">The label of this parcel only; null for all.</param>
public sealed record GetParcelLabels(Guid OrderId, LabelPrint How, int? Parcel = null) : IQuery<Stream>;

sealed class GetParcelLabelsHandler(IMediator mediator, OrderLabelPress press, ShopSettings settings) : IRequestHandler<GetParcelLabels, Outcome<Stream>>
{
    public async Task<Outcome<Stream>> Handle(GetParcelLabels query, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetParcels(query.OrderId), cancellationToken)).Succeeds(out var parcels, out var refusal)) return refusal;
        if (!parcels.Planned)
            return new Refusal(RefusalKind.Conflict, "parcel.not-planned", $"The parcels of order {parcels.Number} are not planned yet. Plan them with POST /api/orders/{parcels.OrderId}/parcels.");
        var wanted = parcels.Parcels.Where(p => query.Parcel is null || p.Number == query.Parcel).ToList();
        if (wanted.Count == 0)
            return new Refusal(RefusalKind.NotFound, "label.none", $"Order {parcels.Number} has no parcel {query.Parcel}; it has 1 to {parcels.Parcels.Count}.");
        if (wanted.Exists(p => p.Sscc is null))
            return new Refusal(RefusalKind.Conflict, "parcel.no-sscc",
                "These parcels have no SSCC, because the shop had no GS1 company prefix when they were planned. Put it with PUT /api/catalog/parcels, and plan the parcels anew.");
        if (!(await mediator.Send(new GetOrder(query.OrderId), cancellationToken)).Succeeds(out var order, out refusal)) return refusal;
        return press.Print([.. wanted.Select(p => LabelOf(p, order, parcels.Parcels.Count))], query.How, LabelStock.Page100x150);
    }

    ParcelLabel LabelOf(ParcelAnswer parcel, OrderAnswer order, int parcels) => new()
    {
        Sscc = Sscc.Parse(parcel.Sscc!).Value,
        Shop = settings.ShopName,
        From = settings.ShopName,
        To = Words.Address(order.Customer),
        Order = order.Number.ToString(CultureInfo.InvariantCulture),
        Reference = order.Reference ?? "",
        Parcel = parcel.Number,
        Parcels = parcels,
        Mass = Words.Mass(parcel.MassGrams),
        Measures = Words.Measures(parcel),
        Carrier = order.Carrier ?? "",
        // By their numbers: the codes of thirty bundles would not be read.
        Bundles = [.. parcel.Bundles.Select(b => b.Number).Order().Select(n => n.ToString(CultureInfo.InvariantCulture))],
    };
}
