namespace KitWorks.Kits.Catalog;

/// <summary>How a stock item is bought.</summary>
public sealed record Supply
{
    /// <summary>The stock item.</summary>
    public required string Sku { get; init; }

    /// <summary>Who sells it, as the shop calls them.</summary>
    public string Supplier { get; init; } = "";

    /// <summary>How many are sold together: 1 or more.</summary>
    public int PackSize { get; init; } = 1;

    /// <summary>Working days from order to shelf; null for the workshop's usual.</summary>
    public int? LeadDays { get; init; }

    /// <summary>At or below how many to order: what is there and on its way, less what is promised. Null leaves what the stock item says.</summary>
    public int? ReorderAt { get; init; }

    /// <summary>How many to have after ordering, whole packs on top; null for just above the reorder point.</summary>
    public int? OrderUpTo { get; init; }
}
