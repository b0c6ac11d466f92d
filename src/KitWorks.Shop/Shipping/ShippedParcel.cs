using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace KitWorks.Shop.Shipping;

/// <summary>A parcel of an order, as it was planned. Its SSCC is its own for ever: a plan that is made anew takes new ones.</summary>
sealed class ShippedParcel
{
    public required Guid OrderId { get; init; }

    /// <summary>Its place in the order, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>How many kits the order was for when it was planned.</summary>
    public required int Kits { get; init; }

    /// <summary>What the carrier calls it.</summary>
    public required string Kind { get; init; }

    /// <summary>Its serial shipping container code; null where the shop has no GS1 prefix.</summary>
    public string? Sscc { get; init; }
    public required int MassGrams { get; init; }
    public required int LengthTenths { get; init; }
    public required int SideTenths { get; init; }

    /// <summary>The numbers of the bundles in it, from the bottom up, as JSON.</summary>
    public required string Bundles { get; init; }

    /// <summary>No plan has fewer parcels.</summary>
    public required int LowerBound { get; init; }
}

sealed class ShippingTables : IEntityTypeConfiguration<ShippedParcel>
{
    public void Configure(EntityTypeBuilder<ShippedParcel> builder)
    {
        builder.ToTable("parcels").HasKey(p => new { p.OrderId, p.Number });
        builder.Property(p => p.Kind).HasMaxLength(100);
        builder.Property(p => p.Sscc).HasMaxLength(18);
        builder.HasIndex(p => p.Sscc).IsUnique();
    }
}
