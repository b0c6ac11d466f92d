using KitWorks.Shop.Pipeline;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace KitWorks.Shop.Storage;

/// <summary>Everything that is remembered. Each module maps its own tables, in the file beside its entities.</summary>
public sealed class ShopDb(DbContextOptions<ShopDb> options) : DbContext(options), IDataProtectionKeyContext
{
    internal DbSet<RememberedAnswer> Answers => Set<RememberedAnswer>();
    internal DbSet<Counter> Counters => Set<Counter>();
    internal DbSet<Auditing.AuditEntry> AuditEntries => Set<Auditing.AuditEntry>();
    internal DbSet<Access.ApiKey> ApiKeys => Set<Access.ApiKey>();
    internal DbSet<Access.StaffMember> Staff => Set<Access.StaffMember>();
    internal DbSet<Catalog.CatalogSection> CatalogSections => Set<Catalog.CatalogSection>();
    internal DbSet<Inventory.StockItem> StockItems => Set<Inventory.StockItem>();
    internal DbSet<Inventory.StockBalance> StockBalances => Set<Inventory.StockBalance>();
    internal DbSet<Inventory.Movement> Movements => Set<Inventory.Movement>();
    internal DbSet<Quotes.Quote> Quotes => Set<Quotes.Quote>();
    internal DbSet<Orders.Order> Orders => Set<Orders.Order>();
    internal DbSet<Orders.OrderKit> OrderKits => Set<Orders.OrderKit>();
    internal DbSet<Packing.PackedBundle> Bundles => Set<Packing.PackedBundle>();
    internal DbSet<Planning.Purchase> Purchases => Set<Planning.Purchase>();
    internal DbSet<Shipping.ShippedParcel> Parcels => Set<Shipping.ShippedParcel>();
    internal DbSet<Sawing.Batch> Batches => Set<Sawing.Batch>();
    internal DbSet<Sawing.ShelvedRemnant> Remnants => Set<Sawing.ShelvedRemnant>();
    internal DbSet<Sawing.ReadyStruts> ReadyStruts => Set<Sawing.ReadyStruts>();
    internal DbSet<Printing.PrintJob> PrintJobs => Set<Printing.PrintJob>();
    internal DbSet<Webhooks.Webhook> Webhooks => Set<Webhooks.Webhook>();

    readonly SetWriting sets = new();

    /// <summary>Adds new rows that nobody in this transaction reads or changes, to be written a set at a time behind the tracked changes.</summary>
    internal void AddAll<T>(IReadOnlyList<T> rows) where T : class => sets.Add(rows);

    /// <summary>Forgets whatever was read, and whatever was to be written.</summary>
    internal void Forget()
    {
        ChangeTracker.Clear();
        sets.Forget();
    }

    /// <inheritdoc/>
    public override async Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default) =>
        await base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken) + await sets.Write(this, cancellationToken);

    /// <inheritdoc/>
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        ArgumentNullException.ThrowIfNull(modelBuilder);
        modelBuilder.Entity<RememberedAnswer>(answer =>
        {
            answer.ToTable("remembered_answers").HasKey(a => new { a.Caller, a.Key });
            answer.Property(a => a.Caller).HasMaxLength(100);
            answer.Property(a => a.Key).HasMaxLength(200);
        });
        modelBuilder.Entity<Counter>(counter =>
        {
            counter.ToTable("counters").HasKey(c => c.Name);
            counter.Property(c => c.Name).HasMaxLength(40);
            // There from the start, so that two first orders at once do not both make it.
            counter.HasData(
                new Counter { Name = CounterQueries.Order, Value = 1000 }, new Counter { Name = CounterQueries.Batch, Value = 0 },
                new Counter { Name = CounterQueries.Remnant, Value = 0 }, new Counter { Name = CounterQueries.Sscc, Value = 0 });
        });
        modelBuilder.ApplyConfigurationsFromAssembly(typeof(ShopDb).Assembly);
    }

    /// <inheritdoc/>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        ArgumentNullException.ThrowIfNull(configurationBuilder);
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<InstantConverter>();
        configurationBuilder.Properties<Enum>().HaveConversion<string>().HaveMaxLength(20);
    }

    /// <summary>Instants as milliseconds since 1970 in UTC, which every database orders alike.</summary>
    sealed class InstantConverter() : ValueConverter<DateTimeOffset, long>(
        instant => instant.ToUnixTimeMilliseconds(), ms => DateTimeOffset.FromUnixTimeMilliseconds(ms));
}

static class Instants
{
    /// <summary>The time to the millisecond, as it is stored, so that an answer reads the same now and later.</summary>
    public static DateTimeOffset Moment(this TimeProvider clock) => DateTimeOffset.FromUnixTimeMilliseconds(clock.GetUtcNow().ToUnixTimeMilliseconds());
}

/// <summary>A number that goes up by one each time it is taken, inside the transaction that uses it.</summary>
sealed class Counter
{
    public required string Name { get; init; }
    public required int Value { get; init; }
}

static class CounterQueries
{
    /// <summary>The counter of order numbers. It has taken 1000, so that the first order is 1001.</summary>
    public const string Order = "order";

    /// <summary>The counters of batches, of remnants, and of the serials of parcels' SSCCs.</summary>
    public const string Batch = "batch", Remnant = "remnant", Sscc = "sscc";

    /// <summary>Takes the next numbers of a counter and gives the last of them. The row stays locked until the transaction ends, so numbers have no gaps.</summary>
    public static async Task<int> TakeNumbers(this ShopDb db, string counter, int count, CancellationToken cancellationToken) =>
        (await db.Database.SqlQuery<int>($"""UPDATE counters SET "Value" = "Value" + {count} WHERE "Name" = {counter} RETURNING "Value" """)
            .ToListAsync(cancellationToken)).Single();
}
