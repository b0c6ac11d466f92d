using System.Text.Json;
using KitWorks.Geometry;
using KitWorks.Shop.Storage;
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

/// <summary>The answer to the request of this scope: whether one was given before, and the remembering of a new one.</summary>
sealed class Answering(ShopDb db, Call call, TimeProvider clock)
{
    OnceOnly? open;

    /// <summary>Begins with a request; false where it came under no key, or where it is part of a request that has begun.</summary>
    public bool Begin() => open is null && (open = call.OnceOnly) is not null;

    /// <summary>The answer that was given before under the key of this request.</summary>
    public async Task<Outcome<T>?> Before<T>(CancellationToken cancellationToken)
    {
        var answer = await db.Answers.AsNoTracking().FirstOrDefaultAsync(a => a.Caller == call.Actor && a.Key == open!.Key, cancellationToken);
        if (answer is null) return null;
        if (answer.RequestHash != open!.RequestHash)
            return new Refusal(RefusalKind.Impossible, "idempotency.mismatch", "This Idempotency-Key came before with another request. Use a new key for a new request.");
        call.Replayed = true;
        return answer.Refusal is { } refusal
            ? JsonSerializer.Deserialize<Refusal>(refusal, StoredJson.Options)!
            : JsonSerializer.Deserialize<T>(answer.Value!, StoredJson.Options)!;
    }

    /// <summary>Adds the answer to what is about to be written, where the request came under a key.</summary>
    public void Remember<T>(Outcome<T> outcome)
    {
        if (Row(outcome) is { } row) db.Add(row);
    }

    /// <summary>The answer as it is remembered, where the request came under a key.</summary>
    public RememberedAnswer? Row<T>(Outcome<T> outcome)
    {
        if (open is not { } once) return null;
        var answered = outcome.Succeeds(out var value, out var refusal);
        return new()
        {
            Caller = call.Actor,
            Key = once.Key,
            RequestHash = once.RequestHash,
            At = clock.GetUtcNow(),
            Value = answered ? JsonSerializer.Serialize(value, StoredJson.Options) : null,
            Refusal = answered ? null : JsonSerializer.Serialize(refusal, StoredJson.Options),
        };
    }
}
