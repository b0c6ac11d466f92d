using System.Collections.Immutable;
using KitWorks.Api.Demo;
using KitWorks.Api.Hosting;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Shop;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.AspNetCore.Builder;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Benchmarks.Orders;

/// <summary>The shop as it is, without HTTP, with plenty of twenty items that every order takes.</summary>
sealed class OrderShop : IAsyncDisposable
{
    const int Lines = 20, Plenty = 10_000_000;

    readonly WebApplication app;
    TakeOrder order = null!;

    OrderShop(WebApplication app) => this.app = app;

    /// <summary>A new shop on an empty database.</summary>
    public static async Task<OrderShop> Open(params (string, string?)[] settings)
    {
        var shop = await Join(settings);
        var skus = shop.order.Kit.Parts.Select(p => p.Sku).ToList();
        await shop.Ask(new KeepStockItems([.. skus.Select(s => new StockItemWords(s, "piece", s, "piece"))]));
        await shop.Ask(new CountStock([.. skus.Select(s => new CountedLine(s, Plenty))], "opening"));
        return shop;
    }

    /// <summary>Another instance on the same database.</summary>
    public static async Task<OrderShop> Join(params (string, string?)[] settings)
    {
        var shop = new OrderShop(ShopHost.Build([.. settings, ("Logging:LogLevel:Default", "None")]));
        await shop.app.Prepare(default);
        var catalog = await shop.Ask(DemoCatalog.Sections);
        var dome = new Dome { Lattice = Lattice.Class1(2), Cut = Cut.Fraction(1, 2), Size = new Size.FloorDiameter(Length.FromMillimetres(3600)) };
        var kit = Kit.Make(new Design { Shelter = dome, HubSystem = "ring-100", StrutStock = "pvc-33" }, catalog).Value;
        kit = kit with { Parts = [.. Enumerable.Range(0, Lines).Select(i => new Part($"hot-{i:00}", PartKind.Hub, $"Part {i}", 1 + i % 3))] };
        shop.order = new(kit, Price.Of(kit, 1, catalog.Prices with { UnitCosts = kit.Parts.ToImmutableDictionary(p => p.Sku, _ => 1m) }).Value, 1,
            new("A customer"), null, WhenShort.Wait);
        return shop;
    }

    public ICaller Caller() => new ShopCaller(this);

    /// <summary>Takes an order and says what was written.</summary>
    public async Task<SampleOrder> Sample()
    {
        var id = (await Ask(order)).Id;
        await using var scope = app.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ShopDb>();
        var taken = await db.Orders.SingleAsync(o => o.Id == id);
        var bundles = await db.Bundles.Where(b => b.OrderId == id).OrderBy(b => b.Number).ToListAsync();
        var answer = await db.Answers.OrderByDescending(a => a.At).FirstAsync();
        return new([.. order.Lines.Select(l => l.Sku)], [.. order.Lines.Select(l => l.Quantity)], taken.StockLines, taken.Price, taken.DesignId, order.PackedKit,
            System.Text.Json.JsonSerializer.Serialize(bundles), bundles.Count, answer.Value!);
    }

    /// <summary>Forgets all orders, and what they did to the stock.</summary>
    public async Task Empty()
    {
        await using var scope = app.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ShopDb>();
        await db.Database.ExecuteSqlAsync($"""
            DELETE FROM order_events; DELETE FROM order_kits; DELETE FROM bundles; DELETE FROM orders; DELETE FROM remembered_answers; DELETE FROM stock_movements;
            UPDATE stock_balances SET "Reserved" = 0;
            """);
        await db.Database.ExecuteSqlRawAsync(db.Database.IsPostgreSql() ? "VACUUM ANALYZE" : "VACUUM");
    }

    async Task<T> Ask<T>(IRequest<Outcome<T>> message)
    {
        await using var scope = app.Services.CreateAsyncScope();
        var call = scope.ServiceProvider.GetRequiredService<Call>();
        (call.Actor, call.Role) = ("benchmark", Role.Admin);
        if (message is TakeOrder) call.OnceOnly = new(Guid.NewGuid().ToString(), "a hash of the request as long as sixty-four characters, as it is");
        return (await scope.ServiceProvider.GetRequiredService<IMediator>().Send(message)).Value;
    }

    public ValueTask DisposeAsync() => app.DisposeAsync();

    sealed class ShopCaller(OrderShop shop) : ICaller
    {
        public Task Order() => shop.Ask(shop.order);

        public ValueTask DisposeAsync() => default;
    }
}
