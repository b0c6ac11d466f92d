using KitWorks.Api.Hosting;
using UglyToad.PdfPig;

namespace KitWorks.Api.Tests.Printing;

public sealed class LabelSettingsTests
{
    static readonly (string, string?)[] TwentyOne =
    [
        ("Labels:Stocks:0:Name", "a4-21"), ("Labels:Stocks:0:Page", "A4"), ("Labels:Stocks:0:Columns", "3"), ("Labels:Stocks:0:Rows", "7"), ("Labels:Stocks:0:Width", "63.5"),
        ("Labels:Stocks:0:Height", "38.1"), ("Labels:Stocks:0:Left", "7.2"), ("Labels:Stocks:0:Top", "15.1"), ("Labels:Stocks:0:GapX", "2.5"),
    ];

    [Fact]
    public async Task OwnStock_IsListedAndPrintedOnAndLiesInPrinters()
    {
        await using var shop = await OpenShop.Open(settings: [.. TwentyOne, ("Labels:Stocks:1:Name", "roll-80x50"), ("Labels:Stocks:1:Width", "80"), ("Labels:Stocks:1:Height", "50"), .. PrintShop.Settings(new("ipp://127.0.0.1:1/x")), ("Printers:0:Labels", "a4-21")]);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var stocks = (await shop.Bench.Get("/api/label-stocks")).Ok.List("items").ToList();
        using var pdf = PdfDocument.Open((await shop.Bench.Get($"/api/orders/{order.Id()}/labels.pdf?sheet=a4-21&startAt=21")).Is(200).Bytes);

        Assert.Equal((3, 7, 63.5, 38.1), (stocks[0].Int("columns"), stocks[0].Int("rows"), stocks[0].Number("labelWidthMm"), stocks[0].Number("labelHeightMm")));
        Assert.Equal((80.0, 50.0), (stocks[1].Number("pageWidthMm"), stocks[1].Number("pageHeightMm")));
        Assert.Contains("a4", stocks.Select(s => s.Text("name")));
        // The last place: its left edge is 7.2 + 2 × 66 mm from the left, its top 15.1 + 6 × 38.1 mm from the top.
        Assert.All(pdf.GetPage(1).Letters, l => Assert.True(l.StartBaseLine.X / 72 * 25.4 > 139.2 && (841.89 - l.StartBaseLine.Y) / 72 * 25.4 > 243.7));
        (await shop.Bench.Post("/api/print-jobs", new { orderId = order.Id(), what = "labels", printer = "bench", startAt = 22 })).IsProblem(422, "label.start-at", "#/startAt");
    }

    [Theory]
    [InlineData("Name", "A4 21", "small letters, figures and dashes")]
    [InlineData("Width", "wide", "it is millimetres, such as 63.5")]
    [InlineData("Width", null, "Labels:Stocks:0:Width is missing")]
    [InlineData("Height", "0", "it is millimetres, such as 63.5")]
    [InlineData("Columns", "2.5", "a whole number from 1 to 100")]
    [InlineData("Page", null, "Labels:Stocks:0:Page is missing")]
    [InlineData("Page", "A3", "A4, Letter, or millimetres such as 210x297")]
    [InlineData("Width", "70", "3 columns of 70 mm, the gaps and the left margin take 222.2 mm; the page is 210 mm wide")]
    [InlineData("Rows", "8", "8 rows of 38.1 mm, the gaps and the top margin take 319.9 mm; the page is 297 mm high")]
    [InlineData("Heigth", "38", "There is no setting Labels:Stocks:0:Heigth")]
    public void OwnStock_WhenItsSettingsAreWrong_SaysWhichAndWhatWouldBeRight(string key, string? value, string words)
    {
        var wrong = Assert.Throws<SettingException>(() => ShopHost.Build([.. TwentyOne.Where(s => s.Item1 != $"Labels:Stocks:0:{key}"), ($"Labels:Stocks:0:{key}", value)]));
        Assert.Contains(words, wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task FontFolder_WhenItIsNotThere_StopsTheStart()
    {
        await using var shop = await OpenShop.Open();
        await using var app = ShopHost.Build([.. OpenShop.SettingsFor(shop.Database.Settings), ("Labels:Fonts", "/nowhere/at/all")]);

        var wrong = await Assert.ThrowsAnyAsync<InvalidOperationException>(() => app.Prepare(TestContext.Current.CancellationToken));

        Assert.Contains("'/nowhere/at/all', which is set as that of the shop's own fonts", wrong.Message, StringComparison.Ordinal);
    }

    public static TheoryData<string> Names => [new string('W', 190), new string('a', 145), "Zoë \U0001F3D5\uFE0F \U0001F468\u200D\U0001F469\u200D\U0001F467", "名前 \U00012000"];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Papers_OfAnyCustomerThatIsTaken_ArePrinted(string name)
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.SmallDome, customer: name, reference: new string('W', 100))).Created;

        foreach (var paper in (string[])["picklist.pdf", "packing-list.pdf", "cut-plan.pdf", "guide.pdf", "labels.pdf", "labels.pdf?sheet=roll-57x32", "labels.pdf?sheet=roll-100x50"])
            (await shop.Bench.Get($"/api/orders/{order.Id()}/{paper}")).Is(200);
    }

    [Theory]
    [InlineData("{\"orderId\": \"nine\", \"what\": \"labels\", \"printer\": \"x\"}", "#/orderId", "an id as an answer gave it")]
    [InlineData("{\"orderId\": 9, \"what\": \"labels\", \"printer\": \"x\"}", "#/orderId", "a text in quotes")]
    [InlineData("{\"orderId\": \"0193a1b2-0000-7000-8000-000000000001\", \"startAt\": 99999999999}", "#/startAt", "a whole number, without quotes, from -2147483648 to 2147483647")]
    [InlineData("{\"orderId\": \"0193a1b2-0000-7000-8000-000000000001\", \"startAt\": \"8\"}", "#/startAt", "number, without quotes")]
    public async Task PrintJob_WhenAFieldIsOfAnotherForm_SaysWhichFormIsRight(string body, string field, string form)
    {
        await using var shop = await OpenShop.Open();
        var problem = (await shop.Bench.PostText("/api/print-jobs", body)).IsProblem(400, "request.malformed", field);
        Assert.Contains(form, problem.Text("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Labels_WhenAskedForWrongly_SayWhatWasWrong()
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var bundle = (await shop.Bench.Get($"/api/orders/{order.Id()}/labels.pdf?bundle=XX")).IsProblem(404, "label.none");
        var tier = (await shop.Bench.Get($"/api/orders/{order.Id()}/labels.pdf?tier=9")).IsProblem(404, "label.none");
        var place = (await shop.Bench.Get($"/api/orders/{order.Id()}/labels.pdf?startAt=99999999999")).IsProblem(400, "request.malformed", "#/startAt");

        Assert.Contains("no bundle 'XX'", bundle.Text("detail"), StringComparison.Ordinal);
        Assert.DoesNotContain("tiers are", bundle.Text("detail"), StringComparison.Ordinal);
        Assert.Contains("tiers are 0 to", tier.Text("detail"), StringComparison.Ordinal);
        Assert.Contains("startAt is '99999999999'; it is a whole number", place.Text("detail"), StringComparison.Ordinal);
    }
}
