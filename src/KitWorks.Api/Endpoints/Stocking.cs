using KitWorks.Api.Access;
using KitWorks.Api.Contract;
using KitWorks.Api.Http;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Orders;
using MediatR;
using Microsoft.AspNetCore.Http.Json;
using Microsoft.Extensions.Options;

namespace KitWorks.Api.Endpoints;

/// <summary>Stock, and the packing bench.</summary>
static class Stocking
{
    public static void MapStocking(this IEndpointRouteBuilder app)
    {
        var stock = app.MapGroup("/api/stock").RequireAuthorization(KeyAuthentication.Staff).WithTags("Stock");
        stock.MapGet("", (int? limit, string? after, IMediator mediator, CancellationToken cancellationToken) =>
            Paging.Ask(limit, after, mediator, (most, from) => new ListStock(most, from), cancellationToken))
            .WithSummary("What is in stock").Produces<Page<StockItemAnswer>>();
        stock.MapGet("/{sku}", (string sku, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new GetStockItem(sku), cancellationToken)).WithSummary("One stock item").Produces<StockItemAnswer>();
        stock.MapGet("/{sku}/movements", (string sku, int? limit, string? after, IMediator mediator, CancellationToken cancellationToken) =>
            Paging.Ask(limit, after, mediator, (most, from) => new ListMovements(sku, most, from), cancellationToken))
            .WithSummary("The ledger of one item, newest first").Produces<Page<MovementAnswer>>();
        stock.MapPost("/receipts", (ReceiptBody body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new ReceiveStock(body.Lines ?? [], body.Reference ?? ""), cancellationToken))
            .WithSummary("Goods that came in").Produces<StockReceived>();
        stock.MapPost("/counts", (CountBody body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new CountStock(body.Lines ?? [], body.Reason ?? ""), cancellationToken))
            .WithSummary("What was counted on the shelf").Produces<StockCounted>();
        stock.MapPost("/adjustments", (AdjustmentBody body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new AdjustStock(body.Sku ?? "", body.Quantity ?? 0, body.Reason ?? ""), cancellationToken))
            .WithSummary("Put a balance right").Produces<StockBalanceAnswer>();

        stock.MapGet("/buildable", async (string design, IMediator mediator, IOptions<JsonOptions> json, CancellationToken cancellationToken) =>
            !(Address.Read<DesignBody>(design, json.Value) ?? new(null, null, null, null, null, null)).ToDesign().Under("design").Succeeds(out var wanted, out var refusal)
                ? Problems.Of(refusal)
                : await mediator.Ask(new FindBuildable(wanted), cancellationToken))
            .AddEndpointFilter<InTurn>().WithSummary("How many kits of a design the shelf covers, and what ends first; design is a design as JSON").Produces<Buildable>();

        app.MapPost("/api/scans", (ScanBody body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new ScanBundle(body.Code ?? "", body.Station ?? "", body.OrderId, body.Tier), cancellationToken))
            .RequireAuthorization(KeyAuthentication.Staff).WithTags("Bench").WithSummary("A bundle's code was read: it is packed").Produces<ScanAnswer>();
        app.MapPost("/api/scans/undo", (UndoBody body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new UndoScan(body.Code ?? ""), cancellationToken))
            .RequireAuthorization(KeyAuthentication.Staff).WithTags("Bench").WithSummary("A scan is taken back: the bundle is open again").Produces<ScanAnswer>();
    }
}

/// <summary>Goods that came in.</summary>
sealed record ReceiptBody(IReadOnlyList<StockLine>? Lines, string? Reference);

/// <summary>What was counted.</summary>
sealed record CountBody(IReadOnlyList<CountedLine>? Lines, string? Reason);

/// <summary>A balance put right.</summary>
sealed record AdjustmentBody(string? Sku, int? Quantity, string? Reason);

/// <summary>A code that was read at a station; for a bundle of <c>orderId</c>, or of <c>tier</c>, only, where these are given.</summary>
sealed record ScanBody(string? Code, string? Station, Guid? OrderId, int? Tier);

/// <summary>The code of a bundle that was packed by mistake.</summary>
sealed record UndoBody(string? Code);
