namespace KitWorks.Shop.Tests.Orders;

public sealed class ShipOrderTests
{
    [Fact]
    public async Task Ship_WhenEveryBundleIsPacked_ConsumesItsStock()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 25);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        await shop.Bench.Pack(order);

        var shipped = (await shop.Bench.Post($"/api/orders/{order.Id()}/ship", new { carrier = "Parcel Post", tracking = "PP 17" })).Ok;

        Assert.Equal("shipped", shipped.Text("status"));
        Assert.Equal(("Parcel Post", "PP 17"), (shipped.Text("carrier"), shipped.Text("tracking")));
        Assert.Empty(shipped.List("reservations"));
        Assert.All(shipped.Texts("bundles", "status"), s => Assert.Equal("shipped", s));
        Assert.Equal(["waiting", "reserved", "picking", "packed", "shipped"], shipped.Texts("history", "status"));
        var stakes = await shop.Bench.Item("stake-450");
        Assert.Equal((15, 0, 15), (stakes.Int("onHand"), stakes.Int("reserved"), stakes.Int("available")));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Ship_WhenABundleIsOpen_IsRefused()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 25);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var ship = $"/api/orders/{order.Id()}/ship";

        (await shop.Bench.Post(ship, new { })).IsProblem(409, "order.status");
        foreach (var code in order.Texts("bundles", "code").SkipLast(1)) _ = (await shop.Bench.Scan(code)).Ok;
        (await shop.Bench.Post(ship, new { })).IsProblem(409, "order.status");

        Assert.Equal(10, (await shop.Bench.Item("stake-450")).Int("reserved"));
    }

    [Fact]
    public async Task Ship_WhenItComesTwice_ConsumesOnce()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 25);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        await shop.Bench.Pack(order);

        var answers = await Task.WhenAll(Enumerable.Range(0, 5).Select(_ => shop.Bench.Post($"/api/orders/{order.Id()}/ship")));

        Assert.Single(answers, a => a.Status == 200);
        Assert.All(answers.Where(a => a.Status != 200), a => a.IsProblem(409, "order.status"));
        Assert.Equal(15, (await shop.Bench.Item("stake-450")).Int("onHand"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Ship_WhenTheOrderIsUnknown_SaysSo()
    {
        await using var shop = await OpenShop.Open();

        (await shop.Bench.Post($"/api/orders/{Guid.NewGuid()}/ship")).IsProblem(404, "order.unknown");
    }
}
