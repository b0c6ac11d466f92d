using KitWorks.Api.Hosting;
using KitWorks.Shop.Storage;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Shop.Tests.Storage;

public sealed class ShopDbTests(OneShop one) : IClassFixture<OneShop>
{
    [Fact]
    public async Task Model_WhenItHasChanged_HasAMigration()
    {
        await using var app = ShopHost.Build(OpenShop.SettingsFor("never-made.db"));
        await using var scope = app.Services.CreateAsyncScope();

        Assert.False(scope.ServiceProvider.GetRequiredService<ShopDb>().Database.HasPendingModelChanges(),
            "The model has changed; add a migration (DEVELOPERS.md says how).");
    }

    [Fact]
    public async Task Migrations_WhenTheyStartFromNothing_MakeTheDatabaseOfTheModel()
    {
        var shop = one.Shop;
        await using var scope = shop.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ShopDb>();
        Assert.Empty(await db.Database.GetPendingMigrationsAsync(TestContext.Current.CancellationToken));
        var folder = Directory.CreateTempSubdirectory("kitworks-model-");
        var fromModel = Path.Combine(folder.FullName, "model.db");
        await using (var app = ShopHost.Build(OpenShop.SettingsFor(fromModel)))
        await using (var other = app.Services.CreateAsyncScope())
        {
            await other.ServiceProvider.GetRequiredService<ShopDb>().Database.EnsureCreatedAsync(TestContext.Current.CancellationToken);
        }

        var expected = await Schema(fromModel);
        Assert.NotEmpty(expected);
        Assert.Equal(expected, await Schema(shop.DatabaseFile));

        using (var connection = new SqliteConnection($"Data Source={fromModel}")) SqliteConnection.ClearPool(connection);
        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task Connection_WhenItIsOpened_CommitsDurablyIntoALog()
    {
        var shop = one.Shop;
        await using var scope = shop.Services.CreateAsyncScope();
        var database = scope.ServiceProvider.GetRequiredService<ShopDb>().Database;
        await database.OpenConnectionAsync(TestContext.Current.CancellationToken);

        Assert.Equal("wal", await Pragma("journal_mode"));
        Assert.Equal("2", await Pragma("synchronous"));
        Assert.Equal("1", await Pragma("foreign_keys"));

        async Task<string> Pragma(string name)
        {
            await using var command = database.GetDbConnection().CreateCommand();
            command.CommandText = $"PRAGMA {name}";
            return (await command.ExecuteScalarAsync())!.ToString()!;
        }
    }

    [Theory]
    [InlineData("UPDATE stock_balances SET Reserved = OnHand + 1 WHERE Sku = 'stake-450'")]
    [InlineData("UPDATE stock_balances SET Reserved = -1 WHERE Sku = 'stake-450'")]
    [InlineData("UPDATE stock_balances SET OnHand = -1 WHERE Sku = 'stake-450'")]
    public async Task Balance_WhenWrittenOutOfBounds_IsRefusedByTheDatabaseItself(string statement)
    {
        var shop = one.Shop;

        await Assert.ThrowsAsync<SqliteException>(() => shop.Sql(statement));
    }

    static async Task<List<string>> Schema(string file)
    {
        await using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
        command.CommandText = "SELECT type || ' ' || name || ' ' || ifnull(sql, '') FROM sqlite_master WHERE name NOT LIKE '\\_\\_EF%' ESCAPE '\\' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY type, name";
        var schema = new List<string>();
        await using var reader = await command.ExecuteReaderAsync();
        while (await reader.ReadAsync()) schema.Add(reader.GetString(0).Replace("\r", "", StringComparison.Ordinal));
        return schema;
    }
}
