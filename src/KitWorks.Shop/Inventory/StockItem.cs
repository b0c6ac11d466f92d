using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace KitWorks.Shop.Inventory;

/// <summary>One thing counted in stock. Its balance is a row of its own, <see cref="StockBalance"/>.</summary>
sealed class StockItem
{
    public required string Sku { get; init; }
    public required string Kind { get; init; }
    public required string Description { get; set; }
    public required string Unit { get; set; }
    public required string Bin { get; set; }

    /// <summary>Below this many available it is time to reorder.</summary>
    public required int ReorderAt { get; set; }
}

/// <summary>
/// What is there of one item: 0 ≤ reserved ≤ on hand, always, and both are what the movements add up to. It stands alone,
/// with no foreign key into it, because every order for a popular item passes through this row.
/// </summary>
sealed class StockBalance
{
    public required string Sku { get; init; }
    public int OnHand { get; init; }
    public int Reserved { get; init; }
}

/// <summary>What a movement does.</summary>
public enum MovementKind
{
    /// <summary>Goods came in: on hand goes up.</summary>
    Receipt,

    /// <summary>The shelf was counted: on hand becomes what was counted.</summary>
    Count,

    /// <summary>On hand was put right, with a reason.</summary>
    Adjustment,

    /// <summary>Promised to an order: reserved goes up.</summary>
    Reserve,

    /// <summary>A promise taken back: reserved goes down.</summary>
    Release,

    /// <summary>Gone out with an order: on hand and reserved go down.</summary>
    Consume,

    /// <summary>Sent after an order, for parts that were missing or broke: on hand goes down.</summary>
    Replacement,

    /// <summary>Came back from an order: on hand goes up.</summary>
    Return,
}

/// <summary>One entry in the stock ledger; never changed, never deleted.</summary>
sealed class Movement
{
    public long Id { get; init; }
    public required string Sku { get; init; }
    public required MovementKind Kind { get; init; }
    public required int OnHandChange { get; init; }
    public required int ReservedChange { get; init; }

    /// <summary>What it belongs to: an order's number, a delivery note.</summary>
    public required string Reference { get; init; }
    public string? Reason { get; init; }
    public required string Actor { get; init; }
    public required DateTimeOffset At { get; init; }
}

sealed class InventoryTables : IEntityTypeConfiguration<StockItem>, IEntityTypeConfiguration<StockBalance>, IEntityTypeConfiguration<Movement>
{
    const int SkuLength = 60;

    public void Configure(EntityTypeBuilder<StockItem> builder)
    {
        builder.ToTable("stock_items").HasKey(i => i.Sku);
        builder.Property(i => i.Sku).HasMaxLength(SkuLength);
        builder.Property(i => i.Kind).HasMaxLength(20);
        builder.Property(i => i.Description).HasMaxLength(200);
        builder.Property(i => i.Unit).HasMaxLength(20);
        builder.Property(i => i.Bin).HasMaxLength(40);
    }

    public void Configure(EntityTypeBuilder<StockBalance> builder)
    {
        builder.ToTable("stock_balances", table => table.HasCheckConstraint("reserved_within_on_hand", "\"Reserved\" >= 0 AND \"Reserved\" <= \"OnHand\""));
        builder.HasKey(b => b.Sku);
        builder.Property(b => b.Sku).HasMaxLength(SkuLength);
    }

    public void Configure(EntityTypeBuilder<Movement> builder)
    {
        builder.ToTable("stock_movements").HasKey(m => m.Id);
        builder.Property(m => m.Id).ValueGeneratedOnAdd();
        builder.Property(m => m.Sku).HasMaxLength(SkuLength);
        builder.Property(m => m.Reference).HasMaxLength(100);
        builder.Property(m => m.Reason).HasMaxLength(200);
        builder.Property(m => m.Actor).HasMaxLength(100);
        builder.HasIndex(m => new { m.Sku, m.Id });
        builder.HasIndex(m => m.Reference);
    }
}
