using System.Collections.Concurrent;
using KitWorks.Geometry;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Pipeline;

/// <summary>
/// Does a command that came under an idempotency key once, and answers every repeat as it answered the first: with the
/// same value, or with the same refusal. A value is remembered by <see cref="OneTransaction{TRequest, T}"/> in the
/// transaction that made it; a refusal changed nothing and is remembered here.
/// </summary>
sealed class Once<TRequest, T>(ShopDb db, Call call, Answering answering, WriteLane lane, KeysInFlight inFlight) : IPipelineBehavior<TRequest, Outcome<T>>
    where TRequest : IRequest<Outcome<T>>
{
    public async Task<Outcome<T>> Handle(TRequest request, CancellationToken cancellationToken, RequestHandlerDelegate<Outcome<T>> next)
    {
        if (!answering.Begin()) return await next();
        var key = call.OnceOnly!.Key;
        if (!inFlight.TryEnter(call.Actor, key))
            return new Refusal(RefusalKind.Conflict, "idempotency.running", "The first request with this Idempotency-Key is still running. Ask again in a moment.");
        try
        {
            if (await answering.Before<T>(cancellationToken) is { } before) return before;
            return await Answer(next, cancellationToken);
        }
        finally
        {
            inFlight.Leave(call.Actor, key);
        }
    }

    async Task<Outcome<T>> Answer(RequestHandlerDelegate<Outcome<T>> next, CancellationToken cancellationToken)
    {
        try
        {
            var outcome = await next();
            if (outcome.Refusal is null) return outcome;
            return await lane.Ride(db, () => RememberRefusal(outcome, cancellationToken), _ => true, cancellationToken);
        }
        catch (DbUpdateException)
        {
            // Another instance may have answered under this key meanwhile: then there is a row in the way of ours.
            db.Forget();
            if (await answering.Before<T>(cancellationToken) is { } before) return before;
            throw;
        }
    }

    async Task<Outcome<T>> RememberRefusal(Outcome<T> outcome, CancellationToken cancellationToken)
    {
        db.Forget();
        answering.Remember(outcome);
        await db.SaveChangesAsync(cancellationToken);
        return outcome;
    }
}

/// <summary>The idempotency keys that this process is working on.</summary>
sealed class KeysInFlight
{
    readonly ConcurrentDictionary<(string Caller, string Key), bool> keys = new();

    public bool TryEnter(string caller, string key) => keys.TryAdd((caller, key), true);

    public void Leave(string caller, string key) => keys.TryRemove((caller, key), out _);
}
