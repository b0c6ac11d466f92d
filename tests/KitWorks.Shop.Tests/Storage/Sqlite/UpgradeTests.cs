using System.IO.Compression;
using KitWorks.Api.Hosting;
using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Shop.Tests.Storage.Sqlite;

/// <summary>A database as the first version left it after its demo, with three orders that hold stock, opened by this version.</summary>
public sealed class UpgradeTests : IDisposable
{
    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("kitworks-upgrade-");

    string File => Path.Combine(folder.FullName, "kitworks.db");

    [Fact]
    public async Task Upgrade_WhenTheFirstVersionHasTakenOrders_KeepsThemWhole()
    {
        await using (var packed = typeof(UpgradeTests).Assembly.GetManifestResourceStream("first-version.db.gz")!)
        await using (var unpacked = new GZipStream(packed, CompressionMode.Decompress))
        await using (var file = System.IO.File.Create(File))
            await unpacked.CopyToAsync(file, TestContext.Current.CancellationToken);

        await using var app = ShopHost.Build(OpenShop.SettingsFor(("ConnectionStrings:KitWorks", $"Data Source={File}")));
        await app.Prepare(TestContext.Current.CancellationToken);
        await app.Prepare(TestContext.Current.CancellationToken);

        await using var scope = app.Services.CreateAsyncScope();
        (scope.ServiceProvider.GetRequiredService<Call>().Actor, scope.ServiceProvider.GetRequiredService<Call>().Role) = ("test", Role.Admin);
        var db = scope.ServiceProvider.GetRequiredService<ShopDb>();
        Assert.Empty((await Ask(new VerifyLedger())).Faults);
        var orders = await db.Orders.AsNoTracking().OrderBy(o => o.Number).ToListAsync(TestContext.Current.CancellationToken);
        Assert.Equal([1001, 1002, 1003], orders.Select(o => o.Number));
        foreach (var order in orders)
        {
            var ordered = await Ask(new GetOrderKit(order.Id));
            Assert.Equal(Order.LinesOf(ordered.Kit, order.Quantity), order.Lines());
            var reserved = await db.Movements.Where(m => m.Reference == order.StockReference && m.Kind == MovementKind.Reserve)
                .Select(m => new StockLine(m.Sku, m.ReservedChange)).ToListAsync(TestContext.Current.CancellationToken);
            Assert.Equal(order.Lines().OrderBy(l => l.Sku, StringComparer.Ordinal), reserved.OrderBy(l => l.Sku, StringComparer.Ordinal));
        }
        Assert.Equal(OrderStatus.Cancelled, (await Ask(new CancelOrder(orders[0].Id))).Status);
        Assert.Empty((await Ask(new VerifyLedger())).Faults);

        async Task<T> Ask<T>(IRequest<Outcome<T>> message) =>
            (await scope.ServiceProvider.GetRequiredService<IMediator>().Send(message, TestContext.Current.CancellationToken)).Value;
    }

    public void Dispose()
    {
        using (var connection = new SqliteConnection($"Data Source={File}")) SqliteConnection.ClearPool(connection);
        folder.Delete(recursive: true);
    }
}
