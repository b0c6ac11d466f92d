using KitWorks.Api.Access;
using KitWorks.Api.Contract;
using KitWorks.Api.Http;
using KitWorks.Drawings;
using KitWorks.Labels;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Printing;
using MediatR;

namespace KitWorks.Api.Endpoints;

/// <summary>Labels and papers.</summary>
static class Printing
{
    public static void MapPrinting(this IEndpointRouteBuilder app)
    {
        var order = app.MapGroup("/api/orders/{id:guid}").RequireAuthorization(KeyAuthentication.AnyKey).WithTags("Papers");
        MapLabels(order, "labels.pdf", LabelFormat.Pdf, "application/pdf", "The labels of an order's bundles");
        MapLabels(order, "labels.png", LabelFormat.Png, "image/png", "One bundle's label as a picture");
        MapLabels(order, "labels.svg", LabelFormat.Svg, "image/svg+xml", "One bundle's label as a drawing");

        MapPaper(order, "picklist.pdf", PaperKind.Picklist, "What to take from stock, by bin path");
        MapPaper(order, "cut-plan.pdf", PaperKind.CutSheet, "How to cut the pipe of one kit, for the saw");
        MapPaper(order, "packing-list.pdf", PaperKind.PackingList, "What is in the box");
        MapPaper(order, "guide.pdf", PaperKind.BuildGuide, "How to build it, tier by tier");

        order.MapGet("picklist", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new GetPicklist(id), cancellationToken)).WithSummary("What to take from stock for an order").Produces<Shop.Orders.Picklist>();
        order.MapGet("picklist.csv", async (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            (await mediator.Send(new GetPicklist(id), cancellationToken)).Else(picklist =>
                TypedResults.Text(PicklistCsv.Write(picklist), "text/csv; charset=utf-8")))
            .WithSummary("The same for a spreadsheet").Produces<string>(200, "text/csv");
    }

    static void MapPaper(RouteGroupBuilder order, string name, PaperKind paper, string summary) => order
        .MapGet(name, async (Guid id, string? paperSize, string? units, IMediator mediator, CancellationToken cancellationToken) =>
        {
            var faults = new Faults();
            var size = faults.Choose("paperSize", paperSize, PaperSize.A4, ("a4", PaperSize.A4), ("letter", PaperSize.Letter));
            var unit = faults.Choose("units", units, Units.Metric, ("metric", Units.Metric), ("feet", Units.FeetAndInches));
            return faults.Refusal is { } refusal
                ? Problems.Of(refusal)
                : (await mediator.Send(new GetOrderPaper(id, paper, size!.Value, unit!.Value), cancellationToken)).Else(pdf => Answers.Unchanging(pdf, "application/pdf"));
        })
        .WithSummary(summary).Produces(200, contentType: "application/pdf");

    static void MapLabels(RouteGroupBuilder order, string name, LabelFormat format, string contentType, string summary) => order
        .MapGet(name, async (Guid id, int? tier, string? bundle, string? sheet, int? startAt, int? dpi, IMediator mediator, CancellationToken cancellationToken) =>
            (await mediator.Send(new GetOrderLabels(id, format)
            {
                Tier = tier, Bundle = bundle, Stock = sheet ?? LabelStock.Page100x150.Name, StartAt = startAt ?? 1, Dpi = dpi ?? 300,
            }, cancellationToken)).Else(labels => Answers.Unchanging(labels, contentType)))
        .WithSummary(summary).Produces(200, contentType: contentType);
}
