namespace KitWorks.Shop.Tests.Orders;

/// <summary>Orders that come at the same time and are taken together.</summary>
public sealed class OrderDeskTests
{
    [Fact]
    public async Task Orders_WhenSomeOfThemAreRefused_DoNotHarmTheirNeighbours()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 70);

        var answers = await Task.WhenAll(Enumerable.Range(0, 32).Select(i => shop.Storefront.Order(
            Designs.SmallDome, quantity: i % 8 == 0 ? 100 : 1, whenShort: "refuse", customer: $"Customer {i}")));

        var taken = answers.Where(a => a.Status == 201).Select(a => a.Created).ToList();
        Assert.Equal(7, taken.Count);
        Assert.All(taken, o => Assert.Equal((1, "reserved"), (o.Int("quantity"), o.Text("status"))));
        Assert.All(answers.Where(a => a.Status != 201), a => a.IsProblem(409, "stock.short"));
        Assert.Equal(Enumerable.Range(1001, 7), taken.Select(o => o.Int("number")).Order());
        Assert.Equal((70, 0), ((await shop.Bench.Item("stake-450")).Int("reserved"), (await shop.Bench.Item("stake-450")).Int("available")));
        foreach (var order in taken)
        {
            var now = (await shop.Storefront.Get($"/api/orders/{order.Id()}")).Ok;
            Assert.Equal(order.ToString(), now.ToString());
            Assert.Equal(["waiting", "reserved"], now.Texts("history", "status"));
        }
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Orders_WhenOneKeyComesToTwoInstancesAtOnce_AreTakenOnceAndTheirNeighboursAllTheSame()
    {
        await using var shop = await OpenShop.Open();
        await using var second = await shop.AnotherInstance();
        await shop.Stock(stakes: 1_000);

        for (var round = 0; round < 4; round++)
        {
            var key = $"the-same-{round}";
            var same = Enumerable.Range(0, 8).Select(i => (i % 2 == 0 ? shop : second).Storefront.Order(Designs.SmallDome, once: key));
            var others = Enumerable.Range(0, 8).Select(i => (i % 2 == 0 ? shop : second).Storefront.Order(Designs.SmallDome));
            var all = await Task.WhenAll(same.Zip(others, (a, b) => new[] { a, b }).SelectMany(x => x));

            var answered = all.Where((_, i) => i % 2 == 0).Where(a => a.Status != 409).ToList();
            Assert.All(all.Where((_, i) => i % 2 == 0).Except(answered), a => a.IsProblem(409, "idempotency.running"));
            Assert.Single(answered.Select(a => a.Created.Id()).Distinct());
            Assert.All(all.Where((_, i) => i % 2 == 1), a => Assert.Equal("reserved", a.Created.Text("status")));
        }

        var orders = (await shop.Bench.Get("/api/orders?limit=200")).Ok.List("items");
        Assert.Equal(Enumerable.Range(1001, 4 * 9), orders.Select(o => o.Int("number")).Order());
        Assert.Equal(10 * 4 * 9, (await shop.Bench.Item("stake-450")).Int("reserved"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Orders_WhenALargeOneAmongThemHasToWait_TakeNothingThatItIsShortOf()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 25);
        var large = (await shop.Storefront.Order(Designs.SmallDome, quantity: 3)).Created;

        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => shop.Storefront.Order(Designs.SmallDome)));
        Assert.All(answers, a => Assert.Equal("waiting", a.Created.Text("status")));

        _ = (await shop.Bench.Receive("stake-450", 25)).Ok;
        Assert.Equal("reserved", await shop.Storefront.StatusOf(large));
        Assert.Equal(2, (await Task.WhenAll(answers.Select(a => shop.Storefront.StatusOf(a.Json)))).Count(s => s == "reserved"));
        await shop.LedgerAddsUp();
    }
}
