namespace KitWorks.Shop.Tests.Orders;

public sealed class ClockTests
{
    [Fact]
    public async Task Orders_WhenTheClockJumpsBack_KeepTheirOrderAndTheirHistory()
    {
        var clock = new SettableClock();
        await using var shop = await OpenShop.Open(clock);
        await shop.Stock(stakes: 0);
        var first = (await shop.Storefront.Order(Designs.SmallDome, once: "a-1")).Created;

        clock.Forward(TimeSpan.FromDays(-400));
        var second = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        _ = (await shop.Bench.Receive("stake-450", 10)).Ok;

        Assert.Equal(["reserved", "waiting"], [await shop.Storefront.StatusOf(first), await shop.Storefront.StatusOf(second)]);
        Assert.Equal(["waiting", "reserved"], (await shop.Storefront.Get($"/api/orders/{first.Id()}")).Ok.Texts("history", "status"));
        Assert.Equal([1002, 1001], (await shop.Bench.Get("/api/orders")).Ok.List("items").Select(o => o.Int("number")));
        Assert.True((await shop.Storefront.Order(Designs.SmallDome, once: "a-1")).Is(201).Replayed);
        await shop.LedgerAddsUp();
    }
}
