using KitWorks.Api.Hosting;
using KitWorks.Shop.Storage;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace KitWorks.Shop.Tests.Storage;

public sealed class MigrateTests
{
    [Fact]
    public async Task Prepare_WhenTheServersDatabaseIsOld_WaitsUntilSomebodyMigrates()
    {
        await using var database = await FreshDatabase.Open();
        await database.Sql("DROP SCHEMA public CASCADE; CREATE SCHEMA public");
        await using var app = ShopHost.Build(OpenShop.SettingsFor(database.Settings));

        var refused = await Assert.ThrowsAsync<SettingException>(() => app.Prepare(TestContext.Current.CancellationToken));
        Assert.Contains("migrate", refused.Message, StringComparison.Ordinal);
        await Assert.ThrowsAsync<PostgresException>(() => database.Sql("SELECT 1 FROM orders"));

        await using (var scope = app.Services.CreateAsyncScope()) await scope.ServiceProvider.GetRequiredService<ShopDb>().Upgrade(TestContext.Current.CancellationToken);
        await app.Prepare(TestContext.Current.CancellationToken);
        await database.Sql("SELECT 1 FROM orders");
    }
}
