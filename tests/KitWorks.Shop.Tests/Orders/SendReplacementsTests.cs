namespace KitWorks.Shop.Tests.Orders;

public sealed class SendReplacementsTests
{
    [Fact]
    public async Task Replacements_WhenTheOrderHasShipped_LeaveTheStock()
    {
        await using var shop = await OpenShop.Open();
        var order = await Shipped(shop);

        var after = (await shop.Bench.Post($"/api/orders/{order}/replacements", Parts(3, "broken in transit"))).Ok;

        Assert.Equal("shipped", after.Text("status"));
        Assert.Equal("replaced: broken in transit", after.List("history")[^1].Text("note"));
        Assert.Equal(7, (await shop.Bench.Item("stake-450")).Int("onHand"));
        (await shop.Bench.Post($"/api/orders/{order}/replacements", Parts(8, "lost"))).IsProblem(409, "stock.short");
        Assert.Equal(7, (await shop.Bench.Item("stake-450")).Int("onHand"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Returns_WhenTheyAreMoreThanWentOut_AreRefused()
    {
        await using var shop = await OpenShop.Open();
        var order = await Shipped(shop);

        _ = (await shop.Bench.Post($"/api/orders/{order}/returns", Parts(8, "too many"))).Ok;
        (await shop.Bench.Post($"/api/orders/{order}/returns", Parts(3, "too many"))).IsProblem(422, "stock.not-sent");
        _ = (await shop.Bench.Post($"/api/orders/{order}/returns", Parts(2, "the rest"))).Ok;

        Assert.Equal(20, (await shop.Bench.Item("stake-450")).Int("onHand"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Returns_WhenAnOrderWaitsForThem_ServeIt()
    {
        await using var shop = await OpenShop.Open();
        var order = await Shipped(shop);
        var waiting = (await shop.Storefront.Order(Designs.SmallDome, quantity: 2)).Created;

        _ = (await shop.Bench.Post($"/api/orders/{order}/returns", Parts(10, "cancelled late"))).Ok;

        Assert.Equal("reserved", await shop.Storefront.StatusOf(waiting));
    }

    [Theory]
    [InlineData("replacements")]
    [InlineData("returns")]
    public async Task Parts_WhenTheOrderHasNotShipped_AreRefused(string what)
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 20);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        (await shop.Bench.Post($"/api/orders/{order.Id()}/{what}", Parts(1, "early"))).IsProblem(409, "order.status");
        (await shop.Bench.Post($"/api/orders/{order.Id()}/{what}", new { reason = "nothing" })).IsProblem(422, "request.invalid");
    }

    static object Parts(int stakes, string reason) => new { lines = new[] { new { sku = "stake-450", quantity = stakes } }, reason };

    /// <summary>A shop with ten stakes left, and an order of ten that has gone.</summary>
    static async Task<Guid> Shipped(OpenShop shop)
    {
        await shop.Stock(stakes: 20);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        await shop.Bench.Pack(order);
        _ = (await shop.Bench.Post($"/api/orders/{order.Id()}/ship")).Ok;
        return order.Id();
    }
}
