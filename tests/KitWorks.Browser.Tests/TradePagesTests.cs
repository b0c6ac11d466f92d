namespace KitWorks.Browser.Tests;

/// <summary>Parcels and goods that are due, by their pages, as a browser without script does it.</summary>
public sealed class TradePagesTests(Chromium chromium)
{
    [Fact]
    public async Task Parcels_WhenPlannedByThePage_AreListedWithEveryBundleOnceAndTheirPapersOpen()
    {
        await using var bench = await Bench.Open(chromium, script: false);
        var (number, codes, id) = await bench.Order();
        await bench.Page.GotoAsync($"/orders/{number}");

        await bench.Page.ClickAsync("text=Plan the parcels");

        Assert.Equal(codes.Order(), (await bench.Page.Locator("#parcels .code").AllInnerTextsAsync()).Order());
        Assert.True((await bench.Shop.Bench.Get($"/api/orders/{id}/parcels")).Ok.At("planned").GetBoolean());
        foreach (var paper in await bench.Page.Locator("#parcels .papers a").AllAsync())
            Assert.True((await bench.Page.APIRequest.GetAsync((await paper.GetAttributeAsync("href"))!)).Ok);
        Assert.Equal(2, await bench.Page.Locator("#parcels .papers a").CountAsync());
    }

    [Fact]
    public async Task GoodsDue_WhenReceivedByThePage_AreOnTheShelfAndNoLongerDue()
    {
        await using var bench = await Bench.Open(chromium, script: false);
        var before = (await bench.Shop.Bench.Get("/api/stock/stake-450")).Ok.Int("onHand");
        await bench.Due();
        await bench.Page.GotoAsync("/stock");
        await bench.Page.ClickAsync("main >> text=To buy");

        await bench.Page.ClickAsync("text=All of purchase 7 came in");

        Assert.Contains("All of purchase 7 is received", await bench.Page.Locator("[role=status]").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(before + 25, (await bench.Shop.Bench.Get("/api/stock/stake-450")).Ok.Int("onHand"));
        Assert.Equal(0, await bench.Page.Locator("#due button").CountAsync());
    }

    [Fact]
    public async Task GoodsDue_WhenSomebodyElseReceivedThem_AreRefusedInWords()
    {
        await using var bench = await Bench.Open(chromium, script: false);
        var id = await bench.Due();
        await bench.Page.GotoAsync("/stock/buy");
        _ = (await bench.Shop.Bench.Post($"/api/stock/expected/{id}/receive")).Ok;

        await bench.Page.ClickAsync("text=All of purchase 7 came in");

        Assert.Equal("expected.closed", await bench.Page.Locator("[role=alert]").GetAttributeAsync("data-code"));
    }
}
