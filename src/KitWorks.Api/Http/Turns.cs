namespace KitWorks.Api.Http;

/// <summary>So many computations at a time, and so many that wait for their turn; who comes after that is told to come again.</summary>
sealed class Turns(System.Threading.RateLimiting.ConcurrencyLimiter limiter)
{
    /// <exception cref="BusyException">Too many wait already.</exception>
    public async ValueTask<IDisposable> Take(CancellationToken cancellationToken)
    {
        var lease = await limiter.AcquireAsync(1, cancellationToken);
        if (lease.IsAcquired) return lease;
        lease.Dispose();
        throw new BusyException();
    }
}

/// <summary>The service has as much to compute as it can.</summary>
sealed class BusyException : Exception;

/// <summary>On an endpoint that computes, or writes what was computed: it waits for its turn.</summary>
sealed class InTurn(Turns turns) : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        using var turn = await turns.Take(context.HttpContext.RequestAborted);
        return await next(context);
    }
}
