using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace KitWorks.Shop.Auditing;

/// <summary>That somebody changed something. Written in the transaction of the change, never changed, never deleted.</summary>
sealed class AuditEntry
{
    public const int LongestAbout = 300;

    public long Id { get; init; }
    public required DateTimeOffset At { get; init; }
    public required string Actor { get; init; }
    public required Role Role { get; init; }
    public required string Action { get; init; }

    /// <summary>What it was done to, as <c>number=1001</c> or <c>sku=stake-450 quantity=-3</c>; cut short at what the table holds.</summary>
    public required string About { get; init; }

    /// <summary>Where the request came from; null for the console and for what the shop does by itself.</summary>
    public string? Address { get; init; }

    /// <summary>The trace that the change was part of.</summary>
    public string? Trace { get; init; }
}

/// <summary>Writes down who does what.</summary>
sealed class AuditTrail(ShopDb db, Call call, TimeProvider clock)
{
    // The trace of the request, whoever writes the entry in the end.
    readonly string? trace = Activity.Current?.TraceId.ToHexString();

    /// <summary>What tells one thing from another, and how much of it; nothing about customers.</summary>
    static readonly string[] Telling = ["Number", "Id", "OrderId", "Sku", "Code", "Name", "Role", "Quantity", "Printer", "What", "Reference", "Reason"];

    static readonly ConcurrentDictionary<Type, PropertyInfo[]> Properties = new();

    /// <summary>Adds the entry to what is about to be written.</summary>
    public void Note(object command, object? answer) => db.Add(Entry(command, answer));

    /// <summary>The entry, for whoever writes many together.</summary>
    public AuditEntry Entry(object command, object? answer) => new()
    {
        At = clock.GetUtcNow(),
        Actor = call.Actor,
        Role = call.Role,
        Action = call.AtWork ?? command.GetType().Name,
        About = About(command, answer),
        Address = call.Address,
        Trace = trace,
    };

    static string About(object command, object? answer)
    {
        var told = new List<(string Name, string Value)>();
        foreach (var source in (object?[])[command, answer])
            foreach (var property in source is null ? [] : Properties.GetOrAdd(source.GetType(), TellingOf))
                if (told.All(t => t.Name != property.Name) && property.GetValue(source) is { } value)
                    told.Add((property.Name, string.Create(CultureInfo.InvariantCulture, $"{value}")));
        var about = string.Join(' ', told.Select(t => $"{char.ToLowerInvariant(t.Name[0])}{t.Name[1..]}={t.Value}"));
        return about.Length <= AuditEntry.LongestAbout ? about : about[..AuditEntry.LongestAbout];
    }

    static PropertyInfo[] TellingOf(Type type) =>
        [.. Telling.Select(type.GetProperty).OfType<PropertyInfo>().Where(p => (Nullable.GetUnderlyingType(p.PropertyType) ?? p.PropertyType) is var of && (of.IsEnum || of.IsPrimitive || of == typeof(string) || of == typeof(Guid)))];
}

sealed class AuditTables : IEntityTypeConfiguration<AuditEntry>
{
    public void Configure(EntityTypeBuilder<AuditEntry> builder)
    {
        builder.ToTable("audit_entries").HasKey(e => e.Id);
        builder.Property(e => e.Actor).HasMaxLength(100);
        builder.Property(e => e.Action).HasMaxLength(60);
        builder.Property(e => e.About).HasMaxLength(AuditEntry.LongestAbout);
        builder.Property(e => e.Address).HasMaxLength(60);
        builder.Property(e => e.Trace).HasMaxLength(32);
    }
}
