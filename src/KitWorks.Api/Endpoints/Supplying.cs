using KitWorks.Api.Access;
using KitWorks.Api.Http;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Planning;
using MediatR;

namespace KitWorks.Api.Endpoints;

/// <summary>Goods on their way, and what to buy.</summary>
static class Supplying
{
    public static void MapSupplying(this IEndpointRouteBuilder app)
    {
        var stock = app.MapGroup("/api/stock").RequireAuthorization(KeyAuthentication.Staff).WithTags("Stock");
        stock.MapGet("/reorder", (IMediator mediator, CancellationToken cancellationToken) => mediator.Ask(new ListReorders(), cancellationToken))
            .WithSummary("What to buy: whole packs, from what is there, promised, awaited and on its way").Produces<ReorderList>();
        stock.MapGet("/expected", (int? limit, string? after, bool? all, IMediator mediator, CancellationToken cancellationToken) =>
            Paging.Ask(limit, after, mediator, (most, from) => new ListExpected(most, from, all ?? false), cancellationToken))
            .WithSummary("Goods on their way, the soonest first; all=true for those that have come too").Produces<Page<ExpectedReceipt>>();
        stock.MapPost("/expected", async (ExpectedBody body, IMediator mediator, CancellationToken cancellationToken) =>
            (await mediator.Send(new ExpectStock(body.Reference ?? "", body.Supplier ?? "", body.ExpectedOn ?? default, body.Lines ?? []), cancellationToken))
            .Created(e => $"/api/stock/expected?all=true", e => e))
            .WithSummary("Goods were bought and are due").Produces<ExpectedReceipt>(201);
        stock.MapPost("/expected/{id:guid}/receive", (Guid id, ReceiveBody? body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new ReceiveExpected(id, body?.Lines), cancellationToken))
            .WithSummary("Goods that were due came in: these lines, or all that is outstanding").Produces<ExpectedReceipt>();
        stock.MapPost("/expected/{id:guid}/reschedule", (Guid id, RescheduleBody body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new RescheduleExpected(id, body.ExpectedOn ?? default), cancellationToken))
            .WithSummary("They are due on another day").Produces<ExpectedReceipt>();
        stock.MapPost("/expected/{id:guid}/close", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new CloseExpected(id), cancellationToken)).WithSummary("What is outstanding will not come").Produces<ExpectedReceipt>();
    }
}

/// <summary>Goods that are due.</summary>
sealed record ExpectedBody(string? Reference, string? Supplier, DateOnly? ExpectedOn, IReadOnlyList<StockLine>? Lines);

/// <summary>What came in of goods that were due; left out for all that is outstanding.</summary>
sealed record ReceiveBody(IReadOnlyList<StockLine>? Lines);

/// <summary>When goods are due now.</summary>
sealed record RescheduleBody(DateOnly? ExpectedOn);
