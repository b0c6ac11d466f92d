using KitWorks.Kits.Packing;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace KitWorks.Shop.Packing;

/// <summary>Where a bundle stands.</summary>
public enum BundleStatus
{
    /// <summary>To be packed.</summary>
    Open,

    /// <summary>Packed and scanned.</summary>
    Packed,

    /// <summary>With the carrier.</summary>
    Shipped,
}

/// <summary>A bundle of an order, with its code. Its contents never change; only its status does, forwards.</summary>
sealed class PackedBundle
{
    public required string Code { get; init; }
    public required Guid OrderId { get; init; }
    public required int OrderNumber { get; init; }

    /// <summary>Its place among the order's bundles, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>How many bundles the order has.</summary>
    public required int OutOf { get; init; }

    /// <summary>Which of the order's kits it belongs to, from 1.</summary>
    public required int KitNumber { get; init; }
    public required int Kits { get; init; }
    public required int Tier { get; init; }
    public required string TierName { get; init; }
    public required BundleKind Kind { get; init; }
    public required string Contents { get; init; }
    public required int MassGrams { get; init; }
    public required int LengthTenths { get; init; }
    public BundleStatus Status { get; set; }
}

sealed class PackingTables : IEntityTypeConfiguration<PackedBundle>
{
    public void Configure(EntityTypeBuilder<PackedBundle> builder)
    {
        builder.ToTable("bundles").HasKey(b => b.Code);
        builder.Property(b => b.Code).HasMaxLength(20);
        builder.Property(b => b.TierName).HasMaxLength(40);
        builder.HasIndex(b => new { b.OrderId, b.Number }).IsUnique();
        builder.Property(b => b.Status).IsConcurrencyToken();
    }
}
