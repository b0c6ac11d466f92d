using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace KitWorks.Shop.Planning;

/// <summary>Goods that are bought and on their way. What has come in is in the stock ledger under its reference; here is what is still to come.</summary>
sealed class Purchase
{
    readonly List<PurchaseLine> lines = [];

    public required Guid Id { get; init; }

    /// <summary>How the shop calls it, one of a kind: the number of its order.</summary>
    public required string Reference { get; init; }
    public required string Supplier { get; init; }
    public required DateOnly ExpectedOn { get; set; }

    /// <summary>Whether nothing more is expected of it.</summary>
    public bool IsClosed { get; private set; }

    /// <summary>Goes up with each change, so that two changes at once do not both happen.</summary>
    public int Version { get; private set; }

    public IReadOnlyList<PurchaseLine> Lines => lines;

    public Purchase With(IEnumerable<PurchaseLine> of)
    {
        lines.AddRange(of);
        return this;
    }

    /// <summary>More than was ordered may come in; nothing more is then expected.</summary>
    public void Receive(IReadOnlyDictionary<string, int> quantities)
    {
        foreach (var line in lines) line.Received += quantities.GetValueOrDefault(line.Sku);
        IsClosed = lines.TrueForAll(l => l.Outstanding == 0);
        Version++;
    }

    public void Expect(DateOnly on)
    {
        ExpectedOn = on;
        Version++;
    }

    public void Close()
    {
        IsClosed = true;
        Version++;
    }
}

/// <summary>One item of a purchase.</summary>
sealed class PurchaseLine
{
    public required Guid PurchaseId { get; init; }
    public required string Sku { get; init; }
    public required int Ordered { get; init; }
    public int Received { get; set; }
    public int Outstanding => Math.Max(0, Ordered - Received);
}

sealed class PlanningTables : IEntityTypeConfiguration<Purchase>, IEntityTypeConfiguration<PurchaseLine>
{
    public void Configure(EntityTypeBuilder<Purchase> builder)
    {
        builder.ToTable("purchases").HasKey(p => p.Id);
        builder.Property(p => p.Reference).HasMaxLength(100);
        builder.Property(p => p.Supplier).HasMaxLength(200);
        builder.Property(p => p.Version).IsConcurrencyToken();
        builder.HasIndex(p => p.Reference).IsUnique();
        builder.HasIndex(p => p.IsClosed);
        builder.HasMany(p => p.Lines).WithOne().HasForeignKey(l => l.PurchaseId);
        builder.Navigation(p => p.Lines).UsePropertyAccessMode(PropertyAccessMode.Field).HasField("lines").AutoInclude();
    }

    public void Configure(EntityTypeBuilder<PurchaseLine> builder)
    {
        builder.ToTable("purchase_lines").HasKey(l => new { l.PurchaseId, l.Sku });
        builder.Property(l => l.Sku).HasMaxLength(60);
        builder.Ignore(l => l.Outstanding);
    }
}
