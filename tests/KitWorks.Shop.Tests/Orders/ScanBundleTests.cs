namespace KitWorks.Shop.Tests.Orders;

public sealed class ScanBundleTests(OneShop one) : IClassFixture<OneShop>
{
    [Fact]
    public async Task Scan_WhenBundleAfterBundleIsRead_PacksTheOrder()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 20);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var codes = order.Texts("bundles", "code").ToList();

        var first = (await shop.Bench.Scan(codes[0])).Ok;
        Shape.Holds("""{ "bundle": { "code": "…", "tier": 0, "contents": [{ "sku": "…", "description": "…", "count": 1 }] }, "orderNumber": 1, "orderStatus": "…", "stillOpen": ["…"] }""", first);
        Assert.Equal("picking", first.Text("orderStatus"));
        Assert.Equal("packed", first.Text("bundle/status"));
        Assert.Equal(codes[1..], first.List("stillOpen").Select(c => c.GetString()));

        // A hand-typed code, in small letters and with spaces around it, is the same code.
        foreach (var code in codes[1..]) _ = (await shop.Bench.Scan($" {code.ToLowerInvariant()} ")).Ok;

        Assert.Equal("packed", await shop.Storefront.StatusOf(order));
        Assert.All((await shop.Bench.Get($"/api/orders/{order.Id()}/bundles")).Ok.Texts("bundles", "status"), s => Assert.Equal("packed", s));
    }

    [Fact]
    public async Task Scan_WhenABundleWasPackedBefore_ChangesNothing()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 20);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var code = order.Text("bundles/0/code");
        _ = (await shop.Bench.Scan(code)).Ok;
        var before = (await shop.Bench.Get($"/api/orders/{order.Id()}")).Text;

        (await shop.Bench.Scan(code)).IsProblem(409, "bundle.packed-before");

        Assert.Equal(before, (await shop.Bench.Get($"/api/orders/{order.Id()}")).Text);
    }

    [Fact]
    public async Task Scan_WhenTheBundleIsAnotherOrders_ChangesNothing()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 20);
        var mine = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var other = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        (await shop.Bench.Scan(other.Text("bundles/0/code"), mine.Id())).IsProblem(409, "bundle.other-order");

        Assert.Equal(["reserved", "reserved"], [await shop.Bench.StatusOf(mine), await shop.Bench.StatusOf(other)]);
        _ = (await shop.Bench.Scan(mine.Text("bundles/0/code"), mine.Id())).Ok;
    }

    [Theory]
    [InlineData("1001B0010", "bundle.code")]
    [InlineData("9999B001P", "bundle.code")]
    [InlineData("https://example.com/", "bundle.code")]
    [InlineData("hello", "bundle.code")]
    public async Task Scan_WhenTheCodeIsNotOurs_SaysSo(string code, string problem)
    {
        var shop = one.Shop;

        (await shop.Bench.Scan(code)).IsProblem(422, problem, "#/code");
    }

    [Fact]
    public async Task Scan_WhenTheCodeIsRightButUnknown_SaysSo()
    {
        var shop = one.Shop;

        (await shop.Bench.Scan(Kits.Packing.BundleCode.Of(7777, 1))).IsProblem(422, "bundle.unknown", "#/code");
    }

    [Fact]
    public async Task Scan_WhenTheOrderWaitsOrIsCancelled_IsRefused()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 0);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        (await shop.Bench.Scan(order.Text("bundles/0/code"))).IsProblem(409, "order.status");
        _ = (await shop.Storefront.Post($"/api/orders/{order.Id()}/cancel")).Ok;
        (await shop.Bench.Scan(order.Text("bundles/0/code"))).IsProblem(409, "order.status");

        Assert.Equal("open", (await shop.Bench.Get($"/api/orders/{order.Id()}")).Ok.Text("bundles/0/status"));
    }

    [Fact]
    public async Task Scan_WhenTwoStationsReadOneBundleAtOnce_PacksItOnce()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 20);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => shop.Bench.Scan(order.Text("bundles/0/code"))));

        Assert.Single(answers, a => a.Status == 200);
        Assert.All(answers.Where(a => a.Status != 200), a => Assert.Equal(409, a.Status));
        Assert.Equal(["waiting", "reserved", "picking"], (await shop.Bench.Get($"/api/orders/{order.Id()}")).Ok.Texts("history", "status"));
    }
}
