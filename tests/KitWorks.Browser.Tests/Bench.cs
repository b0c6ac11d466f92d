using KitWorks.Shop;
using KitWorks.Shop.Access;
using Microsoft.Playwright;

namespace KitWorks.Browser.Tests;

/// <summary>A shop with an order's stock on its shelves, and somebody signed in at its bench in a window of their own.</summary>
sealed class Bench : IAsyncDisposable
{
    public const string Name = "Ada", Password = "a few words in a row";

    /// <summary>Every sound that the page would have made, as the pitch of its first tone.</summary>
    const string Listen = """
        window.heard = [];
        window.AudioContext = class {
          currentTime = 0; destination = {};
          createOscillator() { const note = { type: "", frequency: {}, connect: (to) => to, start() { window.heard.push(note.frequency.value) }, stop() {} }; return note }
          createGain() { return { gain: { setValueAtTime() {}, exponentialRampToValueAtTime() {} }, connect: (to) => to } }
        };
        """;

    readonly IBrowserContext context;
    readonly List<string> complaints = [];

    Bench(OpenShop shop, IBrowserContext context, IPage page)
    {
        (Shop, this.context, Page) = (shop, context, page);
        page.Console += (_, message) =>
        {
            // A refusal is an answer with a status of its own, which the console tells too.
            if (message.Type is "error" or "warning" && !message.Text.Contains("Failed to load resource", StringComparison.Ordinal)) complaints.Add(message.Text);
        };
        page.PageError += (_, error) => complaints.Add(error);
    }

    public OpenShop Shop { get; }
    public IPage Page { get; }

    /// <summary>What the browser complained of: scripts that failed, and whatever the content policy stopped.</summary>
    public IReadOnlyList<string> Complaints => complaints;

    public static async Task<Bench> Open(Chromium chromium, bool script = true, bool signIn = true, ColorScheme scheme = ColorScheme.Light, params (string, string?)[] settings)
    {
        var browser = await chromium.Open();
        var shop = await OpenShop.Open(settings: settings);
        await shop.Ask(new CreateStaff(Name, Role.Admin, Password));
        await shop.Stock(stakes: 400);
        var context = await browser.NewContextAsync(new()
        {
            BaseURL = shop.Address.ToString(), JavaScriptEnabled = script, ColorScheme = scheme, ViewportSize = new() { Width = 1280, Height = 900 },
        });
        context.SetDefaultTimeout(60_000);
        if (script) await context.AddInitScriptAsync(Listen);
        var bench = new Bench(shop, context, await context.NewPageAsync());
        if (signIn) await bench.SignIn();
        return bench;
    }

    public async Task SignIn()
    {
        await Page.GotoAsync("/sign-in");
        await Page.FillAsync("#name", Name);
        await Page.FillAsync("#password", Password);
        await Page.ClickAsync("main button");
    }

    /// <summary>An order placed by the storefront, with its number and its bundles' codes.</summary>
    public async Task<(int Number, string[] Codes, Guid Id)> Order(object? design = null)
    {
        var order = (await Shop.Storefront.Order(design ?? Designs.SmallDome)).Created;
        return (order.Int("number"), [.. order.Texts("bundles", "code")], order.Id());
    }

    /// <summary>Goods on their way, 25 stakes as purchase 7.</summary>
    public async Task<Guid> Due() =>
        (await Shop.Bench.Post("/api/stock/expected", new { reference = "purchase 7", supplier = "Smithy", expectedOn = "2026-11-05", lines = new[] { new { sku = "stake-450", quantity = 25 } } })).Created.Id();

    public Task<string> Verdict() => Page.Locator("[data-verdict]").GetAttributeAsync("data-verdict")!;

    public async ValueTask DisposeAsync()
    {
        await context.DisposeAsync();
        await Shop.DisposeAsync();
    }
}
