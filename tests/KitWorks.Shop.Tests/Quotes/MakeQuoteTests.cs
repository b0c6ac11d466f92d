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

    static decimal Amount(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);
}
