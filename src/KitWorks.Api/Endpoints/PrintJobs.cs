using KitWorks.Api.Access;
using KitWorks.Api.Contract;
using KitWorks.Api.Http;
using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Printing;
using MediatR;

namespace KitWorks.Api.Endpoints;

/// <summary>What goes to the shop's printers.</summary>
static class PrintJobs
{
    public static void MapPrintJobs(this IEndpointRouteBuilder app)
    {
        var jobs = app.MapGroup("/api/print-jobs").RequireAuthorization(KeyAuthentication.Staff).WithTags("Bench");
        jobs.MapPost("", async (PrintJobBody body, IMediator mediator, CancellationToken cancellationToken) =>
            !body.ToCommand().Succeeds(out var command, out var refusal)
                ? Problems.Of(refusal)
                : (await mediator.Send(command, cancellationToken)).Else(job => TypedResults.Accepted($"/api/print-jobs/{job.Id}", job)))
            .WithSummary("Have something of an order printed").Produces<PrintJobAnswer>(202);
        jobs.MapGet("", (int? limit, string? after, string? status, string? printer, Guid? orderId, IMediator mediator, CancellationToken cancellationToken) =>
        {
            var faults = new Faults();
            PrintJobStatus? wanted = status is null ? null : faults.Choose("status", status, null, [.. Enum.GetValues<PrintJobStatus>().Select(s => (s.ToString().ToLowerInvariant(), s))]);
            return faults.Refusal is { } refusal
                ? Task.FromResult(Problems.Of(refusal))
                : Paging.Ask(limit, after, mediator, (most, from) => new ListPrintJobs(most, from) { Status = wanted, Printer = printer, OrderId = orderId }, cancellationToken);
        }).WithSummary("The print jobs, newest first").Produces<Page<PrintJobAnswer>>();
        jobs.MapGet("/{id:guid}", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new GetPrintJob(id), cancellationToken)).WithSummary("Where a print job stands").Produces<PrintJobAnswer>();
        jobs.MapPost("/{id:guid}/retry", async (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            (await mediator.Send(new RetryPrintJob(id), cancellationToken)).Else(job => TypedResults.Accepted($"/api/print-jobs/{job.Id}", job)))
            .WithSummary("Print again what failed, or what may have").Produces<PrintJobAnswer>(202);
        jobs.MapPost("/{id:guid}/cancel", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new CancelPrintJob(id), cancellationToken)).WithSummary("Give a print job up").Produces<PrintJobAnswer>();

        app.MapGet("/api/printers", (IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new ListPrinters(), printers => new PrintersView(printers), cancellationToken))
            .RequireAuthorization(KeyAuthentication.Staff).WithTags("Bench").WithSummary("The printers, as each answers now").Produces<PrintersView>();
    }
}

/// <summary>What to print: <c>labels</c>, all or one tier's, <c>picklist</c>, <c>cut-plan</c>, <c>packing-list</c> or <c>guide</c>.</summary>
/// <param name="OrderId">The order.</param>
/// <param name="What">What of it.</param>
/// <param name="Tier">The labels of this tier only.</param>
/// <param name="Printer">A printer's name.</param>
/// <param name="StartAt">The first free place of the half-used sheet of labels in the printer, from 1.</param>
/// <param name="Template">The name of a label template; the largest that fits if not said.</param>
sealed record PrintJobBody(Guid? OrderId, string? What, int? Tier, string? Printer, int? StartAt = null, string? Template = null)
{
    public Outcome<QueuePrintJob> ToCommand()
    {
        var faults = new Faults();
        if (OrderId is null) faults.Add("orderId", "Say of which order.");
        if (Printer is null) faults.Add("printer", "Say on which printer; /api/printers lists them.");
        var what = faults.Choose<Printable>("what", What, null,
            ("labels", Printable.Labels), ("picklist", Printable.Picklist), ("cut-plan", Printable.CutPlan), ("packing-list", Printable.PackingList), ("guide", Printable.Guide));
        return faults.Refusal is { } refusal ? refusal : new QueuePrintJob(OrderId!.Value, what!.Value, Tier, Printer!) { StartAt = StartAt ?? 1, Template = Template };
    }
}

/// <summary>All printers.</summary>
sealed record PrintersView(IReadOnlyList<PrinterAnswer> Items);
