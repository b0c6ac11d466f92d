namespace KitWorks.Shop;

/// <summary>What a caller may do.</summary>
public enum Role
{
    /// <summary>Previews, quotes, and orders of its own.</summary>
    Storefront,

    /// <summary>All of the shop's daily work.</summary>
    Bench,

    /// <summary>Everything, keys and catalog too.</summary>
    Admin,
}

/// <summary>Who calls, and under which idempotency key. One for each request; whoever accepts the request fills it in.</summary>
public sealed class Call
{
    /// <summary>The name of a caller who has not said who calls.</summary>
    public const string Nobody = "nobody";

    /// <summary>The name of whoever calls with the bootstrap key.</summary>
    public const string Bootstrap = "bootstrap";

    /// <summary>The caller's name, for the ledger and the histories.</summary>
    public string Actor { get; set; } = Nobody;

    /// <summary>Where the call comes from; null where it comes from this machine's console or from the shop itself.</summary>
    public string? Address { get; set; }

    /// <summary>What the caller may do.</summary>
    public Role Role { get; set; } = Role.Storefront;

    /// <summary>The key the request came under, where it should be done once only.</summary>
    public OnceOnly? OnceOnly { get; set; }

    /// <summary>Whether the answer is that of an earlier request.</summary>
    public bool Replayed { get; set; }

    /// <summary>The command that is being done; those that it sends are part of it.</summary>
    internal string? AtWork { get; set; }

    /// <summary>The owner that quotes and orders are shown for: a storefront sees its own, the shop sees all.</summary>
    public string? SeesOnly => Role == Role.Storefront ? Actor : null;
}

/// <summary>An idempotency key and the hash of the request it came with.</summary>
/// <param name="Key">The caller's key.</param>
/// <param name="RequestHash">The SHA-256 of path and body, in hexadecimal.</param>
public sealed record OnceOnly(string Key, string RequestHash);
