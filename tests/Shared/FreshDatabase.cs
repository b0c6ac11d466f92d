using KitWorks.Api.Demo;
using KitWorks.Api.Hosting;
using KitWorks.Geometry;
using KitWorks.Shop;
using KitWorks.Shop.Access;
using MediatR;
using Microsoft.AspNetCore.Builder;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Tests;

/// <summary>A migrated database with catalog and keys, made once in a test run and copied for each test.</summary>
static class FreshDatabase
{
    static readonly Lazy<Task<(byte[] File, ShopKeys Keys)>> Made = new(Make);

    public static async Task<ShopKeys> CopyTo(string path)
    {
        var (file, keys) = await Made.Value;
        await File.WriteAllBytesAsync(path, file);
        return keys;
    }

    static async Task<(byte[], ShopKeys)> Make()
    {
        var folder = Directory.CreateTempSubdirectory("kitworks-fresh-");
        var path = Path.Combine(folder.FullName, "kitworks.db");
        ShopKeys keys;
        await using (var app = ShopHost.Build(OpenShop.SettingsFor(path)))
        {
            await app.Prepare(default);
            await Ask(app, DemoCatalog.Sections);
            await Ask(app, DemoCatalog.Shelves);
            keys = new(
                (await Ask(app, new CreateKey("bench", Role.Bench))).Secret,
                (await Ask(app, new CreateKey("storefront", Role.Storefront))).Secret,
                (await Ask(app, new CreateKey("other storefront", Role.Storefront))).Secret);
        }
        // The last connection to close brings the log into the file.
        using (var connection = new SqliteConnection($"Data Source={path}")) SqliteConnection.ClearPool(connection);
        var file = await File.ReadAllBytesAsync(path);
        folder.Delete(recursive: true);
        return (file, keys);
    }

    static async Task<T> Ask<T>(WebApplication app, IRequest<Outcome<T>> message)
    {
        await using var scope = app.Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<Call>().Actor = "test";
        return (await scope.ServiceProvider.GetRequiredService<IMediator>().Send(message)).Value;
    }
}
