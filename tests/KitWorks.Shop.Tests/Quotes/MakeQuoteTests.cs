using System.Globalization;

namespace KitWorks.Shop.Tests.Quotes;

public sealed class MakeQuoteTests(OneShop one) : IClassFixture<OneShop>
{
    [Fact]
    public async Task Quote_WhenStockCoversIt_IsFromStockAndReservesNothing()
    {
        await using var shop = await OpenShop.Open(new SettableClock());
        await shop.Stock(stakes: 100);

        var answer = await shop.Storefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity = 2, currency = "USD" });

        var quote = answer.Created;
        Shape.Holds("""
            { "id": "…", "kit": { "designId": "…", "totals": { "hubs": 1 } }, "price": { "lines": [{}], "total": { "amount": "1.00", "currency": "USD" } },
              "availability": { "fromStock": true, "shortages": [], "shipBy": "2026-12-04" }, "expiresAt": "…" }
            """, quote);
        Assert.True(quote.At("availability/fromStock").GetBoolean());
        Assert.Equal("2026-11-09", quote.Text("availability/shipBy"));
        Assert.Equal(new DateTimeOffset(2026, 11, 16, 9, 0, 0, TimeSpan.Zero), quote.At("expiresAt").GetDateTimeOffset());
        Assert.Equal(0, (await shop.Bench.Item("stake-450")).Int("reserved"));
        Assert.Equal($"/api/quotes/{quote.Id()}", answer.Headers.Location!.ToString());
        Assert.Equal(answer.Text, (await shop.Storefront.Get(answer.Headers.Location.ToString())).Is(200).Text);
    }

    [Fact]
    public async Task Quote_WhenStockIsShort_SaysOfWhatAndShipsLater()
    {
        await using var shop = await OpenShop.Open(new SettableClock());
        await shop.Stock(stakes: 15);

        var quote = (await shop.Storefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity = 2 })).Created;

        Assert.False(quote.At("availability/fromStock").GetBoolean());
        Assert.Equal(("stake-450", 5), (quote.Text("availability/shortages/0/sku"), quote.Int("availability/shortages/0/short")));
        Assert.Equal("2026-11-23", quote.Text("availability/shipBy"));
    }

    [Fact]
    public async Task Quote_WhenItsLinesAreAddedUp_TheyAreTheTotal()
    {
        var shop = one.Shop;

        var price = (await shop.Storefront.Post("/api/quotes", new { design = Designs.Greenhouse, quantity = 3 })).Created.At("price");

        Assert.Equal(Amount(price.Text("total/amount")), price.List("lines").Sum(l => Amount(l.Text("amount/amount"))));
        Assert.All(price.List("lines"), l => Assert.Matches(@"^\d+\.\d\d$", l.Text("amount/amount")));
        Assert.All(price.List("lines"), l => Assert.Equal(Amount(l.Text("amount/amount")), l.Int("quantity") * Amount(l.Text("each/amount"))));
    }

    [Fact]
    public async Task Quote_WhenInAnotherCurrency_IsRefused()
    {
        var shop = one.Shop;

        (await shop.Storefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity = 1, currency = "EUR" })).IsProblem(422, "quote.currency", "#/currency");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(101)]
    public async Task Quote_WhenTheQuantityIsOutOfBounds_IsRefused(int quantity)
    {
        var shop = one.Shop;

        (await shop.Storefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity })).IsProblem(422, "request.invalid", "#/quantity");
    }

    [Fact]
    public async Task GetQuote_WhenAnotherStorefrontAsks_IsNotThere()
    {
        var shop = one.Shop;
        var quote = (await shop.Storefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity = 1 })).Created;

        (await shop.OtherStorefront.Get($"/api/quotes/{quote.Id()}")).IsProblem(404, "quote.unknown");
        (await shop.Bench.Get($"/api/quotes/{quote.Id()}")).Is(200);
    }

    // The price book changes; the quote, and the order that comes from it, stay as they were quoted.
    [Fact]
    public async Task Quote_WhenThePriceBookChanges_StandsAndIsOrderedAtItsPrice()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 100);
        var quote = (await shop.Storefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity = 2 })).Created;
        var book = (await shop.Admin.Get("/api/catalog/prices")).Ok;
        _ = (await shop.Admin.SendText(HttpMethod.Put, "/api/catalog/prices", book.GetRawText().Replace("\"markupPercent\":24", "\"markupPercent\":240", StringComparison.Ordinal))).Ok;

        var order = (await shop.Storefront.Post("/api/orders", new { quoteId = quote.Id(), customer = new { name = "A. Customer" } }, "once")).Created;

        Assert.Equal(quote.Text("price/total/amount"), (await shop.Storefront.Get($"/api/quotes/{quote.Id()}")).Ok.Text("price/total/amount"));
        Assert.Equal(quote.Text("price/total/amount"), order.Text("price/total/amount"));
        var dearer = (await shop.Storefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity = 2 })).Created;
        Assert.True(Amount(dearer.Text("price/total/amount")) > Amount(quote.Text("price/total/amount")));
    }

    [Fact]
    public async Task Quote_WhenEachLineIsRead_ExplainsItself()
    {
        var shop = one.Shop;

        var price = (await shop.Storefront.Post("/api/quotes", new { design = Designs.Greenhouse, quantity = 1 })).Created.At("price");

        Assert.All(price.List("lines"), l => Assert.NotEqual("", l.Text("why")));
        Assert.Equal(["labour", "margin", "material", "overhead", "shipping", "waste"], price.Texts("lines", "kind").Distinct().Order());
        Assert.Empty(price.List("warnings"));
    }

    [Fact]
    public async Task Quote_WhenAPartHasNoCost_IsRefusedAndNamesIt()
    {
        await using var shop = await OpenShop.Open();
        var book = (await shop.Admin.Get("/api/catalog/prices")).Ok.GetRawText();
        _ = (await shop.Admin.SendText(HttpMethod.Put, "/api/catalog/prices", book.Replace("\"stake-450\":1.65,", "", StringComparison.Ordinal).Replace(",\"stake-450\":1.65", "", StringComparison.Ordinal))).Ok;

        var refused = await shop.Storefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity = 2 });

        refused.IsProblem(422, "price.no-cost");
        Assert.Contains("stake-450", refused.Text, StringComparison.Ordinal);
    }

    // What today's clients put into the price book goes on being enough.
    [Fact]
    public async Task Prices_WhenPutWithTheOldFieldsOnly_AreTaken()
    {
        await using var shop = await OpenShop.Open();

        var book = new { currency = "USD", unitCosts = new Dictionary<string, decimal> { ["hub-r100-5"] = 2.9m }, perCut = 0.35m, perBundle = 1.2m, markupPercent = 38 };
        Assert.Equal("refuse", (await shop.Admin.Put("/api/catalog/prices", book)).Ok.Text("whenCostMissing"));
        (await shop.Admin.Put("/api/catalog/prices", new { currency = "USD", unitCosts = new { }, quantityBreaks = new[] { new { from = 1, percentOff = 5 } } })).IsProblem(422, "request.invalid", "#/quantityBreaks/0/from");
    }

    [Fact]
    public async Task Quote_WhenStockIsDue_SaysWhatItWaitsFor()
    {
        await using var shop = await OpenShop.Open(new SettableClock());
        await shop.Stock(stakes: 15);
        _ = (await shop.Bench.Post("/api/stock/expected", new { reference = "purchase 7", supplier = "Smithy", expectedOn = "2026-11-05", lines = new[] { new { sku = "stake-450", quantity = 25 } } })).Created;

        var availability = (await shop.Storefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity = 2 })).Created.At("availability");

        // Thursday, and five working days.
        Assert.Equal("2026-11-12", availability.Text("shipBy"));
        Assert.Equal(["stock", "carrier"], availability.Texts("waitsFor", "what"));
        Assert.Contains("purchase 7", availability.Text("waitsFor/0/detail"), StringComparison.Ordinal);
    }

    static decimal Amount(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);
}
