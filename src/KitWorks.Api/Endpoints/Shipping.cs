using KitWorks.Api.Access;
using KitWorks.Api.Contract;
using KitWorks.Api.Http;
using KitWorks.Kits.Planning;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Printing;
using KitWorks.Shop.Shipping;
using MediatR;

namespace KitWorks.Api.Endpoints;

/// <summary>When orders leave, and in which parcels.</summary>
static class Shipping
{
    public static void MapShipping(this IEndpointRouteBuilder app)
    {
        var order = app.MapGroup("/api/orders/{id:guid}").RequireAuthorization(KeyAuthentication.AnyKey).WithTags("Shipping");
        order.MapGet("ship-date", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new FindOrderShipDate(id), p => p.Date, cancellationToken)).WithSummary("When an order can leave, and what it waits for").Produces<ShipDate>();
        order.MapGet("parcels", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new GetParcels(id), ParcelsView.Of, cancellationToken)).WithSummary("The parcels of an order, as planned or as they would be").Produces<ParcelsView>();
        order.MapPost("parcels", (Guid id, ParcelsBody? body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new PlanParcels(id, body?.Anew ?? false), ParcelsView.Of, cancellationToken))
            .RequireAuthorization(KeyAuthentication.Staff).WithSummary("Plan the parcels of an order and keep them, each with its SSCC").Produces<ParcelsView>();
        foreach (var form in Printing.Forms)
            order.MapGet($"parcel-labels.{form.Extension}", (Guid id, int? parcel, [AsParameters] LabelQuery query, IMediator mediator, CancellationToken cancellationToken) =>
                Printing.Send(mediator, new GetParcelLabels(id, query.To(form.Format), parcel), form.MediaType, cancellationToken))
                .WithSummary($"The labels of an order's parcels, with their SSCCs{form.Words}").Produces(200, contentType: form.MediaType);
    }
}

/// <summary>Whether parcels that are planned are to be planned anew, with new SSCCs.</summary>
sealed record ParcelsBody(bool? Anew);
