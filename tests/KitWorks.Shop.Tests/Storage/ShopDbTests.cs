using System.Data.Common;
using KitWorks.Api.Hosting;
using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Shop.Tests.Storage;

public sealed class ShopDbTests(OneShop one) : IClassFixture<OneShop>
{
    [Fact]
    public async Task Model_WhenItHasChanged_HasAMigration()
    {
        await using var app = ShopHost.Build(OpenShop.SettingsFor(FreshDatabase.NeverMade));
        await using var scope = app.Services.CreateAsyncScope();

        Assert.False(scope.ServiceProvider.GetRequiredService<ShopDb>().Database.HasPendingModelChanges(),
            "The model has changed; add a migration (DEVELOPERS.md says how).");
    }

    [Theory]
    [InlineData("UPDATE stock_balances SET \"Reserved\" = \"OnHand\" + 1 WHERE \"Sku\" = 'stake-450'")]
    [InlineData("UPDATE stock_balances SET \"Reserved\" = -1 WHERE \"Sku\" = 'stake-450'")]
    [InlineData("UPDATE stock_balances SET \"OnHand\" = -1 WHERE \"Sku\" = 'stake-450'")]
    public async Task Balance_WhenWrittenOutOfBounds_IsRefusedByTheDatabaseItself(string statement)
    {
        var shop = one.Shop;

        await Assert.ThrowsAnyAsync<DbException>(() => shop.Database.Sql(statement));
    }
}
