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
    internal DbSet<Access.ApiKey> ApiKeys => Set<Access.ApiKey>();
    internal DbSet<Access.StaffMember> Staff => Set<Access.StaffMember>();
    internal DbSet<Catalog.CatalogSection> CatalogSections => Set<Catalog.CatalogSection>();
    internal DbSet<Inventory.StockItem> StockItems => Set<Inventory.StockItem>();
    internal DbSet<Inventory.StockBalance> StockBalances => Set<Inventory.StockBalance>();
    internal DbSet<Inventory.Movement> Movements => Set<Inventory.Movement>();
    internal DbSet<Quotes.Quote> Quotes => Set<Quotes.Quote>();
    internal DbSet<Orders.Order> Orders => Set<Orders.Order>();
    internal DbSet<Packing.PackedBundle> Bundles => Set<Packing.PackedBundle>();
    internal DbSet<Printing.PrintJob> PrintJobs => Set<Printing.PrintJob>();

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

/// <summary>A number that goes up by one each time it is taken, inside the transaction that uses it.</summary>
sealed class Counter
{
    public required string Name { get; init; }
    public required int Value { get; init; }
}

static class CounterQueries
{
    /// <summary>Takes the next number of a counter. The row stays locked until the transaction ends, so numbers have no gaps.</summary>
    public static async Task<int> TakeNumber(this ShopDb db, string counter, int first, CancellationToken cancellationToken)
    {
        if (await db.Counters.Where(c => c.Name == counter).ExecuteUpdateAsync(u => u.SetProperty(c => c.Value, c => c.Value + 1), cancellationToken) == 0)
        {
            db.Counters.Add(new() { Name = counter, Value = first });
            await db.SaveChangesAsync(cancellationToken);
            return first;
        }
        return await db.Counters.Where(c => c.Name == counter).Select(c => c.Value).SingleAsync(cancellationToken);
    }
}
