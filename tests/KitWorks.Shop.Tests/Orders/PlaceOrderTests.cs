using System.Text.Json;

namespace KitWorks.Shop.Tests.Orders;

public sealed class PlaceOrderTests
{
    [Fact]
    public async Task PlaceOrder_WhenStockCoversIt_ReservesAllOfIt()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 25);

        var answer = await shop.Storefront.Order(Designs.SmallDome, quantity: 2, reference: "web-17");

        var order = answer.Created;
        Shape.Holds("""
            { "id": "…", "number": 1, "status": "…", "quantity": 1, "reservations": [{ "sku": "…", "quantity": 1 }], "shortages": [],
              "customer": { "name": "…", "email": null, "address": null }, "reference": "…",
              "bundles": [{ "code": "…", "tier": 0 }], "links": { "self": "…", "picklist": "…", "bundles": "…", "labels": "…" } }
            """, order);
        Assert.Equal($"/api/orders/{order.Id()}", answer.Headers.Location!.ToString());
        Assert.Equal(1001, order.Int("number"));
        Assert.Equal("reserved", order.Text("status"));
        Assert.Equal(2, order.Int("quantity"));
        Assert.Equal("web-17", order.Text("reference"));
        Assert.Equal(20, order.List("reservations").Single(r => r.Text("sku") == "stake-450").Int("quantity"));
        Assert.Empty(order.List("shortages"));

        var stakes = await shop.Bench.Item("stake-450");
        Assert.Equal((25, 20, 5), (stakes.Int("onHand"), stakes.Int("reserved"), stakes.Int("available")));
        Assert.Equal(order.ToString(), (await shop.Storefront.Get(answer.Headers.Location.ToString())).Ok.ToString());
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task PlaceOrder_WhenStockIsShort_WaitsAndReservesNothing()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 9);

        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        Assert.Equal("waiting", order.Text("status"));
        Assert.Empty(order.List("reservations"));
        var shortage = Assert.Single(order.List("shortages"));
        Assert.Equal(("stake-450", 1), (shortage.Text("sku"), shortage.Int("short")));
        Assert.NotEmpty(order.List("bundles"));
        Assert.All((await shop.Bench.Get("/api/stock")).Ok.List("items"), i => Assert.Equal(0, i.Int("reserved")));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task PlaceOrder_WhenItRefusesToWait_KeepsNothingNotEvenTheNumber()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 15);

        Assert.Equal(1001, (await shop.Storefront.Order(Designs.SmallDome)).Created.Int("number"));
        (await shop.Storefront.Order(Designs.SmallDome, whenShort: "refuse")).IsProblem(409, "stock.short");
        Assert.Equal(1002, (await shop.Storefront.Order(Designs.SmallDome)).Created.Int("number"));

        Assert.Equal(2, (await shop.Bench.Get("/api/orders")).Ok.List("items").Count);
        Assert.Equal(10, (await shop.Bench.Item("stake-450")).Int("reserved"));
        await shop.LedgerAddsUp();
    }

    [Theory]
    [InlineData("wait", "waiting")]
    [InlineData("refuse", null)]
    public async Task PlaceOrder_WhenTwoTogetherExceedTheStock_ReservesOne(string whenShort, string? other)
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 19);

        var answers = await Task.WhenAll(shop.Storefront.Order(Designs.SmallDome, whenShort: whenShort), shop.OtherStorefront.Order(Designs.SmallDome, whenShort: whenShort));

        Assert.Single(answers, a => a.Status == 201 && a.Json.Text("status") == "reserved");
        if (other is null) Assert.Single(answers, a => a.Status == 409).IsProblem(409, "stock.short");
        else Assert.Single(answers, a => a.Status == 201 && a.Json.Text("status") == other);
        var stakes = await shop.Bench.Item("stake-450");
        Assert.Equal((10, 9), (stakes.Int("reserved"), stakes.Int("available")));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task PlaceOrder_WhenTwentyAreAtOnceAndSevenFit_ReservesSeven()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 75);

        var watching = new CancellationTokenSource();
        var lowest = LowestAvailable(shop.Bench, watching.Token);
        var orders = (await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => shop.Storefront.Order(Designs.SmallDome)))).Select(a => a.Created).ToList();
        await watching.CancelAsync();

        Assert.Equal(7, orders.Count(o => o.Text("status") == "reserved"));
        Assert.Equal(13, orders.Count(o => o.Text("status") == "waiting"));
        Assert.Equal(Enumerable.Range(1001, 20), orders.Select(o => o.Int("number")).Order());
        Assert.Equal(orders.Sum(o => o.List("bundles").Count), orders.SelectMany(o => o.Texts("bundles", "code")).Distinct().Count());
        var stakes = await shop.Bench.Item("stake-450");
        Assert.Equal((75, 70, 5), (stakes.Int("onHand"), stakes.Int("reserved"), stakes.Int("available")));
        Assert.InRange(await lowest, 0, 75);
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task PlaceOrder_WhenAQuoteIsOrdered_TakesItsKitItsPriceAndItsQuantity()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 100);
        var quote = (await shop.Storefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity = 3 })).Created;

        var order = (await shop.Storefront.Post("/api/orders", new { quoteId = quote.Id(), customer = new { name = "A. Customer" } }, once: "q-1")).Created;

        Assert.Equal(3, order.Int("quantity"));
        Assert.Equal(quote.At("price").ToString(), order.At("price").ToString());
        Assert.Equal(quote.Text("kit/designId"), order.Text("designId"));
        Assert.Equal(30, (await shop.Bench.Item("stake-450")).Int("reserved"));
    }

    [Fact]
    public async Task PlaceOrder_WhenTheQuoteHasExpired_IsRefused()
    {
        var clock = new SettableClock();
        await using var shop = await OpenShop.Open(clock);
        var quote = (await shop.Storefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity = 1 })).Created;

        clock.Forward(TimeSpan.FromDays(14));

        (await shop.Storefront.Post("/api/orders", new { quoteId = quote.Id(), customer = new { name = "A" } }, once: "q-1")).IsProblem(409, "quote.expired");
        Assert.Empty((await shop.Bench.Get("/api/orders")).Ok.List("items"));
    }

    [Fact]
    public async Task PlaceOrder_WhenTheQuoteIsAnothers_KnowsNoSuchQuote()
    {
        await using var shop = await OpenShop.Open();
        var quote = (await shop.OtherStorefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity = 1 })).Created;

        (await shop.Storefront.Post("/api/orders", new { quoteId = quote.Id(), customer = new { name = "A" } }, once: "q-1")).IsProblem(422, "quote.unknown", "#/quoteId");
    }

    [Fact]
    public async Task PlaceOrder_WhenTheCatalogChangesLater_KeepsItsKit()
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var before = (await shop.Storefront.Get($"/api/orders/{order.Id()}/kit")).Ok;

        var palette = new { colours = new[] { new { name = "grey", hex = "#777777" } } };
        _ = (await shop.Admin.Put("/api/catalog/palette", palette)).Ok;

        Assert.Equal("orange", before.Text("strutTypes/0/tag/colour"));
        Assert.Equal(before.ToString(), (await shop.Storefront.Get($"/api/orders/{order.Id()}/kit")).Ok.ToString());
        Assert.Equal("grey", (await shop.Storefront.Post("/api/kits/preview", new { design = Designs.SmallDome })).Ok.Text("strutTypes/0/tag/colour"));
    }

    static async Task<int> LowestAvailable(Caller caller, CancellationToken until)
    {
        var lowest = int.MaxValue;
        do lowest = Math.Min(lowest, (await caller.Item("stake-450")).Int("available"));
        while (!until.IsCancellationRequested);
        return lowest;
    }
}
