namespace KitWorks.Shop.Tests.Orders;

public sealed class ChangeQuantityTests
{
    [Fact]
    public async Task ChangeQuantity_WhenItIsLess_KeepsWhatItNeedsAndServesOthersWithTheRest()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 30);
        var order = (await shop.Storefront.Order(Designs.SmallDome, quantity: 3)).Created;
        var waiting = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var changed = (await shop.Storefront.Post($"/api/orders/{order.Id()}/quantity", new { quantity = 2 })).Ok;

        Assert.Equal(("reserved", 2), (changed.Text("status"), changed.Int("quantity")));
        Assert.Equal(20, changed.List("reservations").Single(r => r.Text("sku") == "stake-450").Int("quantity"));
        Assert.Equal(order.List("bundles").Count / 3 * 2, changed.List("bundles").Count);
        Assert.Equal("reserved", await shop.Storefront.StatusOf(waiting));
        Assert.Contains("2 instead of 3", changed.List("history").Where(h => !h.IsNull("note")).Select(h => h.Text("note")));
        await shop.LedgerAddsUp();
    }

    [Theory]
    [InlineData(40, "reserved", 40)]
    [InlineData(39, "waiting", 0)]
    public async Task ChangeQuantity_WhenItIsMore_ReservesTheRestOrGivesAllBack(int stakes, string status, int reserved)
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes);
        var order = (await shop.Storefront.Order(Designs.SmallDome, quantity: 3)).Created;

        Assert.Equal(status, (await shop.Storefront.Post($"/api/orders/{order.Id()}/quantity", new { quantity = 4 })).Ok.Text("status"));

        Assert.Equal(reserved, (await shop.Bench.Item("stake-450")).Int("reserved"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task ChangeQuantity_WhenFewerKitsAreNoLongerShort_ReservesThem()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 10);
        var order = (await shop.Storefront.Order(Designs.SmallDome, quantity: 2)).Created;
        Assert.Equal("waiting", order.Text("status"));

        Assert.Equal("reserved", (await shop.Storefront.Post($"/api/orders/{order.Id()}/quantity", new { quantity = 1 })).Ok.Text("status"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task ChangeQuantity_WhenABundleIsPacked_IsRefused()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 30);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        _ = (await shop.Bench.Scan(order.Text("bundles/0/code"))).Ok;

        (await shop.Storefront.Post($"/api/orders/{order.Id()}/quantity", new { quantity = 2 })).IsProblem(409, "order.status");
    }
}
