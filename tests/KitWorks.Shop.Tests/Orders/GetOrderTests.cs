namespace KitWorks.Shop.Tests.Orders;

public sealed class GetOrderTests(OneShop one) : IClassFixture<OneShop>
{
    static readonly string[] Papers =
        ["", "/kit", "/picklist", "/picklist.csv", "/cut-plan", "/bundles", "/labels.pdf", "/labels.png", "/labels.svg"];

    [Fact]
    public async Task ListOrders_WhenReadPageByPage_GivesEachOnceNewestFirst()
    {
        await using var shop = await OpenShop.Open();
        for (var i = 0; i < 5; i++) _ = (await shop.Storefront.Order(Designs.SmallDome, reference: $"r{i}")).Created;

        var numbers = new List<int>();
        string? after = null;
        var pages = 0;
        do
        {
            var page = (await shop.Bench.Get($"/api/orders?limit=2{(after is null ? "" : $"&after={after}")}")).Ok;
            numbers.AddRange(page.List("items").Select(o => o.Int("number")));
            after = page.IsNull("next") ? null : page.Text("next");
            pages++;
        }
        while (after is not null);

        Assert.Equal(3, pages);
        Assert.Equal([1005, 1004, 1003, 1002, 1001], numbers);
        Shape.Holds("""{ "items": [{ "id": "…", "number": 1, "status": "…", "quantity": 1, "reference": "…" }], "next": null }""", (await shop.Bench.Get("/api/orders")).Ok);
        Assert.Equal(5, (await shop.Bench.Get("/api/orders?after=")).Ok.List("items").Count);
    }

    [Theory]
    [InlineData("limit=0", "list.limit")]
    [InlineData("limit=201", "list.limit")]
    [InlineData("limit=-1", "list.limit")]
    [InlineData("limit=many", "request.malformed")]
    [InlineData("after=%21%21", "list.after")]
    [InlineData("after=aGVsbG8", "list.after")]
    [InlineData("status=lost", "list.status")]
    public async Task ListOrders_WhenAskedWrongly_IsRefused(string query, string code)
    {
        var shop = one.Shop;

        (await shop.Bench.Get($"/api/orders?{query}")).IsProblem(400, code);
    }

    [Fact]
    public async Task ListOrders_WhenAskedByStatus_GivesThoseOnly()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 10);
        var reserved = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var waiting = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        Assert.Equal([reserved.Id()], (await shop.Bench.Get("/api/orders?status=reserved")).Ok.List("items").Select(o => o.Id()));
        Assert.Equal([waiting.Id()], (await shop.Bench.Get("/api/orders?status=waiting")).Ok.List("items").Select(o => o.Id()));
    }

    [Fact]
    public async Task GetOrder_WhenAnotherStorefrontAsks_IsNotThere()
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        foreach (var paper in Papers) (await shop.OtherStorefront.Get($"/api/orders/{order.Id()}{paper}")).IsProblem(404, "order.unknown");
        (await shop.OtherStorefront.Post($"/api/orders/{order.Id()}/cancel")).IsProblem(404, "order.unknown");

        Assert.Empty((await shop.OtherStorefront.Get("/api/orders")).Ok.List("items"));
        Assert.Single((await shop.Storefront.Get("/api/orders")).Ok.List("items"));
        Assert.Single((await shop.Bench.Get("/api/orders")).Ok.List("items"));
        Assert.Equal("waiting", await shop.Storefront.StatusOf(order));
    }

    [Fact]
    public async Task GetOrder_WhenItsOwnersAsk_ShowsItWithAllItsPapers()
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        foreach (var caller in (Caller[])[shop.Storefront, shop.Bench, shop.Admin])
            foreach (var paper in Papers) (await caller.Get($"/api/orders/{order.Id()}{paper}")).Is(200);
        foreach (var link in order.At("links").EnumerateObject()) (await shop.Storefront.Get(link.Value.GetString()!)).Is(200);
    }

    [Fact]
    public async Task GetOrder_WhenThereIsNone_SaysSo()
    {
        var shop = one.Shop;

        foreach (var paper in Papers) (await shop.Bench.Get($"/api/orders/{Guid.NewGuid()}{paper}")).IsProblem(404, "order.unknown");
    }

    [Fact]
    public async Task GetCutPlan_WhenAnOrderHasOne_CutsEveryStrut()
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.Greenhouse)).Created;

        var plan = (await shop.Storefront.Get($"/api/orders/{order.Id()}/cut-plan")).Ok;

        Shape.Holds("""
            { "stockLengths": [{ "sku": "…", "lengthMm": 1, "count": 1 }],
              "patterns": [{ "count": 1, "stockLengthMm": 1, "cuts": [{ "code": "…", "cutLengthMm": 1, "count": 1 }], "remnantMm": 1 }],
              "wasteRatio": 0.1, "lowerBound": 1, "proven": true }
            """, plan);
        var cut = plan.List("patterns").SelectMany(p => p.List("cuts"), (p, c) => (Code: c.Text("code"), Count: p.Int("count") * c.Int("count")))
            .GroupBy(c => c.Code).OrderBy(g => g.Key).Select(g => g.Sum(c => c.Count));
        Assert.Equal([30, 55, 80], cut);
        Assert.Equal(plan.List("stockLengths").Sum(s => s.Int("count")), plan.List("patterns").Sum(p => p.Int("count")));
        Assert.Equal(plan.Int("stockLengths/0/count"), order.List("shortages").Single(s => s.Text("sku") == "pipe-pvc-33").Int("short"));
    }
}
