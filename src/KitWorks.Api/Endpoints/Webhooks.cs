using KitWorks.Api.Access;
using KitWorks.Api.Http;
using KitWorks.Shop.Webhooks;
using MediatR;

namespace KitWorks.Api.Endpoints;

/// <summary>Who is told what becomes of orders.</summary>
static class Webhooks
{
    public static void MapWebhooks(this IEndpointRouteBuilder app)
    {
        var webhooks = app.MapGroup("/api/webhooks").RequireAuthorization(KeyAuthentication.AdminOnly).WithTags("Webhooks");
        webhooks.MapGet("", (IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new ListWebhooks(), items => new WebhooksView(items), cancellationToken)).WithSummary("The webhooks and how they do").Produces<WebhooksView>();
        webhooks.MapPost("", async (WebhookBody body, IMediator mediator, CancellationToken cancellationToken) =>
            (await mediator.Send(new AddWebhook(body.Url ?? "", body.Storefront), cancellationToken)).Created(w => $"/api/webhooks/{w.Id}", w => w))
            .WithSummary("Have an address told what becomes of orders")
            .WithDescription(Manners).Produces<NewWebhook>(201);
        webhooks.MapGet("/{id:guid}", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new GetWebhook(id), cancellationToken)).WithSummary("A webhook and how it does").Produces<WebhookAnswer>();
        webhooks.MapPut("/{id:guid}", (Guid id, WebhookBody body, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new ChangeWebhook(id, body.Url ?? "", body.Storefront), cancellationToken))
            .WithSummary("Change where a webhook goes; what waits goes there").Produces<WebhookAnswer>();
        webhooks.MapDelete("/{id:guid}", async (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            (await mediator.Send(new RemoveWebhook(id), cancellationToken)).Else(_ => TypedResults.NoContent())).WithSummary("End a webhook").Produces(204);
        webhooks.MapPost("/{id:guid}/secret", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new ChangeWebhookSecret(id), cancellationToken)).WithSummary("Give a webhook another secret, shown once").Produces<NewWebhook>();
        webhooks.MapPost("/{id:guid}/retry", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new RetryWebhook(id), cancellationToken)).WithSummary("Try a webhook now").Produces<WebhookAnswer>();
        webhooks.MapPost("/{id:guid}/skip", (Guid id, IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new SkipWebhookEvent(id), cancellationToken)).WithSummary("Pass over the event that an address does not take").Produces<WebhookAnswer>();
    }

    const string Manners = """
        Each event is posted as JSON, {id, type: "order.status", at, order: {id, number, reference, status, note, carrier, tracking}}, in the order in which
        they happened, and again until the address answers 2xx: after 5 seconds, 10, 20 and so on, and then every hour. The header Event-Id is the same in
        every try; drop what was taken before. Redirects are not followed. It is signed by RFC 9421 with hmac-sha256: Signature holds, in base64, the HMAC with
        the secret's characters over the three lines "content-digest": …, "event-id": … and "@signature-params": …, of which the last is what Signature-Input
        has behind order=. Check that Content-Digest is the body's SHA-256 (RFC 9530), and that created is not long ago. The secret is in this answer only.
        """;
}

/// <summary>Where a webhook goes, and whose orders it tells of: a key's name, or left out for all.</summary>
sealed record WebhookBody(string? Url, string? Storefront);

/// <summary>The webhooks.</summary>
sealed record WebhooksView(IReadOnlyList<WebhookAnswer> Items);
