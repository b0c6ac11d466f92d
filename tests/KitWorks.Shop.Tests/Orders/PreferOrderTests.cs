namespace KitWorks.Shop.Tests.Orders;

public sealed class PreferOrderTests
{
    [Fact]
    public async Task PreferOrder_WhenStockComes_ServesTheHigherPriorityFirst()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 0);
        var older = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var preferred = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        Assert.Equal(5, (await shop.Bench.Post($"/api/orders/{preferred.Id()}/priority", new { priority = 5 })).Ok.Int("priority"));
        _ = (await shop.Bench.Receive("stake-450", 10)).Ok;

        Assert.Equal(["waiting", "reserved"], [await shop.Storefront.StatusOf(older), await shop.Storefront.StatusOf(preferred)]);
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task PreferOrder_WhenALargeOrderHeldASmallOneUp_ServesTheSmallOneAtOnce()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 0);
        var large = (await shop.Storefront.Order(Designs.SmallDome, quantity: 3)).Created;
        var small = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        _ = (await shop.Bench.Receive("stake-450", 20)).Ok;

        Assert.Equal("reserved", (await shop.Bench.Post($"/api/orders/{small.Id()}/priority", new { priority = 1 })).Ok.Text("status"));
        Assert.Equal("waiting", await shop.Storefront.StatusOf(large));
    }

    [Fact]
    public async Task PreferOrder_WhenAStorefrontAsks_IsForbidden()
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        (await shop.Storefront.Post($"/api/orders/{order.Id()}/priority", new { priority = 5 })).IsProblem(403, "access.role");
    }
}
