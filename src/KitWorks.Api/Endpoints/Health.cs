using KitWorks.Api.Http;
using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Api.Endpoints;

/// <summary>Whether the process lives, and whether it can serve.</summary>
static class Health
{
    public static void MapHealth(this IEndpointRouteBuilder app)
    {
        var readiness = new Readiness();
        app.MapGet("/health/live", () => TypedResults.Text("live")).DisableRateLimiting().WithTags("Running").WithSummary("The process answers").Produces<string>(200, "text/plain");
        app.MapGet("/health/ready", async (ShopDb db, IHostApplicationLifetime life, CancellationToken cancellationToken) =>
            await readiness.Fault(db, life, cancellationToken) is var (code, detail) ? Problems.Of(StatusCodes.Status503ServiceUnavailable, code, detail) : TypedResults.Text("ready"))
            .DisableRateLimiting().WithTags("Running").WithSummary("The database answers and is up to date, and the process is not about to stop").Produces<string>(200, "text/plain");
    }

    /// <summary>What keeps the service from serving.</summary>
    sealed class Readiness
    {
        static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

        volatile bool isMigrated;

        public async Task<(string Code, string Detail)?> Fault(ShopDb db, IHostApplicationLifetime life, CancellationToken cancellationToken)
        {
            // Told to stop, it finishes what it has; new requests should go elsewhere.
            if (life.ApplicationStopping.IsCancellationRequested) return ("service.stopping", "The service is about to stop.");
            using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
            patience.CancelAfter(Patience);
            try
            {
                if (!await db.Database.CanConnectAsync(patience.Token)) return Unavailable;
                if (!isMigrated && (await db.Database.GetPendingMigrationsAsync(patience.Token)).Any())
                    return ("storage.not-migrated", "The database is older than this program. Bring it up to date with the verb migrate.");
                isMigrated = true;
                return null;
            }
            catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
            {
                return Unavailable;
            }
            catch (System.Data.Common.DbException)
            {
                return Unavailable;
            }
        }

        static (string, string) Unavailable => ("storage.unavailable", "The database does not answer.");
    }
}
