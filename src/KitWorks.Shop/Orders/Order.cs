using KitWorks.Kits;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace KitWorks.Shop.Orders;

/// <summary>Where an order stands.</summary>
public enum OrderStatus
{
    /// <summary>Some stock is short; nothing is reserved.</summary>
    Waiting,

    /// <summary>All of its stock is reserved.</summary>
    Reserved,

    /// <summary>The first bundle is packed.</summary>
    Picking,

    /// <summary>Every bundle is packed.</summary>
    Packed,

    /// <summary>It is with the carrier.</summary>
    Shipped,

    /// <summary>It will not be made.</summary>
    Cancelled,
}

/// <summary>Who an order is for.</summary>
public sealed record Customer(string Name, string? Email = null, string? Address = null);

/// <summary>
/// An order: how many of a kit, which is kept beside it as it was computed when the order was placed. Stock is reserved for
/// it exactly while it is <see cref="OrderStatus.Reserved"/>, <see cref="OrderStatus.Picking"/> or
/// <see cref="OrderStatus.Packed"/>, and then for all of its lines.
/// </summary>
sealed class Order
{
    readonly List<OrderEvent> history = [];

    Order()
    {
    }

    public Guid Id { get; private init; }
    public int Number { get; private init; }
    public string Owner { get; private init; } = "";
    public OrderStatus Status { get; private set; }

    /// <summary>Of the orders that wait, those with the higher priority are served first.</summary>
    public int Priority { get; private set; }
    public int Quantity { get; private set; }
    public string CustomerName { get; private init; } = "";
    public string? CustomerEmail { get; private init; }
    public string? CustomerAddress { get; private init; }
    public string? Reference { get; private init; }
    public string DesignId { get; private init; } = "";

    /// <summary>What the whole order takes from stock, as JSON.</summary>
    public string StockLines { get; private set; } = "";

    /// <summary>The price that was quoted, as it was quoted.</summary>
    public string Price { get; private set; } = "";

    /// <summary>The batch that cuts its pipe, which is then not among its stock lines; null where it is cut by itself.</summary>
    public int? Batch { get; private set; }

    /// <summary>Whether its batch is cut.</summary>
    public bool IsCut { get; private set; }

    /// <summary>Its work at the saw, in struts.</summary>
    public int Cuts { get; private set; }

    /// <summary>Its work at the bench, in bundles.</summary>
    public int BundleCount { get; private set; }
    public string? Carrier { get; private set; }
    public string? Tracking { get; private set; }
    public DateTimeOffset PlacedAt { get; private init; }

    /// <summary>Goes up with each change, so that two changes at once do not both happen.</summary>
    public int Version { get; private set; }

    public IReadOnlyList<OrderEvent> History => history;

    public static Order Place(int number, string owner, TakeOrder taken, DateTimeOffset at) => Begin(owner, at, new()
    {
        Id = Guid.CreateVersion7(at),
        Number = number,
        Owner = owner,
        Status = OrderStatus.Waiting,
        Quantity = taken.Quantity,
        CustomerName = taken.Customer.Name,
        CustomerEmail = taken.Customer.Email,
        CustomerAddress = taken.Customer.Address,
        Reference = taken.Reference,
        DesignId = taken.Kit.DesignId,
        Cuts = taken.Kit.StrutTypes.Sum(t => t.Count) * taken.Quantity,
        BundleCount = taken.Kit.Bundles.Length * taken.Quantity,
        StockLines = StoredJson.Write(taken.Lines),
        Price = StoredJson.Write(taken.Price),
        PlacedAt = at,
    });

    static Order Begin(string owner, DateTimeOffset at, Order order)
    {
        order.history.Add(new() { OrderId = order.Id, Status = OrderStatus.Waiting, Actor = owner, At = at });
        return order;
    }

    public bool HoldsStock => Status is OrderStatus.Reserved or OrderStatus.Picking or OrderStatus.Packed;

    /// <summary>Takes the next step, as the caller has found it allowed.</summary>
    public void Become(OrderStatus status, string actor, DateTimeOffset at, string? note = null)
    {
        Status = status;
        Version++;
        history.Add(new() { OrderId = Id, Status = status, Actor = actor, At = at, Note = note });
    }

    public void ShipBy(string? carrier, string? tracking, string actor, DateTimeOffset at)
    {
        (Carrier, Tracking) = (carrier, tracking);
        Become(OrderStatus.Shipped, actor, at);
    }

    /// <summary>Changes how many kits it is for; it holds no stock at that moment.</summary>
    public void BecomeFor(int quantity, IReadOnlyList<StockLine> lines, Price price, string actor, DateTimeOffset at)
    {
        var note = $"{quantity} instead of {Quantity}";
        (Cuts, BundleCount) = (Cuts / Quantity * quantity, BundleCount / Quantity * quantity);
        (Quantity, StockLines, Price) = (quantity, StoredJson.Write(lines), StoredJson.Write(price));
        Become(OrderStatus.Waiting, actor, at, note);
    }

    /// <summary>Leaves its pipe to a batch: its stock lines are the others.</summary>
    public void GoIntoBatch(int batch, IReadOnlyList<StockLine> others, string actor, DateTimeOffset at)
    {
        (Batch, StockLines) = (batch, StoredJson.Write(others));
        Become(Status, actor, at, $"in batch {batch}");
    }

    public void LeaveBatch(IReadOnlyList<StockLine> lines, string actor, DateTimeOffset at)
    {
        var note = $"batch {Batch} dissolved";
        (Batch, StockLines) = (null, StoredJson.Write(lines));
        Become(Status, actor, at, note);
    }

    public void HavePipeCut(string actor, DateTimeOffset at)
    {
        (IsCut, Cuts) = (true, 0);
        Become(Status, actor, at, $"batch {Batch} cut");
    }

    public void Prefer(int priority, string actor, DateTimeOffset at)
    {
        var note = $"priority {priority} instead of {Priority}";
        Priority = priority;
        Become(Status, actor, at, note);
    }

    public List<StockLine> Lines() => StoredJson.Read<List<StockLine>>(StockLines);

    /// <summary>What so many of a kit take from stock.</summary>
    public static List<StockLine> LinesOf(Kit kit, int quantity) => [.. kit.Parts.Select(p => new StockLine(p.Sku, p.Quantity * quantity))];

    public string StockReference => ReferenceOf(Number);

    /// <summary>How the ledger names an order.</summary>
    public static string ReferenceOf(int number) => $"order {number}";

    public string StatusWord => Status.ToString().ToLowerInvariant();
}

/// <summary>The kit of an order, compressed. A row of its own, because it is large and rarely read.</summary>
sealed class OrderKit
{
    public required Guid OrderId { get; init; }
    public required byte[] Packed { get; init; }
}

/// <summary>One step in an order's life.</summary>
sealed class OrderEvent
{
    public long Id { get; init; }
    public Guid OrderId { get; init; }
    public required OrderStatus Status { get; init; }
    public required string Actor { get; init; }
    public required DateTimeOffset At { get; init; }

    /// <summary>What happened, where the status does not say it.</summary>
    public string? Note { get; init; }
}

sealed class OrderTables : IEntityTypeConfiguration<Order>, IEntityTypeConfiguration<OrderKit>, IEntityTypeConfiguration<OrderEvent>
{
    public void Configure(EntityTypeBuilder<Order> builder)
    {
        builder.ToTable("orders").HasKey(o => o.Id);
        builder.HasIndex(o => o.Number).IsUnique();
        builder.HasIndex(o => new { o.Status, o.Number });
        builder.Property(o => o.Owner).HasMaxLength(100);
        builder.Property(o => o.CustomerName).HasMaxLength(200);
        builder.Property(o => o.CustomerEmail).HasMaxLength(254);
        builder.Property(o => o.CustomerAddress).HasMaxLength(1000);
        builder.Property(o => o.Reference).HasMaxLength(100);
        builder.Property(o => o.DesignId).HasMaxLength(16);
        builder.Property(o => o.Carrier).HasMaxLength(100);
        builder.Property(o => o.Tracking).HasMaxLength(100);
        builder.Property(o => o.Version).IsConcurrencyToken();
        builder.HasMany(o => o.History).WithOne().HasForeignKey(e => e.OrderId).IsRequired();
        builder.Navigation(o => o.History).UsePropertyAccessMode(PropertyAccessMode.Field).HasField("history");
    }

    public void Configure(EntityTypeBuilder<OrderKit> builder)
    {
        builder.ToTable("order_kits").HasKey(k => k.OrderId);
        builder.HasOne<Order>().WithOne().HasForeignKey<OrderKit>(k => k.OrderId);
    }

    public void Configure(EntityTypeBuilder<OrderEvent> builder)
    {
        builder.ToTable("order_events").HasKey(e => e.Id);
        builder.Property(e => e.Id).ValueGeneratedOnAdd();
        builder.Property(e => e.Actor).HasMaxLength(100);
        builder.Property(e => e.Note).HasMaxLength(300);
    }
}
