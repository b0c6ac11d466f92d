using Microsoft.Playwright;

namespace KitWorks.Browser.Tests;

/// <summary>A whole life of an order, from what a customer needs to the carrier, in each of the ways that people work.</summary>
public sealed class LifeOfAnOrderTests(Chromium chromium)
{
    [Fact]
    public async Task Order_WhenWorkedByMouse_GoesFromTheCustomersGroundToTheCarrier()
    {
        await using var bench = await Bench.Open(chromium);
        var page = bench.Page;

        await page.ClickAsync("nav >> text=Design");
        await page.FillAsync("#long", "4 m");
        await page.FillAsync("#wide", "4 m");
        await page.FillAsync("#headroom", "1.5 m");
        await page.ClickAsync("text=Show what would do");
        await page.Locator("#offers li").First.WaitForAsync();
        await page.Locator("#offers li", new() { HasText = "2V dome" }).Locator("text=Look closer").ClickAsync();
        // The price of what is ordered is the price that was seen.
        var price = await page.Locator("#costs").InnerTextAsync();
        await page.FillAsync("#name", "A gardener");
        await page.ClickAsync("#order button");

        await page.WaitForURLAsync("**/orders/1001");
        Assert.Contains("A gardener", await page.Locator("#customer").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains(price, await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        await page.ClickAsync("main .head >> text=Pack");
        foreach (var code in await page.Locator(".bundles .code").AllInnerTextsAsync())
        {
            await page.FillAsync("#code", code);
            await page.ClickAsync(".scan button");
            await page.Locator($"[data-verdict=packed]:has-text('{code}'), li.last[id='{code}']").First.WaitForAsync();
        }
        await page.ClickAsync("text=hand order 1001 to the carrier");
        await page.FillAsync("#carrier", "Van");
        await page.ClickAsync("text=Order 1001 has left");

        await page.Locator("main .head .state:has-text('shipped')").WaitForAsync();
        Assert.Equal("shipped", (await bench.Shop.Bench.Get("/api/orders")).Ok.List("items").Single().Text("status"));
        Assert.Empty(bench.Complaints);
        await bench.Shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Order_WhenWorkedByKeyboardAlone_GoesFromADesignToTheCarrier()
    {
        await using var bench = await Bench.Open(chromium, signIn: false);
        var keys = new Keyboard(bench.Page);

        await bench.Page.GotoAsync("/sign-in");
        await keys.Type(Bench.Name);
        await keys.TabTo("Password");
        await keys.Type(Bench.Password);
        await keys.Press("Enter");
        await bench.Page.WaitForURLAsync("**/");

        await keys.TabTo("Design");
        await keys.Press("Enter");
        await bench.Page.WaitForURLAsync("**/design");
        await keys.TabTo("Ground, length");
        await keys.Type("4 m");
        await keys.TabTo("Ground, width");
        await keys.Type("4 m");
        await keys.Press("Enter");
        await bench.Page.Locator("#offers li").First.WaitForAsync();
        await keys.TabTo("Look closer");
        await keys.Press("Enter");
        await bench.Page.WaitForURLAsync("**/design/shelter?*");
        await keys.TabTo("For whom");
        await keys.Type("A keyboard");
        await keys.TabTo("Order 1 kit");
        await keys.Press("Enter");
        await bench.Page.WaitForURLAsync("**/orders/1001");

        await keys.TabTo("Pack", among: "main");
        await keys.Press("Enter");
        await bench.Page.WaitForURLAsync("**/pack/1001");
        foreach (var code in await bench.Page.Locator(".bundles .code").AllInnerTextsAsync())
        {
            await keys.Type(code);
            await keys.Press("Enter");
            await bench.Page.Locator($"li.last[id='{code}']").WaitForAsync();
        }
        await keys.TabTo("hand order 1001 to the carrier");
        await keys.Press("Enter");
        await bench.Page.WaitForURLAsync("**/orders/1001#ship");
        await keys.TabTo("Order 1001 has left");
        await keys.Press("Enter");

        await bench.Page.Locator("main .head .state:has-text('shipped')").WaitForAsync();
        Assert.Empty(bench.Complaints);
    }

    [Fact]
    public async Task Order_WhenThereIsNoScript_IsPlacedPackedAndShippedAllTheSame()
    {
        await using var bench = await Bench.Open(chromium, script: false);
        var page = bench.Page;

        await page.GotoAsync("/design?long=4+m&wide=4+m");
        await page.Locator("text=Look closer").First.ClickAsync();
        await page.FillAsync("#name", "A plain browser");
        await page.ClickAsync("#order button");
        Assert.EndsWith("/orders/1001", page.Url, StringComparison.Ordinal);
        await page.ClickAsync("main .head >> text=Pack");
        foreach (var code in await page.Locator(".bundles .code").AllInnerTextsAsync())
        {
            await page.FillAsync("#code", code);
            await page.PressAsync("#code", "Enter");
            Assert.Equal("packed", await bench.Verdict());
        }
        await page.ClickAsync("text=hand order 1001 to the carrier");
        await page.ClickAsync("text=Order 1001 has left");

        await Assertions.Expect(page.Locator("main .head .state")).ToHaveTextAsync("shipped");
    }
}
