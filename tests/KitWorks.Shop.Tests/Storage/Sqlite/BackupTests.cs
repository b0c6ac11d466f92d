using System.Diagnostics;
using KitWorks.Api.Hosting;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Shop.Tests.Storage.Sqlite;

public sealed class BackupTests
{
    [Fact]
    public async Task Backup_WhenOrdersComeMeanwhile_HoldsAWholeMomentThatCanBeServed()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 10_000);
        var before = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var folder = Directory.CreateTempSubdirectory("kitworks-backup-");
        var copy = Path.Combine(folder.FullName, "copy.db");

        using var done = new CancellationTokenSource();
        var clients = Enumerable.Range(0, 4).Select(async client =>
        {
            while (!done.IsCancellationRequested) _ = (await shop.Storefront.Order(Designs.SmallDome, customer: $"Customer {client}")).Created;
        }).ToList();
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "KitWorks.Api.dll"), "backup", copy]);
        foreach (var (key, value) in shop.Database.Settings) start.Environment[key.Replace(":", "__", StringComparison.Ordinal)] = value;
        using var backup = Process.Start(start)!;
        await backup.WaitForExitAsync(TestContext.Current.CancellationToken);
        await done.CancelAsync();
        await Task.WhenAll(clients);

        Assert.Equal(0, backup.ExitCode);
        await using (var app = ShopHost.Build(OpenShop.SettingsFor(("ConnectionStrings:KitWorks", $"Data Source={copy}"))))
        {
            await app.Prepare(TestContext.Current.CancellationToken);
            await using var scope = app.Services.CreateAsyncScope();
            scope.ServiceProvider.GetRequiredService<Call>().Role = Role.Admin;
            var mediator = scope.ServiceProvider.GetRequiredService<IMediator>();
            var db = scope.ServiceProvider.GetRequiredService<ShopDb>();
            Assert.Empty((await mediator.Send(new VerifyLedger(), TestContext.Current.CancellationToken)).Value.Faults);
            var orders = await db.Orders.AsNoTracking().OrderBy(o => o.Number).ToListAsync(TestContext.Current.CancellationToken);
            Assert.Equal(before.Id(), orders[0].Id);
            Assert.Equal(Enumerable.Range(1001, orders.Count), orders.Select(o => o.Number));
            foreach (var order in orders)
            {
                var answer = (await mediator.Send(new GetOrder(order.Id), TestContext.Current.CancellationToken)).Value;
                Assert.Equal((OrderStatus.Reserved, answer.Bundles[0].OutOf), (answer.Status, answer.Bundles.Count));
                Assert.Equal(answer.DesignId, (await mediator.Send(new GetOrderKit(order.Id), TestContext.Current.CancellationToken)).Value.Kit.DesignId);
            }
        }

        using (var connection = new SqliteConnection($"Data Source={copy}")) SqliteConnection.ClearPool(connection);
        folder.Delete(recursive: true);
    }
}
