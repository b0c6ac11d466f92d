using System.Collections.Concurrent;
using KitWorks.Shop.Counting;
using MediatR;

namespace KitWorks.Shop.Access;

/// <summary>
/// Whose the keys are that were looked up a moment ago, so that not every request asks the database. A key that is revoked
/// here ends at once; one that is revoked by another process, within <see cref="Lasting"/>.
/// </summary>
public sealed class KnownKeys(TimeProvider clock)
{
    /// <summary>How long a look-up lasts.</summary>
    internal static readonly TimeSpan Lasting = TimeSpan.FromSeconds(5);

    /// <summary>More keys than a shop has; whoever has more looks them up more often.</summary>
    const int Most = 10_000;

    readonly ConcurrentDictionary<string, Entry> keys = new();
    int round;

    /// <summary>Goes up whenever all is forgotten: what was read before that may be old.</summary>
    internal int Round => Volatile.Read(ref round);

    /// <summary>The holder of a key that was looked up a moment ago.</summary>
    public KeyHolder? Find(string secret)
    {
        ArgumentNullException.ThrowIfNull(secret);
        return keys.TryGetValue(NameOf(ApiKey.HashOf(secret)), out var entry) && clock.GetElapsedTime(entry.At) < Lasting && !(entry.ExpiresAt <= clock.GetUtcNow()) ? entry.Holder : null;
    }

    internal void Keep(byte[] hash, KeyHolder holder, DateTimeOffset? expiresAt, int seen)
    {
        if (keys.Count >= Most) keys.Clear();
        var name = NameOf(hash);
        keys[name] = new(holder, expiresAt, clock.GetTimestamp());
        if (seen != Round) keys.TryRemove(name, out _);
    }

    internal void Forget()
    {
        Interlocked.Increment(ref round);
        keys.Clear();
    }

    static string NameOf(byte[] hash) => Convert.ToHexString(hash);

    sealed record Entry(KeyHolder Holder, DateTimeOffset? ExpiresAt, long At);
}

/// <summary>A revoked key opens nothing any more.</summary>
sealed class ForgetRevoked(KnownKeys known) : IAfterwards<RevokeKey, Unit>
{
    public void After(RevokeKey request, Unit answer) => known.Forget();
}
