using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(KitWorks.Browser.Tests.Chromium))]

namespace KitWorks.Browser.Tests;

/// <summary>The distribution's Chromium, driven by Playwright; started with the first test that needs it.</summary>
public sealed class Chromium : IAsyncLifetime
{
    static readonly string[] Flags =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--autoplay-policy=no-user-gesture-required",
            // A made-up site on the internet may ask the shop on this machine.
            "--disable-features=LocalNetworkAccessChecks,BlockInsecurePrivateNetworkRequests"];

    IPlaywright? playwright;
    IBrowser? browser;

    static string? Path => ((string[])["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"]).FirstOrDefault(File.Exists);

    public async Task<IBrowser> Open()
    {
        Assert.SkipWhen(Path is null, "There is no Chromium on this machine; on Debian: apt-get install chromium.");
        playwright ??= await Playwright.CreateAsync();
        return browser ??= await playwright.Chromium.LaunchAsync(new() { ExecutablePath = Path, Args = Flags });
    }

    public ValueTask InitializeAsync() => default;

    public async ValueTask DisposeAsync()
    {
        if (browser is not null) await browser.DisposeAsync();
        playwright?.Dispose();
    }
}
