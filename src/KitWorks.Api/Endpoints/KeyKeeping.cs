using KitWorks.Api.Access;
using KitWorks.Api.Http;
using KitWorks.Geometry;
using KitWorks.Shop;
using KitWorks.Shop.Access;
using MediatR;

namespace KitWorks.Api.Endpoints;

/// <summary>The keys to this interface. A secret is in one answer and nowhere else.</summary>
static class KeyKeeping
{
    public static void MapKeyKeeping(this IEndpointRouteBuilder app)
    {
        var keys = app.MapGroup("/api/keys").RequireAuthorization(KeyAuthentication.AdminOnly).WithTags("Keys");
        keys.MapGet("", (IMediator mediator, CancellationToken cancellationToken) =>
            mediator.Ask(new ListKeys(), found => new KeysView(found), cancellationToken)).WithSummary("All keys, without their secrets").Produces<KeysView>();
        keys.MapPost("", async (KeyBody body, HttpContext context, Call call, IMediator mediator) =>
        {
            // An answer that is remembered for a repeat would keep the secret. A repeat is refused: names are not used twice.
            call.OnceOnly = null;
            context.Response.Headers.CacheControl = "no-store";
            return !body.ToCommand().Succeeds(out var command, out var refusal)
                ? Problems.Of(refusal)
                : (await mediator.Send(command, context.RequestAborted)).Created(key => $"/api/keys/{Uri.EscapeDataString(key.Name)}", key => key);
        }).WithSummary("Make a key; its secret is shown this once").Produces<NewKey>(201);
        keys.MapDelete("/{name}", async (string name, IMediator mediator, CancellationToken cancellationToken) =>
            (await mediator.Send(new RevokeKey(name), cancellationToken)).Else(_ => TypedResults.NoContent())).WithSummary("End a key at once").Produces(204);
    }
}

/// <summary>A key to make: whose it is, its role (storefront where left out), and until when it works (without end where left out).</summary>
sealed record KeyBody(string? Name, Role? Role, DateTimeOffset? ExpiresAt)
{
    public Outcome<CreateKey> ToCommand() => Name is null
        ? Refusal.OfField("request.invalid", "name", "Say whose key it is.")
        : new CreateKey(Name, Role ?? Shop.Role.Storefront, ExpiresAt);
}

/// <summary>All keys.</summary>
sealed record KeysView(IReadOnlyList<KeyAnswer> Items);
