namespace KitWorks.Shop.Tests.Orders;

/// <summary>Who gets what is on the shelf while a large order waits, as the shop has set it.</summary>
public sealed class TurnsTests
{
    [Theory]
    [InlineData(null, "waiting")]
    [InlineData("shelfFirst", "reserved")]
    [InlineData("whoeverFits", "reserved")]
    [InlineData("oldestFirst", "waiting")]
    public async Task NewOrder_WhenALargeOneWaitsForTheSameItem_TakesTheShelfUnlessTheOldestGoFirst(string? turns, string expected)
    {
        await using var shop = await OpenShop.Open();
        if (turns is not null) _ = (await shop.Admin.Put("/api/catalog/workshop", new { turns })).Ok;
        await shop.Stock(stakes: 25);
        var large = (await shop.Storefront.Order(Designs.SmallDome, quantity: 3)).Created;

        var small = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        Assert.Equal(["waiting", expected], [large.Text("status"), small.Text("status")]);
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task NewOrder_WhenTheOldestGoFirstAndItMayNotWait_IsRefused()
    {
        await using var shop = await OpenShop.Open();
        _ = (await shop.Admin.Put("/api/catalog/workshop", new { turns = "oldestFirst" })).Ok;
        await shop.Stock(stakes: 25);
        _ = (await shop.Storefront.Order(Designs.SmallDome, quantity: 3)).Created;

        (await shop.Storefront.Order(Designs.SmallDome, whenShort: "refuse")).IsProblem(409, "stock.short");

        Assert.Single((await shop.Bench.Get("/api/orders")).Ok.List("items"));
    }

    [Fact]
    public async Task Receipt_WhenWhoeverFitsMayGoFirst_LetsASmallOrderPassALargeOne()
    {
        await using var shop = await OpenShop.Open();
        _ = (await shop.Admin.Put("/api/catalog/workshop", new { turns = "whoeverFits" })).Ok;
        await shop.Stock(stakes: 0);
        var large = (await shop.Storefront.Order(Designs.SmallDome, quantity: 3)).Created;
        var small = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        _ = (await shop.Bench.Receive("stake-450", 20)).Ok;

        Assert.Equal(["waiting", "reserved"], [await shop.Storefront.StatusOf(large), await shop.Storefront.StatusOf(small)]);
    }
}
