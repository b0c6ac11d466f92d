using KitWorks.Shop.Storage;

namespace KitWorks.Api.Endpoints;

/// <summary>Whether the process lives, and whether it can serve.</summary>
static class Health
{
    public static void MapHealth(this IEndpointRouteBuilder app)
    {
        app.MapGet("/health/live", () => TypedResults.Text("live")).WithTags("Running").WithSummary("The process answers");
        app.MapGet("/health/ready", async (ShopDb db, CancellationToken cancellationToken) =>
            await db.Database.CanConnectAsync(cancellationToken)
                ? Results.Text("ready")
                : Http.Problems.Of(StatusCodes.Status503ServiceUnavailable, "storage.unavailable", "The database does not answer."))
            .WithTags("Running").WithSummary("The database answers too");
    }
}
