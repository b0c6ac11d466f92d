namespace KitWorks.Shop.Tests.Orders;

public sealed class CancelOrderTests
{
    [Fact]
    public async Task CancelOrder_WhenItHoldsStock_ReleasesItAndServesTheOldestWaiting()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 10);
        var first = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var second = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var third = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var cancelled = (await shop.Storefront.Post($"/api/orders/{first.Id()}/cancel")).Ok;

        Assert.Equal("cancelled", cancelled.Text("status"));
        Assert.Empty(cancelled.List("reservations"));
        Assert.Equal(["waiting", "reserved", "cancelled"], cancelled.Texts("history", "status"));
        Assert.Equal("reserved", await shop.Storefront.StatusOf(second));
        Assert.Equal("waiting", await shop.Storefront.StatusOf(third));
        Assert.Equal(10, (await shop.Bench.Item("stake-450")).Int("reserved"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task CancelOrder_WhenNothingWaits_LeavesAllOfItAvailable()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 10);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        _ = (await shop.Bench.Post($"/api/orders/{order.Id()}/cancel")).Ok;

        Assert.All((await shop.Bench.Get("/api/stock")).Ok.List("items"), i => Assert.Equal((0, i.Int("onHand")), (i.Int("reserved"), i.Int("available"))));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task CancelOrder_WhenItIsCancelledOrShipped_IsRefused()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 20);
        var one = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var other = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        _ = (await shop.Storefront.Post($"/api/orders/{one.Id()}/cancel")).Ok;
        await shop.Bench.Pack(other);
        _ = (await shop.Bench.Post($"/api/orders/{other.Id()}/ship")).Ok;

        (await shop.Storefront.Post($"/api/orders/{one.Id()}/cancel")).IsProblem(409, "order.status");
        (await shop.Storefront.Post($"/api/orders/{other.Id()}/cancel")).IsProblem(409, "order.status");

        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task CancelOrder_WhenTenCancelAtOnce_ReleasesOnce()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 30);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        _ = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var answers = await Task.WhenAll(Enumerable.Range(0, 10).Select(_ => shop.Storefront.Post($"/api/orders/{order.Id()}/cancel")));

        Assert.Single(answers, a => a.Status == 200);
        Assert.All(answers.Where(a => a.Status != 200), a => a.IsProblem(409, "order.status"));
        Assert.Equal(10, (await shop.Bench.Item("stake-450")).Int("reserved"));
        await shop.LedgerAddsUp();
    }
}
