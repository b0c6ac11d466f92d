using KitWorks.Api.Access;
using KitWorks.Api.Contract;
using KitWorks.Api.Http;
using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Printing;
using KitWorks.Shop.Sawing;
using MediatR;

namespace KitWorks.Api.Endpoints;

/// <summary>The saw: batches of orders, remnants, and struts that lie ready cut.</summary>
static class Sawing
{
    public static void MapSawing(this IEndpointRouteBuilder app)
    {
        var batches = app.MapGroup("/api/batches").RequireAuthorization(KeyAuthentication.Staff).WithTags("Saw");
        batches.MapPost("/preview", (BatchBody body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new PreviewBatch(body.OrderIds ?? []), BatchPreview.Of, cancellationToken))
            .WithSummary("How orders would be cut as one, and what that saves; nothing is kept").Produces<BatchPreview>();
        batches.MapPost("", async (BatchBody body, IMediator mediator, CancellationToken cancellationToken) =>
            (await mediator.Send(new PlanBatch(body.OrderIds ?? []), cancellationToken)).Created(b => $"/api/batches/{b.Id}", BatchView.Of))
            .WithSummary("Cut the pipe of these orders as one: reserve what that takes, and free the rest").Produces<BatchView>(201);
        batches.MapGet("", (int? limit, string? after, IMediator mediator, CancellationToken cancellationToken) =>
            Paging.Ask(limit, after, mediator, (most, from) => new ListBatches(most, from), cancellationToken))
            .WithSummary("Batches, newest first").Produces<Page<BatchSummary>>();
        batches.MapGet("/{id:guid}", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new GetBatch(id), BatchView.Of, cancellationToken)).WithSummary("A batch: its plan, where each strut goes, and how far it is cut").Produces<BatchView>();
        batches.MapPost("/{id:guid}/patterns/{number:int}/cut", (Guid id, int number, CutBody? body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new MarkPatternCut(id, number, body?.Times), PatternCutView.Of, cancellationToken))
            .WithSummary("A pattern has been cut: its pipe leaves the stock, its remnants come in").Produces<PatternCutView>();
        batches.MapPost("/{id:guid}/dissolve", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new DissolveBatch(id), BatchView.Of, cancellationToken)).WithSummary("Take a batch apart of which nothing is cut").Produces<BatchView>();
        Printing.MapPaper(batches, "/{id:guid}/cut-sheet.pdf", (id, size, units) => new GetBatchSheet(id, size, units), "The batch's cut sheet: stops, patterns, and where each strut goes");

        foreach (var form in Printing.Forms)
            batches.MapGet($"/{{id:guid}}/remnant-labels.{form.Extension}", (Guid id, [AsParameters] LabelQuery query, IMediator mediator, CancellationToken cancellationToken) =>
                Printing.Send(mediator, new GetBatchRemnantLabels(id, query.To(form.Format)), form.MediaType, cancellationToken))
                .WithSummary($"The labels of the remnants that a batch has left{form.Words}").Produces(200, contentType: form.MediaType);

        var stock = app.MapGroup("/api/stock").RequireAuthorization(KeyAuthentication.Staff).WithTags("Saw");
        stock.MapGet("/remnants", async (int? limit, string? after, string? pipeSku, IMediator mediator, CancellationToken cancellationToken) =>
            await Paging.Ask(limit, after, mediator, (most, from) => new ListRemnants(most, from, pipeSku), RemnantView.Of, cancellationToken))
            .WithSummary("The remnants on the shelf, and those that batches have taken").Produces<Page<RemnantView>>();
        stock.MapPost("/remnants", (ShelveBody body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new ShelveRemnants(body.PipeSku ?? "", body.Length ?? default, body.Count ?? 1, body.Bin ?? ""), r => new RemnantsView(r.Select(RemnantView.Of)), cancellationToken))
            .WithSummary("Put offcuts on the shelf; each gets a code for its label").Produces<RemnantsView>();
        stock.MapPost("/remnants/{code}/scrap", (string code, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new ScrapRemnant(code), RemnantView.Of, cancellationToken)).WithSummary("A remnant is gone").Produces<RemnantView>();
        stock.MapGet("/ready-struts", (IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new ListReadyStruts(), s => new ReadyStrutsList(s.Select(ReadyStrutsView.Of)), cancellationToken))
            .WithSummary("Struts that lie ready cut; batches pick them first").Produces<ReadyStrutsList>();
        stock.MapPost("/ready-struts", (ReadyBody body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new CountReadyStruts(body.PipeSku ?? "", body.Length ?? default, body.Counted ?? -1), ReadyStrutsView.Of, cancellationToken))
            .WithSummary("How many struts of a length lie ready cut, as counted").Produces<ReadyStrutsView>();
    }
}

/// <summary>The orders of a batch.</summary>
sealed record BatchBody(IReadOnlyList<Guid>? OrderIds);

/// <summary>How many times a pattern was cut; left out for all that were left.</summary>
sealed record CutBody(int? Times);

/// <summary>Offcuts to shelve.</summary>
sealed record ShelveBody(string? PipeSku, Length? Length, int? Count, string? Bin);

/// <summary>Remnants.</summary>
sealed record RemnantsView(IEnumerable<RemnantView> Remnants);

/// <summary>Struts ready cut, as counted.</summary>
sealed record ReadyBody(string? PipeSku, Length? Length, int? Counted);

/// <summary>Struts ready cut.</summary>
sealed record ReadyStrutsList(IEnumerable<ReadyStrutsView> Items);
