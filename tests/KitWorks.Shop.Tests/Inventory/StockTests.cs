namespace KitWorks.Shop.Tests.Inventory;

public sealed class StockTests(OneShop one) : IClassFixture<OneShop>
{
    [Fact]
    public async Task Receipt_WhenGoodsComeIn_TheyAreOnHandAndInTheLedger()
    {
        await using var shop = await OpenShop.Open();

        var lines = new[] { new { sku = "stake-450", quantity = 40 }, new { sku = "tie-n120", quantity = 500 }, new { sku = "stake-450", quantity = 2 } };
        _ = (await shop.Bench.Post("/api/stock/receipts", new { lines, reference = "note 7" })).Ok;

        var stakes = await shop.Bench.Item("stake-450");
        Shape.Holds("""{ "sku": "…", "kind": "…", "description": "…", "unit": "…", "onHand": 1, "reserved": 1, "available": 1, "reorderAt": 1, "bin": "…" }""", stakes);
        Assert.Equal((42, 0, 42, "D-01"), (stakes.Int("onHand"), stakes.Int("reserved"), stakes.Int("available"), stakes.Text("bin")));
        var movement = Assert.Single((await shop.Bench.Get("/api/stock/stake-450/movements")).Ok.List("items"));
        Assert.Equal(("receipt", 42, 0, "note 7", "bench"),
            (movement.Text("kind"), movement.Int("onHandChange"), movement.Int("reservedChange"), movement.Text("reference"), movement.Text("actor")));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Receipt_WhenOneLineIsUnknown_TakesInNone()
    {
        await using var shop = await OpenShop.Open();

        var lines = new[] { new { sku = "stake-450", quantity = 40 }, new { sku = "stake-451", quantity = 1 } };
        (await shop.Bench.Post("/api/stock/receipts", new { lines, reference = "note 7" })).IsProblem(422, "stock.unknown-sku", "#/lines/1/sku");

        Assert.Equal(0, (await shop.Bench.Item("stake-450")).Int("onHand"));
    }

    [Fact]
    public async Task Receipt_WhenTheShelfWouldHoldMoreThanCanBeCounted_IsRefused()
    {
        await using var shop = await OpenShop.Open();
        var lines = Enumerable.Repeat(new { sku = "stake-450", quantity = 1_000_000 }, 500);
        for (var i = 0; i < 4; i++) _ = (await shop.Bench.Post("/api/stock/receipts", new { lines, reference = "a lot" })).Ok;

        (await shop.Bench.Post("/api/stock/receipts", new { lines, reference = "too much" })).IsProblem(422, "stock.too-much");

        Assert.Equal(2_000_000_000, (await shop.Bench.Item("stake-450")).Int("onHand"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Count_WhenItDiffers_PutsOnHandRightAndSaysByHowMuch()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 40);

        var lines = new[] { new { sku = "stake-450", counted = 37 } };
        var counted = (await shop.Bench.Post("/api/stock/counts", new { lines, reason = "yearly count" })).Ok;

        Assert.Equal(-3, counted.Int("lines/0/difference"));
        Assert.Equal(37, (await shop.Bench.Item("stake-450")).Int("onHand"));
        Assert.Equal("count", (await shop.Bench.Get("/api/stock/stake-450/movements")).Ok.Text("items/0/kind"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Count_WhenFewerAreThereThanArePromised_ChangesNothing()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 12);
        _ = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var lines = new[] { new { sku = "tie-n120", counted = 500 }, new { sku = "stake-450", counted = 9 } };
        (await shop.Bench.Post("/api/stock/counts", new { lines, reason = "yearly count" })).IsProblem(422, "stock.reserved", "#/lines/1/counted");

        Assert.Equal(12, (await shop.Bench.Item("stake-450")).Int("onHand"));
        Assert.Equal(90_000, (await shop.Bench.Item("tie-n120")).Int("onHand"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Adjustment_WhenItWouldTakeWhatIsPromised_ChangesNothing()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 12);
        _ = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        (await shop.Bench.Post("/api/stock/adjustments", new { sku = "stake-450", quantity = -3, reason = "bent" })).IsProblem(422, "stock.reserved", "#/quantity");
        var left = (await shop.Bench.Post("/api/stock/adjustments", new { sku = "stake-450", quantity = -2, reason = "bent" })).Ok;

        Assert.Equal((10, 10, 0), (left.Int("onHand"), left.Int("reserved"), left.Int("available")));
        Assert.Equal("bent", (await shop.Bench.Get("/api/stock/stake-450/movements")).Ok.Text("items/0/reason"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Movements_WhenAnOrderGoesThrough_TellItsWholeWay()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 10);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        await shop.Bench.Pack(order);
        _ = (await shop.Bench.Post($"/api/orders/{order.Id()}/ship")).Ok;

        var movements = (await shop.Bench.Get("/api/stock/stake-450/movements")).Ok.List("items");

        Assert.Equal([("consume", -10, -10), ("reserve", 0, 10), ("receipt", 10, 0)],
            movements.Select(m => (m.Text("kind"), m.Int("onHandChange"), m.Int("reservedChange"))));
        Assert.Equal(["order 1001", "order 1001", "opening"], movements.Select(m => m.Text("reference")));
        Assert.Equal(["bench", "storefront", "bench"], movements.Select(m => m.Text("actor")));
    }

    [Fact]
    public async Task ListStock_WhenReadPageByPage_GivesEachItemOnceBySku()
    {
        var shop = one.Shop;

        var skus = new List<string>();
        string? after = null;
        do
        {
            var page = (await shop.Bench.Get($"/api/stock?limit=5&after={after}")).Ok;
            skus.AddRange(page.Texts("items", "sku"));
            after = page.IsNull("next") ? null : page.Text("next");
        }
        while (after is not null);

        Assert.Equal(14, skus.Count);
        Assert.Equal(skus.Distinct().Order(StringComparer.Ordinal), skus);
    }

    [Fact]
    public async Task Movements_WhenReadPageByPage_GiveEachOnce()
    {
        await using var shop = await OpenShop.Open();
        for (var i = 1; i <= 5; i++) _ = (await shop.Bench.Receive("stake-450", i)).Ok;

        var first = (await shop.Bench.Get("/api/stock/stake-450/movements?limit=3")).Ok;
        var second = (await shop.Bench.Get($"/api/stock/stake-450/movements?limit=3&after={first.Text("next")}")).Ok;

        Assert.Equal([5, 4, 3], first.List("items").Select(m => m.Int("onHandChange")));
        Assert.Equal([2, 1], second.List("items").Select(m => m.Int("onHandChange")));
        Assert.True(second.IsNull("next"));
    }

    [Theory]
    [InlineData("/api/stock/no-such")]
    [InlineData("/api/stock/no-such/movements")]
    public async Task GetStock_WhenTheSkuIsUnknown_SaysSo(string path)
    {
        var shop = one.Shop;

        (await shop.Bench.Get(path)).IsProblem(404, "stock.unknown-sku");
    }

    [Fact]
    public async Task VerifyLedger_WhenABalanceWasTamperedWith_NamesIt()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 10);
        await shop.Database.Sql("UPDATE stock_balances SET \"OnHand\" = 11 WHERE \"Sku\" = 'stake-450'");

        var fault = Assert.Single((await shop.Ask(new KitWorks.Shop.Inventory.VerifyLedger())).Faults);

        Assert.Contains("stake-450", fault, StringComparison.Ordinal);
    }
}
