namespace KitWorks.Shop.Tests.Pipeline;

public sealed class OnceTests
{
    [Fact]
    public async Task Once_WhenTheSameRequestComesAgain_AnswersTheSameAndPlacesOneOrder()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 50);

        var first = await shop.Storefront.Order(Designs.SmallDome, once: "a-1");
        var again = await shop.Storefront.Order(Designs.SmallDome, once: "a-1");

        Assert.False(first.Is(201).Replayed);
        Assert.True(again.Is(201).Replayed);
        Assert.Equal(first.Text, again.Text);
        Assert.Equal(first.Headers.Location, again.Headers.Location);
        Assert.Single((await shop.Bench.Get("/api/orders")).Ok.List("items"));
        Assert.Equal(10, (await shop.Bench.Item("stake-450")).Int("reserved"));
    }

    [Fact]
    public async Task Once_WhenAnotherBodyComesUnderTheKey_IsRefused()
    {
        await using var shop = await OpenShop.Open();
        _ = (await shop.Storefront.Order(Designs.SmallDome, once: "a-1")).Created;

        (await shop.Storefront.Order(Designs.SmallDome, quantity: 2, once: "a-1")).IsProblem(422, "idempotency.mismatch");

        Assert.Single((await shop.Bench.Get("/api/orders")).Ok.List("items"));
    }

    [Fact]
    public async Task Once_WhenAnotherAddressIsAskedUnderTheKey_IsRefused()
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.SmallDome, once: "a-1")).Created;

        (await shop.Storefront.Post($"/api/orders/{order.Id()}/cancel", once: "a-1")).IsProblem(422, "idempotency.mismatch");

        Assert.Equal("waiting", await shop.Storefront.StatusOf(order));
    }

    [Fact]
    public async Task Once_WhenTenAreAtOnceUnderOneKey_PlacesOneOrder()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 500);

        var answers = await Task.WhenAll(Enumerable.Range(0, 10).Select(_ => shop.Storefront.Order(Designs.SmallDome, once: "a-1")));

        Assert.Single(answers, a => a.Status == 201 && !a.Replayed);
        Assert.All(answers.Where(a => a.Status != 201), a => a.IsProblem(409, "idempotency.running"));
        Assert.Single(answers.Where(a => a.Status == 201).Select(a => a.Text).Distinct());
        Assert.Single((await shop.Bench.Get("/api/orders")).Ok.List("items"));
        Assert.Equal(10, (await shop.Bench.Item("stake-450")).Int("reserved"));
        await shop.LedgerAddsUp();
    }

    [Fact]
    public async Task Once_WhenTheFirstWasRefused_RepeatsTheRefusalThoughStockHasCome()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 0);
        var first = await shop.Storefront.Order(Designs.SmallDome, whenShort: "refuse", once: "a-1");
        first.IsProblem(409, "stock.short");
        _ = (await shop.Bench.Receive("stake-450", 100)).Ok;

        var again = await shop.Storefront.Order(Designs.SmallDome, whenShort: "refuse", once: "a-1");

        again.IsProblem(409, "stock.short");
        Assert.True(again.Replayed);
        Assert.Equal(first.Text, again.Text);
        Assert.Empty((await shop.Bench.Get("/api/orders")).Ok.List("items"));
        Assert.Equal("reserved", (await shop.Storefront.Order(Designs.SmallDome, whenShort: "refuse", once: "a-2")).Created.Text("status"));
    }

    [Fact]
    public async Task Once_WhenAFieldWasRefused_RepeatsTheFields()
    {
        await using var shop = await OpenShop.Open();

        (await shop.Storefront.Order(Designs.SmallDome, quantity: 101, once: "a-1")).IsProblem(422, "request.invalid", "#/quantity");
        var again = await shop.Storefront.Order(Designs.SmallDome, quantity: 101, once: "a-1");

        again.IsProblem(422, "request.invalid", "#/quantity");
        Assert.True(again.Replayed);
    }

    [Fact]
    public async Task Once_WhenTwoCallersUseOneKey_ServesEachItsOwn()
    {
        await using var shop = await OpenShop.Open();

        var one = (await shop.Storefront.Order(Designs.SmallDome, once: "a-1")).Created;
        var other = await shop.OtherStorefront.Order(Designs.SmallDome, quantity: 2, once: "a-1");

        Assert.False(other.Replayed);
        Assert.NotEqual(one.Id(), other.Created.Id());
    }

    [Fact]
    public async Task Once_WhenAReceiptIsRepeated_TakesItInOnce()
    {
        await using var shop = await OpenShop.Open();
        var delivery = new { lines = new[] { new { sku = "stake-450", quantity = 40 } }, reference = "note 7" };

        _ = (await shop.Bench.Post("/api/stock/receipts", delivery, once: "r-1")).Ok;
        Assert.True((await shop.Bench.Post("/api/stock/receipts", delivery, once: "r-1")).Is(200).Replayed);

        Assert.Equal(40, (await shop.Bench.Item("stake-450")).Int("onHand"));
    }

    [Fact]
    public async Task Once_WhenTheProgramWasStartedAnew_StillRemembers()
    {
        await using var shop = await OpenShop.Open();
        var first = await shop.Storefront.Order(Designs.SmallDome, once: "a-1");
        await using var second = await shop.AnotherInstance();

        var again = await second.Storefront.Order(Designs.SmallDome, once: "a-1");

        Assert.True(again.Is(201).Replayed);
        Assert.Equal(first.Text, again.Text);
    }

    [Theory]
    [InlineData(null, "idempotency.key-missing")]
    [InlineData("", "idempotency.key-malformed")]
    [InlineData("tab\there", "idempotency.key-malformed")]
    public async Task Once_WhenAnOrderHasNoProperKey_IsRefused(string? key, string code)
    {
        await using var shop = await OpenShop.Open();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/orders")
        {
            Content = System.Net.Http.Json.JsonContent.Create(new { design = Designs.SmallDome, customer = new { name = "A" } }),
        };
        if (key is not null) request.Headers.TryAddWithoutValidation("Idempotency-Key", key);

        (await shop.Storefront.Send(request)).IsProblem(400, code);

        Assert.Empty((await shop.Bench.Get("/api/orders")).Ok.List("items"));
    }
}
