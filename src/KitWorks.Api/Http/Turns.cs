using System.Threading.RateLimiting;

namespace KitWorks.Api.Http;

/// <summary>
/// So many computations at a time, of one caller half of them, and so many that wait for their turn; who comes after that is
/// told to come again. A caller who asks for what takes long so leaves room for the others.
/// </summary>
sealed class Turns(int atOnce, int waiting) : IAsyncDisposable
{
    readonly ConcurrencyLimiter all = new(new() { PermitLimit = atOnce, QueueLimit = waiting });
    readonly PartitionedRateLimiter<string> each = PartitionedRateLimiter.Create<string, string>(caller =>
        RateLimitPartition.GetConcurrencyLimiter(caller, _ => new() { PermitLimit = Math.Max(1, atOnce / 2), QueueLimit = waiting }));

    /// <exception cref="BusyException">Too many wait already.</exception>
    public async ValueTask<IDisposable> Take(HttpContext context, CancellationToken cancellationToken)
    {
        var own = await each.AcquireAsync(context.User.Identity?.Name ?? "", 1, cancellationToken);
        if (!own.IsAcquired) throw Busy(own);
        try
        {
            var turn = await all.AcquireAsync(1, cancellationToken);
            return turn.IsAcquired ? new Turn(own, turn) : throw Busy(turn);
        }
        catch
        {
            own.Dispose();
            throw;
        }
    }

    static BusyException Busy(RateLimitLease refused)
    {
        refused.Dispose();
        return new();
    }

    public async ValueTask DisposeAsync()
    {
        await each.DisposeAsync();
        await all.DisposeAsync();
    }

    sealed class Turn(RateLimitLease own, RateLimitLease turn) : IDisposable
    {
        public void Dispose()
        {
            turn.Dispose();
            own.Dispose();
        }
    }
}

/// <summary>The service has as much to compute as it can.</summary>
sealed class BusyException : Exception;

/// <summary>On an endpoint that computes: it waits for its turn.</summary>
sealed class InTurn(Turns turns) : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        using var turn = await turns.Take(context.HttpContext, context.HttpContext.RequestAborted);
        return await next(context);
    }
}
