using System.IO.Compression;
using KitWorks.Api.Hosting;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Api.Tests.Hosting;

/// <summary>A shop that was opened with the first release, with orders, a quote and a remembered answer, goes on with this one.</summary>
public sealed class UpgradeTests : IDisposable
{
    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("kitworks-upgrade-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task Serve_WhenTheDatabaseIsOfTheFirstRelease_BringsItUpToDateAndLosesNothing()
    {
        var file = Path.Combine(folder.FullName, "kitworks.db");
        await Restore(file);
        await using (var app = ShopHost.Build([.. OpenShop.SettingsFor(("ConnectionStrings:KitWorks", $"Data Source={file}")).Where(s => s.Item1 != "Access:BootstrapAdminKey"), ("Access:BootstrapAdminKey", "first")]))
        {
            await app.Prepare(TestContext.Current.CancellationToken);
            await app.StartAsync(TestContext.Current.CancellationToken);
            using var http = new HttpClient { BaseAddress = new(app.Urls.First()) };
            var admin = new Caller(http, "first");
            await using var scope = app.Services.CreateAsyncScope();

            Assert.Empty(await scope.ServiceProvider.GetRequiredService<ShopDb>().Database.GetPendingMigrationsAsync(TestContext.Current.CancellationToken));
            (await admin.Get("/health/ready")).Is(200);
            var orders = (await admin.Get("/api/orders")).Ok.List("items");
            Assert.Equal([1004, 1003, 1002, 1001], orders.Select(o => o.Int("number")));
            foreach (var order in orders)
            {
                Assert.Equal("reserved", order.Text("status"));
                foreach (var paper in (string[])["", "/kit", "/picklist", "/cut-plan", "/bundles", "/guide.pdf", "/labels.pdf", "/packing-list.pdf"])
                    (await admin.Get($"/api/orders/{order.Id()}{paper}")).Is(200);
            }
            var again = await admin.PostText("/api/orders",
                """{"design":{"shelter":{"kind":"dome","class":1,"frequency":1,"cut":"2/3","size":{"height":"2 m"}},"hubSystem":"ring-100","strutStock":"pvc-33"},"quantity":1,"customer":{"name":"A customer"},"reference":"kept"}""",
                once: "first-release");
            Assert.Equal(orders[0].Id(), again.Created.Id());
            Assert.True(again.Replayed);
            (await admin.Get("/api/quotes/01a2139f-9f8a-7f7e-9f9c-fd831bfd2f3a")).Is(200);
            Assert.Equal("cancelled", (await admin.Post($"/api/orders/{orders[3].Id()}/cancel")).Ok.Text("status"));
            Assert.Empty((await scope.ServiceProvider.GetRequiredService<IMediator>().Send(new VerifyLedger(), TestContext.Current.CancellationToken)).Value.Faults);
        }
        using var connection = new SqliteConnection($"Data Source={file}");
        SqliteConnection.ClearPool(connection);
    }

    static async Task Restore(string file)
    {
        await using var packed = File.OpenRead(Path.Combine(AppContext.BaseDirectory, "first-release.sql.gz"));
        using var dump = new StreamReader(new GZipStream(packed, CompressionMode.Decompress));
        await using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
        command.CommandText = await dump.ReadToEndAsync();
        await command.ExecuteNonQueryAsync();
    }
}
