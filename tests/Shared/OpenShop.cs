using KitWorks.Api.Hosting;
using KitWorks.Geometry;
using KitWorks.Shop;
using KitWorks.Shop.Inventory;
using MediatR;
using Microsoft.AspNetCore.Builder;
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
    readonly bool ownsDatabase;
    readonly HttpClient http;

    OpenShop(WebApplication app, FreshDatabase database, bool ownsDatabase)
    {
        (this.app, Database, this.ownsDatabase) = (app, database, ownsDatabase);
        http = new(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = new(app.Urls.First()) };
    }

    public FreshDatabase Database { get; }
    public ShopKeys Keys => Database.Keys;
    public IServiceProvider Services => app.Services;
    public Uri Address => http.BaseAddress!;

    public Caller Admin => With(BootstrapKey);
    public Caller Bench => With(Keys.Bench);
    public Caller Storefront => With(Keys.Storefront);
    public Caller OtherStorefront => With(Keys.OtherStorefront);
    public Caller Nobody => With(null);

    public static async Task<OpenShop> Open(TimeProvider? clock = null, Action<IServiceCollection>? change = null, params (string Key, string? Value)[] settings)
    {
        var database = await FreshDatabase.Open();
        return new(await Start(database, clock, change, settings), database, ownsDatabase: true);
    }

    /// <summary>A second process on the same database.</summary>
    public async Task<OpenShop> AnotherInstance(params (string Key, string? Value)[] settings) =>
        new(await Start(Database, null, null, settings), Database, ownsDatabase: false);

    static async Task<WebApplication> Start(FreshDatabase database, TimeProvider? clock, Action<IServiceCollection>? change, params (string, string?)[] settings)
    {
        var app = ShopHost.Build(
            builder =>
            {
                if (clock is not null) builder.Services.AddSingleton(clock);
                change?.Invoke(builder.Services);
            },
            [.. settings, .. SettingsFor(database.Settings).ExceptBy(settings.Select(s => s.Item1), s => s.Item1)]);
        await app.StartAsync();
        return app;
    }

    public static (string, string?)[] SettingsFor(params (string, string?)[] database) =>
    [
        .. database, ("Access:BootstrapAdminKey", BootstrapKey), ("urls", "http://127.0.0.1:0"),
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

    /// <summary>Every balance is what the ledger says, and what is reserved is what orders and batches hold, item by item.</summary>
    public async Task LedgerAddsUp()
    {
        Assert.Empty((await Ask(new VerifyLedger())).Faults);
        var held = new Dictionary<string, int>();
        foreach (var order in await All("/api/orders?limit=200"))
            foreach (var line in (await Bench.Get($"/api/orders/{order.Id()}")).Ok.List("reservations"))
                held[line.Text("sku")] = held.GetValueOrDefault(line.Text("sku")) + line.Int("quantity");
        foreach (var batch in await All("/api/batches?limit=200"))
            foreach (var line in (await Bench.Get($"/api/batches/{batch.Id()}")).Ok.List("reservations"))
                held[line.Text("sku")] = held.GetValueOrDefault(line.Text("sku")) + line.Int("quantity");
        Assert.All(await All("/api/stock?limit=200"), item => Assert.Equal(
            (item.Text("sku"), held.GetValueOrDefault(item.Text("sku"))), (item.Text("sku"), item.Int("reserved"))));
    }

    /// <summary>Every item of a list, page by page.</summary>
    public async Task<List<System.Text.Json.JsonElement>> All(string path)
    {
        var all = new List<System.Text.Json.JsonElement>();
        for (string? after = null; ;)
        {
            var page = (await Bench.Get(after is null ? path : $"{path}&after={after}")).Ok;
            all.AddRange(page.List("items"));
            if (!page.TryGetProperty("next", out var next) || next.GetString() is not { } more) return all;
            after = more;
        }
    }

    public async ValueTask DisposeAsync()
    {
        http.Dispose();
        await app.DisposeAsync();
        if (ownsDatabase) await Database.DisposeAsync();
    }
}
