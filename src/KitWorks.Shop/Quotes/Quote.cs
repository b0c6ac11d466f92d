using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace KitWorks.Shop.Quotes;

/// <summary>A kit and a price that the shop stands by until it expires.</summary>
sealed class Quote
{
    public required Guid Id { get; init; }
    public required string Owner { get; init; }
    public required int Quantity { get; init; }
    public required byte[] Kit { get; init; }
    public required string Price { get; init; }
    public required DateTimeOffset MadeAt { get; init; }
    public required DateTimeOffset ExpiresAt { get; init; }
}

sealed class QuoteTables : IEntityTypeConfiguration<Quote>
{
    public void Configure(EntityTypeBuilder<Quote> builder)
    {
        builder.ToTable("quotes").HasKey(q => q.Id);
        builder.Property(q => q.Owner).HasMaxLength(100);
    }
}
