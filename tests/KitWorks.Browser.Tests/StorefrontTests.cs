using KitWorks.Api.Demo;
using Microsoft.Playwright;

namespace KitWorks.Browser.Tests;

/// <summary>The sample storefront: a visitor without an account designs, sees a quote with its picture, and orders.</summary>
public sealed class StorefrontTests(Chromium chromium)
{
    /// <summary>As a web site of its own: another origin, which the shop has to allow.</summary>
    const string Site = "http://garden.example";

    static async Task<Bench> Visit(Chromium chromium, string allowed)
    {
        var bench = await Bench.Open(chromium, signIn: false, settings: ("Storefront:Origins", allowed));
        var script = (await bench.Shop.Nobody.Get("/storefront.js")).Text.Replace("fetch(path,", $"fetch(\"{bench.Shop.Address.ToString().TrimEnd('/')}\" + path,", StringComparison.Ordinal);
        await bench.Page.RouteAsync($"{Site}/**", route => route.FulfillAsync(route.Request.Url.EndsWith("storefront.js", StringComparison.Ordinal)
            ? new() { ContentType = "text/javascript", Body = script }
            : new() { ContentType = "text/html", Body = SampleStorefront.Page(bench.Shop.Keys.Storefront) }));
        await bench.Page.GotoAsync(Site + "/");
        return bench;
    }

    [Fact]
    public async Task Visitor_WhenTheSiteIsAllowed_DesignsSeesTheQuoteAndOrders()
    {
        await using var bench = await Visit(chromium, Site);
        var page = bench.Page;

        await page.ClickAsync("text=Show me mine");
        // Either the offer is shown, or the reason why not.
        await page.WaitForFunctionAsync("document.querySelector('#offer img') || /^(?!One moment)./.test(document.getElementById('wait').textContent)");
        Assert.Equal("", await page.Locator("#wait").InnerTextAsync());
        await page.WaitForFunctionAsync("document.querySelector('#offer img').naturalWidth > 0");
        Assert.Matches(@"^\d[\d.]* USD$", await page.Locator("#offer h2").InnerTextAsync());
        await page.FillAsync("#name", "A visitor");
        await page.ClickAsync("#buy button");

        await page.Locator("#wait:has-text('1001')").WaitForAsync();
        Assert.Single((await bench.Shop.Storefront.Get("/api/orders")).Ok.List("items"));
    }

    [Fact]
    public async Task Visitor_WhenTheSiteIsNotAllowed_GetsNoAnswer()
    {
        await using var bench = await Visit(chromium, "https://another.example");

        await bench.Page.ClickAsync("text=Show me mine");

        await Assertions.Expect(bench.Page.Locator("#wait")).ToContainTextAsync("Failed to fetch");
        Assert.True(await bench.Page.Locator("#offer").IsHiddenAsync());
    }
}
