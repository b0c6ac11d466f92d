namespace KitWorks.Shop.Tests.Planning;

public sealed class ExpectedStockTests
{
    static object Purchase(string reference, string on, params (string Sku, int Quantity)[] lines) =>
        new { reference, supplier = "Smithy", expectedOn = on, lines = lines.Select(l => new { sku = l.Sku, quantity = l.Quantity }) };

    [Fact]
    public async Task Expected_WhenPartOfItComes_IsReceivedAndTheRestStaysDue()
    {
        await using var shop = await OpenShop.Open(new SettableClock());
        var purchase = (await shop.Bench.Post("/api/stock/expected", Purchase("purchase 7", "2026-11-05", ("stake-450", 25), ("tie-n120", 500)))).Created;

        var after = (await shop.Bench.Post($"/api/stock/expected/{purchase.Id()}/receive", new { lines = new[] { new { sku = "stake-450", quantity = 10 } } })).Ok;

        Assert.Equal((10, 15), (after.Int("lines/0/received"), after.Int("lines/0/outstanding")));
        Assert.Equal(10, (await shop.Bench.Item("stake-450")).Int("onHand"));
        Assert.Equal("purchase 7", (await shop.Bench.Get("/api/stock/stake-450/movements")).Ok.Text("items/0/reference"));
        var done = (await shop.Bench.Post($"/api/stock/expected/{purchase.Id()}/receive")).Ok;
        Assert.True(done.At("closed").GetBoolean());
        Assert.Equal((25, 500), ((await shop.Bench.Item("stake-450")).Int("onHand"), (await shop.Bench.Item("tie-n120")).Int("onHand")));
        (await shop.Bench.Post($"/api/stock/expected/{purchase.Id()}/receive")).IsProblem(409, "expected.closed");
        Assert.Empty((await shop.Bench.Get("/api/stock/expected")).Ok.List("items"));
        Assert.Single((await shop.Bench.Get("/api/stock/expected?all=true")).Ok.List("items"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Expected_WhenItComes_ServesOrdersThatWait()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 0);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var purchase = (await shop.Bench.Post("/api/stock/expected", Purchase("purchase 7", "2026-11-05", ("stake-450", 25)))).Created;

        _ = (await shop.Bench.Post($"/api/stock/expected/{purchase.Id()}/receive")).Ok;

        Assert.Equal("reserved", await shop.Bench.StatusOf(order));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Expected_WhenWrong_IsRefused()
    {
        await using var shop = await OpenShop.Open();
        _ = (await shop.Bench.Post("/api/stock/expected", Purchase("purchase 7", "2026-11-05", ("stake-450", 25)))).Created;

        (await shop.Bench.Post("/api/stock/expected", Purchase("purchase 7", "2026-11-05", ("stake-450", 25)))).IsProblem(409, "expected.reference", "#/reference");
        (await shop.Bench.Post("/api/stock/expected", Purchase("purchase 8", "2026-11-05", ("stake-451", 25)))).IsProblem(422, "stock.unknown-sku", "#/lines/0/sku");
        (await shop.Bench.Post("/api/stock/expected", Purchase("purchase 8", "2026-11-05", ("stake-450", 0)))).IsProblem(422, "request.invalid", "#/lines/0/quantity");
        (await shop.Bench.Post("/api/stock/expected", Purchase("purchase 8", "2026-11-05"))).IsProblem(422, "request.invalid", "#/lines");
        (await shop.Bench.Post($"/api/stock/expected/{Guid.NewGuid()}/receive")).IsProblem(404, "expected.unknown");
        (await shop.Storefront.Get("/api/stock/expected")).IsProblem(403, "access.role");
    }

    [Fact]
    public async Task Expected_WhenItIsLate_IsDueOnAnotherDayAndMayBeGivenUp()
    {
        await using var shop = await OpenShop.Open();
        var purchase = (await shop.Bench.Post("/api/stock/expected", Purchase("purchase 7", "2026-11-05", ("stake-450", 25)))).Created;

        Assert.Equal("2026-11-19", (await shop.Bench.Post($"/api/stock/expected/{purchase.Id()}/reschedule", new { expectedOn = "2026-11-19" })).Ok.Text("expectedOn"));
        Assert.Equal(0, (await shop.Bench.Post($"/api/stock/expected/{purchase.Id()}/close")).Ok.Int("lines/0/outstanding"));
    }

    // Forty stakes; two small domes take twenty, a third order of four waits for forty; twenty-five are due; the reorder
    // point is sixty: 20 − 40 + 25 = 5, and 56 more make 61. Stakes come in packs of twenty-five.
    [Fact]
    public async Task Reorder_WhenOrdersReserveAndWait_CountsWhatIsPromisedAwaitedAndDue()
    {
        await using var shop = await OpenShop.Open(new SettableClock());
        await shop.Stock(stakes: 40);
        _ = (await shop.Storefront.Order(Designs.SmallDome, quantity: 2)).Created;
        _ = (await shop.Storefront.Order(Designs.SmallDome, quantity: 4)).Created;
        _ = (await shop.Bench.Post("/api/stock/expected", Purchase("purchase 7", "2026-11-05", ("stake-450", 25)))).Created;

        var stakes = (await shop.Bench.Get("/api/stock/reorder")).Ok.List("items").Single(i => i.Text("sku") == "stake-450");

        Assert.Equal((20, 40, 25, 60), (stakes.Int("standing/available"), stakes.Int("standing/awaited"), stakes.Int("standing/expected"), stakes.Int("standing/reorderAt")));
        Assert.Equal((3, 75, "2026-11-16"), (stakes.Int("packs"), stakes.Int("quantity"), stakes.Text("arrivesBy")));
    }

    [Fact]
    public async Task Supplies_WhenTheyHaveAReorderPoint_TheStockItemHasIt()
    {
        await using var shop = await OpenShop.Open();

        _ = (await shop.Admin.Put("/api/catalog/supplies", new[] { new { sku = "stake-450", packSize = 10, reorderAt = 7 } })).Ok;

        Assert.Equal(7, (await shop.Bench.Item("stake-450")).Int("reorderAt"));
        (await shop.Admin.Put("/api/catalog/supplies", new[] { new { sku = "stake-451", packSize = 10 } })).IsProblem(422, "catalog.unknown-sku", "#/0/sku");
        (await shop.Admin.Put("/api/catalog/supplies", new[] { new { sku = "stake-450", packSize = 0 } })).IsProblem(422, "request.invalid", "#/0/packSize");
    }

    // The saw cuts 65 struts a day: 65 of the first order today, the second's tomorrow.
    [Fact]
    public async Task ShipDate_WhenTheSawIsBusy_WaitsForTheOrdersBefore()
    {
        await using var shop = await OpenShop.Open(new SettableClock());
        await shop.Stock(stakes: 100);
        _ = (await shop.Admin.Put("/api/catalog/calendar", new { cutsPerDay = 65, closed = new[] { new { from = "2026-11-04", to = "2026-11-04", why = "Holiday" } } })).Ok;
        var first = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var second = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var dates = new List<string>();
        foreach (var order in new[] { first, second }) dates.Add((await shop.Storefront.Get($"/api/orders/{order.Id()}/ship-date")).Ok.Text("shipBy"));

        Assert.Equal(["2026-11-10", "2026-11-11"], dates);
        (await shop.Admin.Put("/api/catalog/calendar", new { workDays = Array.Empty<string>() })).IsProblem(422, "request.invalid", "#/workDays");
    }
}
