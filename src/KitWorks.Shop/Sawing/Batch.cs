using KitWorks.Kits.Batches;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace KitWorks.Shop.Sawing;

/// <summary>Where a batch stands.</summary>
public enum BatchStatus
{
    /// <summary>Its pipe is reserved; nothing is cut.</summary>
    Planned,

    /// <summary>Some of it is cut.</summary>
    Cutting,

    /// <summary>All of it is cut.</summary>
    Done,

    /// <summary>It was taken apart again; its orders are cut otherwise.</summary>
    Dissolved,
}

/// <summary>
/// Orders whose pipe is cut as one. While it is <see cref="BatchStatus.Planned"/> or <see cref="BatchStatus.Cutting"/> it
/// holds, under its own name, the pipe of the patterns that are not cut yet, and its orders hold none.
/// </summary>
sealed class Batch
{
    public required Guid Id { get; init; }
    public required int Number { get; init; }
    public BatchStatus Status { get; private set; } = BatchStatus.Planned;

    /// <summary>The plan, compressed.</summary>
    public required byte[] Plan { get; init; }
    public required string MadeBy { get; init; }
    public required DateTimeOffset MadeAt { get; init; }
    public List<BatchedOrder> Orders { get; init; } = [];
    public List<PatternProgress> Patterns { get; init; } = [];

    /// <summary>Goes up with each change, so that two changes at once do not both happen.</summary>
    public int Version { get; private set; }

    public BatchPlan Read() => StoredJson.Unpack<BatchPlan>(Plan);

    public bool IsCut => Patterns.TrueForAll(p => p.Cut == p.Times);

    public void Become(BatchStatus status)
    {
        Status = status;
        Version++;
    }

    public string StockReference => $"batch {Number}";

    public string StatusWord => Status.ToString().ToLowerInvariant();

    /// <summary>The pipe that is reserved for it.</summary>
    public List<StockLine> Held() => Status is BatchStatus.Planned or BatchStatus.Cutting
        ? [.. Read().Pipes.SelectMany(p => p.Patterns, (p, pattern) => (p.PipeSku, Pattern: pattern)).Where(x => x.Pattern.Pattern.Sku is not null)
            .GroupBy(x => x.PipeSku, x => Patterns.Single(p => p.Number == x.Pattern.Number)).Select(g => new StockLine(g.Key, g.Sum(p => p.Times - p.Cut)))
            .Where(l => l.Quantity > 0)]
        : [];
}

/// <summary>An order in a batch, and the pipe that it would have taken by itself.</summary>
sealed class BatchedOrder
{
    public required Guid BatchId { get; init; }
    public required Guid OrderId { get; init; }
    public required int OrderNumber { get; init; }
    public required string PipeLines { get; init; }
}

/// <summary>How often a pattern is cut, and how often it has been.</summary>
sealed class PatternProgress
{
    public required Guid BatchId { get; init; }
    public required int Number { get; init; }
    public required int Times { get; init; }
    public int Cut { get; set; }
}

/// <summary>Where a remnant is.</summary>
public enum RemnantStatus
{
    /// <summary>On the shelf, for any batch to take.</summary>
    Shelved,

    /// <summary>Taken by a batch that has not cut it yet.</summary>
    Taken,

    /// <summary>Cut, or thrown away.</summary>
    Gone,
}

/// <summary>An offcut worth keeping, with a label of its own.</summary>
sealed class ShelvedRemnant
{
    public required string Code { get; init; }
    public required string PipeSku { get; init; }
    public required int LengthTenths { get; init; }
    public RemnantStatus Status { get; set; }
    public string Bin { get; set; } = "";

    /// <summary>The batch that left it; null where it was put in by hand.</summary>
    public int? FromBatch { get; init; }

    /// <summary>The batch that takes or took it.</summary>
    public int? ForBatch { get; set; }
}

/// <summary>Struts of one length that lie ready cut and are nobody's yet.</summary>
sealed class ReadyStruts
{
    public required string PipeSku { get; init; }
    public required int LengthTenths { get; init; }
    public int OnHand { get; set; }
}

sealed class SawingTables : IEntityTypeConfiguration<Batch>, IEntityTypeConfiguration<BatchedOrder>, IEntityTypeConfiguration<PatternProgress>,
    IEntityTypeConfiguration<ShelvedRemnant>, IEntityTypeConfiguration<ReadyStruts>
{
    public void Configure(EntityTypeBuilder<Batch> builder)
    {
        builder.ToTable("batches").HasKey(b => b.Id);
        builder.HasIndex(b => b.Number).IsUnique();
        builder.Property(b => b.MadeBy).HasMaxLength(100);
        builder.Property(b => b.Version).IsConcurrencyToken();
        builder.HasMany(b => b.Orders).WithOne().HasForeignKey(o => o.BatchId);
        builder.HasMany(b => b.Patterns).WithOne().HasForeignKey(p => p.BatchId);
        builder.Navigation(b => b.Orders).AutoInclude();
        builder.Navigation(b => b.Patterns).AutoInclude();
    }

    public void Configure(EntityTypeBuilder<BatchedOrder> builder) => builder.ToTable("batch_orders").HasKey(o => new { o.BatchId, o.OrderId });

    public void Configure(EntityTypeBuilder<PatternProgress> builder) => builder.ToTable("batch_patterns").HasKey(p => new { p.BatchId, p.Number });

    public void Configure(EntityTypeBuilder<ShelvedRemnant> builder)
    {
        builder.ToTable("remnants").HasKey(r => r.Code);
        builder.Property(r => r.Code).HasMaxLength(20);
        builder.Property(r => r.PipeSku).HasMaxLength(60);
        builder.Property(r => r.Bin).HasMaxLength(40);
        builder.HasIndex(r => new { r.Status, r.PipeSku });
    }

    public void Configure(EntityTypeBuilder<ReadyStruts> builder)
    {
        builder.ToTable("ready_struts", table => table.HasCheckConstraint("not_below_nothing", "\"OnHand\" >= 0"));
        builder.HasKey(s => new { s.PipeSku, s.LengthTenths });
        builder.Property(s => s.PipeSku).HasMaxLength(60);
    }
}
