using KitWorks.Api.Hosting;
using KitWorks.Geometry;
using KitWorks.Shop;
using KitWorks.Shop.Inventory;
using MediatR;
using Microsoft.AspNetCore.Builder;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Tests;

/// <summary>
/// The whole service as it is shipped, listening on a port of its own, with a database of its own that goes when the test
/// ends. It has the demo's catalog, four keys, and nothing in stock.
/// </summary>
sealed class OpenShop : IAsyncDisposable
{
    public const string BootstrapKey = "the-first-key-of-a-new-shop";

    readonly WebApplication app;
    readonly DirectoryInfo? folder;
    readonly HttpClient http;

    OpenShop(WebApplication app, DirectoryInfo? folder, ShopKeys keys)
    {
        (this.app, this.folder, Keys, DatabaseFile) = (app, folder, keys, folder is null ? "" : FileIn(folder));
        http = new(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = new(app.Urls.First()) };
    }

    public ShopKeys Keys { get; }
    public IServiceProvider Services => app.Services;
    public Uri Address => http.BaseAddress!;
    public string DatabaseFile { get; private init; }

    public Caller Admin => With(BootstrapKey);
    public Caller Bench => With(Keys.Bench);
    public Caller Storefront => With(Keys.Storefront);
    public Caller OtherStorefront => With(Keys.OtherStorefront);
    public Caller Nobody => With(null);

    public static async Task<OpenShop> Open(TimeProvider? clock = null, params (string Key, string? Value)[] settings)
    {
        var folder = Directory.CreateTempSubdirectory("kitworks-shop-");
        var keys = await FreshDatabase.CopyTo(FileIn(folder));
        return new(await Start(FileIn(folder), clock, settings), folder, keys);
    }

    /// <summary>A second process on the same database.</summary>
    public async Task<OpenShop> AnotherInstance(params (string Key, string? Value)[] settings) => new(await Start(DatabaseFile, null, settings), null, Keys) { DatabaseFile = DatabaseFile };

    static async Task<WebApplication> Start(string databaseFile, TimeProvider? clock, params (string, string?)[] settings)
    {
        var app = ShopHost.Build(
            builder =>
            {
                if (clock is not null) builder.Services.AddSingleton(clock);
            },
            [.. settings, .. SettingsFor(databaseFile).ExceptBy(settings.Select(s => s.Item1), s => s.Item1)]);
        await app.StartAsync();
        return app;
    }

    public static (string, string?)[] SettingsFor(string databaseFile) =>
    [
        ("ConnectionStrings:KitWorks", $"Data Source={databaseFile}"), ("Access:BootstrapAdminKey", BootstrapKey), ("urls", "http://127.0.0.1:0"),
        ("Shop:PublicUrl", "https://kits.example.com"), ("Logging:LogLevel:Default", "None"),
    ];

    public Caller With(string? key) => new(http, key);

    /// <summary>Asks the shop itself, past HTTP, for what has no address.</summary>
    public async Task<T> Ask<T>(IRequest<Outcome<T>> message) => (await Outcome(message)).Value;

    /// <summary>As above, where the answer may be a no.</summary>
    public async Task<Outcome<T>> Outcome<T>(IRequest<Outcome<T>> message)
    {
        await using var scope = Services.CreateAsyncScope();
        (scope.ServiceProvider.GetRequiredService<Call>().Actor, scope.ServiceProvider.GetRequiredService<Call>().Role) = ("test", Role.Admin);
        return await scope.ServiceProvider.GetRequiredService<IMediator>().Send(message);
    }

    /// <summary>Changes the database behind the shop's back.</summary>
    public async Task Sql(string statement)
    {
        await using var connection = new SqliteConnection($"Data Source={DatabaseFile};Pooling=False");
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
        command.CommandText = statement;
        await command.ExecuteNonQueryAsync();
    }

    /// <summary>Every balance is what the ledger says, and what is reserved is what the orders hold, item by item.</summary>
    public async Task LedgerAddsUp()
    {
        Assert.Empty((await Ask(new VerifyLedger())).Faults);
        var held = new Dictionary<string, int>();
        foreach (var order in (await Bench.Get("/api/orders?limit=200")).Ok.List("items"))
            foreach (var line in (await Bench.Get($"/api/orders/{order.Id()}")).Ok.List("reservations"))
                held[line.Text("sku")] = held.GetValueOrDefault(line.Text("sku")) + line.Int("quantity");
        Assert.All((await Bench.Get("/api/stock?limit=200")).Ok.List("items"), item => Assert.Equal(
            (item.Text("sku"), held.GetValueOrDefault(item.Text("sku"))), (item.Text("sku"), item.Int("reserved"))));
    }

    public async ValueTask DisposeAsync()
    {
        http.Dispose();
        await app.DisposeAsync();
        if (folder is null) return;
        using (var connection = new SqliteConnection($"Data Source={DatabaseFile}")) SqliteConnection.ClearPool(connection);
        folder.Delete(recursive: true);
    }

    static string FileIn(DirectoryInfo folder) => Path.Combine(folder.FullName, "kitworks.db");
}

/// <summary>The secrets of the keys that every test shop has.</summary>
sealed record ShopKeys(string Bench, string Storefront, string OtherStorefront);
