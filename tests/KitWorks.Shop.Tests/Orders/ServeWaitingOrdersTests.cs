namespace KitWorks.Shop.Tests.Orders;

public sealed class ServeWaitingOrdersTests
{
    [Fact]
    public async Task Receipt_WhenOrdersWait_ServesTheOldestFirst()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 0);
        var first = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var second = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var third = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        _ = (await shop.Bench.Receive("stake-450", 25)).Ok;

        Assert.Equal("reserved", await shop.Storefront.StatusOf(first));
        Assert.Equal("reserved", await shop.Storefront.StatusOf(second));
        Assert.Equal("waiting", await shop.Storefront.StatusOf(third));
        Assert.Equal(5, (await shop.Bench.Item("stake-450")).Int("available"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Receipt_WhenTheOldestNeedsMoreThanThereIs_LetsNoYoungerOneTakeItFirst()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 0);
        var large = (await shop.Storefront.Order(Designs.SmallDome, quantity: 3)).Created;
        var small = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        _ = (await shop.Bench.Receive("stake-450", 20)).Ok;
        Assert.Equal(["waiting", "waiting"], [await shop.Storefront.StatusOf(large), await shop.Storefront.StatusOf(small)]);

        _ = (await shop.Bench.Receive("stake-450", 10)).Ok;
        Assert.Equal(["reserved", "waiting"], [await shop.Storefront.StatusOf(large), await shop.Storefront.StatusOf(small)]);
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Receipt_WhenAYoungerOrderNeedsOtherThings_ServesIt()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 0);
        var dome = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var plates = (await shop.Storefront.Order(Designs.Of(Designs.Dome(2, "1/2", "3600 mm"), hubSystem: "plate-160", strutStock: "pvc-42"))).Created;

        foreach (var sku in (string[])["hub-p160-4", "hub-p160-5", "hub-p160-6", "pipe-pvc-42", "tie-s350", "stake-700"]) _ = (await shop.Bench.Receive(sku, 1000)).Ok;

        Assert.Equal("waiting", await shop.Storefront.StatusOf(dome));
        Assert.Equal("reserved", await shop.Storefront.StatusOf(plates));
    }

    [Fact]
    public async Task CountAndAdjustment_WhenTheyFindStock_ServeWaitingOrders()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 0);
        var first = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var second = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        _ = (await shop.Bench.Post("/api/stock/counts", new { lines = new[] { new { sku = "stake-450", counted = 12 } }, reason = "yearly count" })).Ok;
        Assert.Equal(["reserved", "waiting"], [await shop.Storefront.StatusOf(first), await shop.Storefront.StatusOf(second)]);

        _ = (await shop.Bench.Post("/api/stock/adjustments", new { sku = "stake-450", quantity = 8, reason = "found behind the door" })).Ok;
        Assert.Equal(["reserved", "reserved"], [await shop.Storefront.StatusOf(first), await shop.Storefront.StatusOf(second)]);
        await shop.LedgerAddsUp();
    }
}
