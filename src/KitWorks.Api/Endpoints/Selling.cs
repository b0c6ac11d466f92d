using KitWorks.Api.Access;
using KitWorks.Api.Contract;
using KitWorks.Api.Http;
using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Quotes;
using MediatR;

namespace KitWorks.Api.Endpoints;

/// <summary>Quotes and orders.</summary>
static class Selling
{
    public static void MapSelling(this IEndpointRouteBuilder app)
    {
        var quotes = app.MapGroup("/api/quotes").RequireAuthorization(KeyAuthentication.AnyKey).WithTags("Quotes");
        quotes.MapPost("", async (QuoteBody body, IMediator mediator, CancellationToken cancellationToken) =>
            !body.ToCommand().Succeeds(out var command, out var refusal)
                ? Problems.Of(refusal)
                : (await mediator.Send(command, cancellationToken)).Created(q => $"/api/quotes/{q.Id}", QuoteView.Of))
            .WithSummary("Ask for a price and a ship date").Produces<QuoteView>(201);
        quotes.MapGet("/{id:guid}", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new GetQuote(id), QuoteView.Of, cancellationToken)).WithSummary("A quote").Produces<QuoteView>();

        var orders = app.MapGroup("/api/orders").RequireAuthorization(KeyAuthentication.AnyKey).WithTags("Orders");
        orders.MapPost("", async (OrderBody body, IMediator mediator, CancellationToken cancellationToken) =>
            !body.ToCommand().Succeeds(out var command, out var refusal)
                ? Problems.Of(refusal)
                : (await mediator.Send(command, cancellationToken)).Created(o => $"/api/orders/{o.Id}", OrderView.Of))
            .WithMetadata(new OnceOnlyRequired()).WithSummary("Place an order, once for each Idempotency-Key").Produces<OrderView>(201);
        orders.MapGet("", (int? limit, string? after, string? status, IMediator mediator, CancellationToken cancellationToken) =>
            !TryStatus(status, out var only)
                ? Task.FromResult(Problems.Of(StatusCodes.Status400BadRequest, "list.status", $"A status is one of {string.Join(", ", Enum.GetNames<OrderStatus>()).ToLowerInvariant()}."))
                : Paging.Ask(limit, after, mediator, (most, from) => new ListOrders(most, from, only), cancellationToken))
            .WithSummary("Orders, newest first").Produces<Shop.Inventory.Page<OrderSummary>>();
        orders.MapGet("/{id:guid}", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new GetOrder(id), OrderView.Of, cancellationToken)).WithSummary("An order").Produces<OrderView>();
        orders.MapPost("/{id:guid}/cancel", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new CancelOrder(id), OrderView.Of, cancellationToken)).WithSummary("Cancel an order and release its stock").Produces<OrderView>();
        orders.MapPost("/{id:guid}/ship", (Guid id, ShipBody? body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new ShipOrder(id, body?.Carrier, body?.Tracking), OrderView.Of, cancellationToken))
            .RequireAuthorization(KeyAuthentication.Staff).WithSummary("Hand a packed order to the carrier").Produces<OrderView>();
        orders.MapPost("/{id:guid}/quantity", (Guid id, QuantityBody body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new ChangeQuantity(id, body.Quantity ?? 0), OrderView.Of, cancellationToken))
            .WithSummary("Change how many kits an order is for, until its first bundle is packed").Produces<OrderView>();
        orders.MapPost("/{id:guid}/priority", (Guid id, PriorityBody body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new PreferOrder(id, body.Priority ?? 0), OrderView.Of, cancellationToken))
            .RequireAuthorization(KeyAuthentication.Staff).WithSummary("Serve an order before others that wait").Produces<OrderView>();
        orders.MapPost("/{id:guid}/replacements", (Guid id, PartsBody body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new SendReplacements(id, body.Lines ?? [], body.Reason ?? ""), OrderView.Of, cancellationToken))
            .RequireAuthorization(KeyAuthentication.Staff).WithSummary("Take parts from stock to replace some of a shipped order").Produces<OrderView>();
        orders.MapPost("/{id:guid}/returns", (Guid id, PartsBody body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new TakeBack(id, body.Lines ?? [], body.Reason ?? ""), OrderView.Of, cancellationToken))
            .RequireAuthorization(KeyAuthentication.Staff).WithSummary("Take parts of a shipped order back into stock").Produces<OrderView>();
        orders.MapGet("/{id:guid}/kit", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new GetOrderKit(id), o => KitAnswer.Of(o.Kit), cancellationToken)).WithSummary("The kit of an order, as computed when it was placed").Produces<KitAnswer>();
        orders.MapGet("/{id:guid}/cut-plan", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new GetOrderKit(id), o => CutPlanAnswer.Of(o.Kit.CutPlan.Times(o.Quantity)), cancellationToken)).WithSummary("How to cut the pipe of all of an order's kits: as many times the plan of one kit as there are kits").Produces<CutPlanAnswer>();
        orders.MapGet("/{id:guid}/bundles", async (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            !(await mediator.Send(new GetOrder(id), cancellationToken)).Succeeds(out var order, out var refusal)
                ? Problems.Of(refusal)
                : TypedResults.Ok(new BundlesView(order.Bundles.Select(BundleView.Of))))
            .WithSummary("The bundles of an order").Produces<BundlesView>();
    }

    /// <summary>A status as the answers write it; query strings are otherwise read with capitals.</summary>
    static bool TryStatus(string? word, out OrderStatus? status)
    {
        status = null;
        if (string.IsNullOrEmpty(word)) return true;
        foreach (var one in Enum.GetValues<OrderStatus>())
            if (one.ToString().Equals(word, StringComparison.OrdinalIgnoreCase)) status = one;
        return status is not null;
    }
}

/// <summary>What to quote.</summary>
sealed record QuoteBody(DesignBody? Design, int? Quantity, string? Currency)
{
    public Outcome<MakeQuote> ToCommand() => Designing.Required(Design, "design")
        .Then(d => d.ToDesign().Under("design")).Select(design => new MakeQuote(design, Quantity ?? 1, Currency));
}

/// <summary>What to order: a quote, or a design and how many.</summary>
sealed record OrderBody(Guid? QuoteId, DesignBody? Design, int? Quantity, CustomerBody? Customer, string? Reference, WhenShort? WhenShort)
{
    public Outcome<PlaceOrder> ToCommand()
    {
        var faults = new Faults();
        if (QuoteId is null == Design is null) faults.Add(QuoteId is null ? "design" : "quoteId", "Give either quoteId or design.");
        if (string.IsNullOrWhiteSpace(Customer?.Name)) faults.Add("customer/name", "Say who it is for.");
        var design = Design is null ? null : faults.Take("design", Design.ToDesign());
        return faults.Refusal is { } refusal
            ? refusal
            : new PlaceOrder
            {
                QuoteId = QuoteId,
                Design = design,
                Quantity = Quantity,
                Customer = new(Customer!.Name!, Customer.Email, Customer.Address),
                Reference = Reference,
                WhenShort = WhenShort ?? Shop.Orders.WhenShort.Wait,
            };
    }
}

/// <summary>Who an order is for.</summary>
sealed record CustomerBody(string? Name, string? Email, string? Address);

/// <summary>How an order leaves.</summary>
sealed record ShipBody(string? Carrier, string? Tracking);

/// <summary>How many kits.</summary>
sealed record QuantityBody(int? Quantity);

/// <summary>Which orders go first.</summary>
sealed record PriorityBody(int? Priority);

/// <summary>Parts of an order, and why they go out again or come back.</summary>
sealed record PartsBody(IReadOnlyList<StockLine>? Lines, string? Reason);
