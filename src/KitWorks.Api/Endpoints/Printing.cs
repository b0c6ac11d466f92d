using KitWorks.Api.Access;
using KitWorks.Api.Contract;
using KitWorks.Api.Http;
using KitWorks.Drawings;
using KitWorks.Geometry;
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
        foreach (var form in Forms)
            order.MapGet($"labels.{form.Extension}", (Guid id, int? tier, string? bundle, [AsParameters] LabelQuery query, IMediator mediator, CancellationToken cancellationToken) =>
                Send(mediator, new GetOrderLabels(id, query.To(form.Format)) { Tier = tier, Bundle = bundle }, form.MediaType, cancellationToken))
                .WithSummary($"The labels of an order's bundles, bags and cover{form.Words}").Produces(200, contentType: form.MediaType);
        foreach (var form in Forms)
            order.MapGet($"remnant-labels.{form.Extension}", (Guid id, [AsParameters] LabelQuery query, IMediator mediator, CancellationToken cancellationToken) =>
                Send(mediator, new GetRemnantLabels(id, query.To(form.Format)), form.MediaType, cancellationToken))
                .RequireAuthorization(KeyAuthentication.Staff).WithSummary($"A label for each offcut worth keeping that an order leaves{form.Words}").Produces(200, contentType: form.MediaType);
        foreach (var form in Forms)
            app.MapGet($"/api/stock/bin-labels.{form.Extension}", (string[]? bin, [AsParameters] LabelQuery query, IMediator mediator, CancellationToken cancellationToken) =>
                Send(mediator, new GetBinLabels(bin ?? [], query.To(form.Format)), form.MediaType, cancellationToken))
                .RequireAuthorization(KeyAuthentication.Staff).WithTags("Stock").WithSummary($"The labels of bins, all or those asked for{form.Words}").Produces(200, contentType: form.MediaType);
        app.MapGet("/api/label-templates", (OrderLabelPress press) => TypedResults.Ok(new LabelTemplatesView(press.Press.Templates)))
            .RequireAuthorization(KeyAuthentication.AnyKey).WithTags("Papers").WithSummary("The templates that labels and papers are drawn from");
        app.MapGet("/api/label-stocks", (OrderLabelPress press) => TypedResults.Ok(new LabelStocksView([.. press.Stocks.Select(LabelStockView.Of)])))
            .RequireAuthorization(KeyAuthentication.AnyKey).WithTags("Papers").WithSummary("The sheets and rolls that labels are printed on");

        MapPaper(order, "picklist.pdf", PaperKind.Picklist, "What to take from stock, by bin path");
        MapPaper(order, "cut-plan.pdf", PaperKind.CutSheet, "How to cut the pipe of all kits, for the saw");
        MapPaper(order, "packing-list.pdf", PaperKind.PackingList, "What is in the box");
        MapPaper(order, "guide.pdf", PaperKind.BuildGuide, "How to build it, tier by tier");

        order.MapGet("picklist", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new GetPicklist(id), cancellationToken)).WithSummary("What to take from stock for an order").Produces<Shop.Orders.Picklist>();
        order.MapGet("picklist.csv", async (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            (await mediator.Send(new GetPicklist(id), cancellationToken)).Else(picklist =>
                TypedResults.Text(PicklistCsv.Write(picklist), "text/csv; charset=utf-8")))
            .WithSummary("The same for a spreadsheet").Produces<string>(200, "text/csv");
    }

    static void MapPaper(RouteGroupBuilder order, string name, PaperKind paper, string summary) =>
        MapPaper(order, name, (id, size, units) => new GetOrderPaper(id, paper, size, units), summary);

    /// <summary>A paper of what an id in the address names.</summary>
    public static void MapPaper(RouteGroupBuilder group, string path, Func<Guid, PaperSize, Units, IRequest<Outcome<byte[]>>> ask, string summary) => group
        .MapGet(path, async (Guid id, string? paperSize, string? units, IMediator mediator, CancellationToken cancellationToken) =>
        {
            var faults = new Faults();
            var size = faults.Choose("paperSize", paperSize, PaperSize.A4, ("a4", PaperSize.A4), ("letter", PaperSize.Letter));
            var unit = faults.Choose("units", units, Units.Metric, ("metric", Units.Metric), ("feet", Units.FeetAndInches));
            return faults.Refusal is { } refusal
                ? Problems.Of(refusal)
                : (await mediator.Send(ask(id, size!.Value, unit!.Value), cancellationToken)).Else(pdf => Answers.Unchanging(pdf, "application/pdf"));
        })
        .WithSummary(summary).Produces(200, contentType: "application/pdf");

    /// <summary>What labels come as over HTTP.</summary>
    public static readonly (string Extension, LabelFormat Format, string MediaType, string Words)[] Forms =
        [("pdf", LabelFormat.Pdf, "application/pdf", ""), ("png", LabelFormat.Png, "image/png", ": the first as a picture"), ("svg", LabelFormat.Svg, "image/svg+xml", ": the first as a drawing")];

    public static async Task<IResult> Send(IMediator mediator, IRequest<Outcome<Stream>> labels, string mediaType, CancellationToken cancellationToken) =>
        (await mediator.Send(labels, cancellationToken)).Succeeds(out var content, out var refusal)
            ? await Answers.Unchanging(content, mediaType, cancellationToken)
            : Problems.Of(refusal);
}

/// <summary>How labels are asked for.</summary>
/// <param name="Sheet">The name of a label stock; /api/label-stocks lists them.</param>
/// <param name="StartAt">The first free place of a half-used sheet, from 1.</param>
/// <param name="Dpi">Dots to the inch of the printer, 300 if not said.</param>
/// <param name="Template">The name of a template; /api/label-templates lists them. The largest that fits if not said.</param>
sealed record LabelQuery(string? Sheet, int? StartAt, int? Dpi, string? Template)
{
    public LabelPrint To(LabelFormat format) => new(format) { Stock = Sheet, StartAt = StartAt ?? 1, Dpi = Dpi ?? 300, Template = Template };
}

/// <summary>All templates.</summary>
sealed record LabelTemplatesView(IReadOnlyList<LabelTemplate> Items);

/// <summary>All label stocks.</summary>
sealed record LabelStocksView(IReadOnlyList<LabelStockView> Items);

/// <summary>A sheet or roll: its page, and the grid of labels on it.</summary>
sealed record LabelStockView(string Name, double PageWidthMm, double PageHeightMm, int Rows, int Columns, double LabelWidthMm, double LabelHeightMm)
{
    public static LabelStockView Of(LabelStock stock) => new(stock.Name, Math.Round(stock.PageWidthMm, 2), Math.Round(stock.PageHeightMm, 2), stock.Rows, stock.Columns,
        Math.Round(stock.LabelWidthMm, 2), Math.Round(stock.LabelHeightMm, 2));
}
