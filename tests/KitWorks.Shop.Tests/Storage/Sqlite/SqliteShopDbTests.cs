using KitWorks.Api.Hosting;
using KitWorks.Shop.Storage;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Shop.Tests.Storage.Sqlite;

public sealed class SqliteShopDbTests(OneShop one) : IClassFixture<OneShop>
{
    [Fact]
    public async Task Migrations_WhenTheyStartFromNothing_MakeTheDatabaseOfTheModel()
    {
        var shop = one.Shop;
        await using var scope = shop.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ShopDb>();
        Assert.Empty(await db.Database.GetPendingMigrationsAsync(TestContext.Current.CancellationToken));
        var folder = Directory.CreateTempSubdirectory("kitworks-model-");
        var fromModel = Path.Combine(folder.FullName, "model.db");
        await using (var app = ShopHost.Build(OpenShop.SettingsFor(("ConnectionStrings:KitWorks", $"Data Source={fromModel}"))))
        await using (var other = app.Services.CreateAsyncScope())
        {
            await other.ServiceProvider.GetRequiredService<ShopDb>().Database.EnsureCreatedAsync(TestContext.Current.CancellationToken);
        }

        var expected = await Schema(fromModel);
        Assert.NotEmpty(expected);
        Assert.Equal(expected, await Schema(shop.Database.File));

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

    /// <summary>Tables, their columns and indexes. Not as SQL: a column that came later stands last, and with a default.</summary>
    static async Task<List<string>> Schema(string file)
    {
        await using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
        command.CommandText = """
            SELECT t.name || '.' || c.name || ' ' || c.type || ' ' || c."notnull" || ' ' || c.pk FROM sqlite_master AS t, pragma_table_info(t.name) AS c WHERE t.type = 'table' AND t.name NOT LIKE '\_\_EF%' ESCAPE '\'
            UNION ALL SELECT name || ' ' || sql FROM sqlite_master WHERE type = 'index' AND sql IS NOT NULL
            UNION ALL SELECT t.name || '.' || f."from" || ' of ' || f."table" || ' ' || f.on_delete FROM sqlite_master AS t, pragma_foreign_key_list(t.name) AS f WHERE t.type = 'table'
            ORDER BY 1
            """;
        var schema = new List<string>();
        await using var reader = await command.ExecuteReaderAsync();
        while (await reader.ReadAsync()) schema.Add(reader.GetString(0).Replace("\r", "", StringComparison.Ordinal));
        return schema;
    }
}
