using System.Collections.Concurrent;
using System.Text.Json;
using KitWorks.Geometry;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Pipeline;

/// <summary>The answer that was given under an idempotency key. Written in the transaction of the command it answers.</summary>
sealed class RememberedAnswer
{
    public required string Caller { get; init; }
    public required string Key { get; init; }
    public required string RequestHash { get; init; }
    public required DateTimeOffset At { get; init; }
    public string? Value { get; init; }
    public string? Refusal { get; init; }
}

/// <summary>
/// Does a command that came under an idempotency key once, and answers every repeat as it answered the first: with the
/// same value, or with the same refusal.
/// </summary>
sealed class Once<TRequest, T>(ShopDb db, Call call, KeysInFlight inFlight, TimeProvider clock) : IPipelineBehavior<TRequest, Outcome<T>>
    where TRequest : ICommand<T>
{
    public async Task<Outcome<T>> Handle(TRequest request, CancellationToken cancellationToken, RequestHandlerDelegate<Outcome<T>> next)
    {
        if (call.OnceOnly is not { } once || db.Database.CurrentTransaction is not null) return await next();
        if (!inFlight.TryEnter(call.Actor, once.Key))
            return new Refusal(RefusalKind.Conflict, "idempotency.running", "The first request with this Idempotency-Key is still running. Ask again in a moment.");
        try
        {
            if (await Remembered(once, cancellationToken) is { } answer) return Replay(answer, once);

            await using var transaction = await db.Database.BeginTransactionAsync(cancellationToken);
            // Another instance may have answered between the look and the transaction.
            if (await Remembered(once, cancellationToken) is { } late) return Replay(late, once);
            var outcome = await next();
            if (outcome.Succeeds(out var value, out var refusal))
            {
                db.Add(Answer(once, value, null));
                await db.SaveChangesAsync(cancellationToken);
            }
            else
            {
                await transaction.RollbackAsync(cancellationToken);
                db.ChangeTracker.Clear();
                db.Add(Answer(once, default, refusal));
                await db.SaveChangesAsync(cancellationToken);
                return outcome;
            }
            await transaction.CommitAsync(cancellationToken);
            return outcome;
        }
        finally
        {
            inFlight.Leave(call.Actor, once.Key);
        }
    }

    Task<RememberedAnswer?> Remembered(OnceOnly once, CancellationToken cancellationToken) =>
        db.Answers.AsNoTracking().FirstOrDefaultAsync(a => a.Caller == call.Actor && a.Key == once.Key, cancellationToken);

    Outcome<T> Replay(RememberedAnswer answer, OnceOnly once)
    {
        if (answer.RequestHash != once.RequestHash)
            return new Refusal(RefusalKind.Impossible, "idempotency.mismatch", "This Idempotency-Key came before with another request. Use a new key for a new request.");
        call.Replayed = true;
        return answer.Refusal is { } refusal
            ? JsonSerializer.Deserialize<Refusal>(refusal, StoredJson.Options)!
            : JsonSerializer.Deserialize<T>(answer.Value!, StoredJson.Options)!;
    }

    RememberedAnswer Answer(OnceOnly once, T? value, Refusal? refusal) => new()
    {
        Caller = call.Actor,
        Key = once.Key,
        RequestHash = once.RequestHash,
        At = clock.GetUtcNow(),
        Value = refusal is null ? JsonSerializer.Serialize(value, StoredJson.Options) : null,
        Refusal = refusal is null ? null : JsonSerializer.Serialize(refusal, StoredJson.Options),
    };
}

/// <summary>The idempotency keys that this process is working on.</summary>
sealed class KeysInFlight
{
    readonly ConcurrentDictionary<(string Caller, string Key), bool> keys = new();

    public bool TryEnter(string caller, string key) => keys.TryAdd((caller, key), true);

    public void Leave(string caller, string key) => keys.TryRemove((caller, key), out _);
}
