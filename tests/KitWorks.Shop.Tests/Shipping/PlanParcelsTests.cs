using KitWorks.Labels;
using UglyToad.PdfPig;

namespace KitWorks.Shop.Tests.Shipping;

public sealed class PlanParcelsTests
{
    [Fact]
    public async Task Parcels_WhenNotPlanned_AreShownAsTheyWouldBeWithoutSsccs()
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var parcels = (await shop.Storefront.Get($"/api/orders/{order.Id()}/parcels")).Ok;

        Assert.False(parcels.At("planned").GetBoolean());
        Assert.True(parcels.At("proven").GetBoolean());
        Assert.All(parcels.List("parcels"), p => Assert.True(p.IsNull("sscc")));
        (await shop.Bench.Get($"/api/orders/{order.Id()}/parcel-labels.pdf")).IsProblem(409, "parcel.not-planned");
        (await shop.OtherStorefront.Get($"/api/orders/{order.Id()}/parcels")).IsProblem(404, "order.unknown");
        (await shop.Storefront.Post($"/api/orders/{order.Id()}/parcels")).IsProblem(403, "access.role");
    }

    [Fact]
    public async Task Parcels_WhenPlanned_HoldEveryBundleOnceAndKeepTheirSsccs()
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.Greenhouse, quantity: 2)).Created;

        var parcels = (await shop.Bench.Post($"/api/orders/{order.Id()}/parcels")).Ok;

        Assert.True(parcels.At("planned").GetBoolean());
        Assert.Equal(order.Texts("bundles", "code").Order(), parcels.List("parcels").SelectMany(p => p.Texts("bundles", "code")).Order());
        Assert.All(parcels.Texts("parcels", "sscc"), s => Assert.Null(Sscc.Parse(s).Refusal));
        Assert.All(parcels.List("parcels"), p => Assert.True(p.Int("massGrams") <= 31_500 && p.Number("lengthMm") <= 1750 && p.Number("lengthAndGirthMm") <= 3000));
        Assert.Equal(parcels.GetRawText(), (await shop.Bench.Post($"/api/orders/{order.Id()}/parcels")).Ok.GetRawText());
        Assert.Equal(parcels.GetRawText(), (await shop.Storefront.Get($"/api/orders/{order.Id()}/parcels")).Ok.GetRawText());
    }

    // GS1 General Specifications: an SSCC is not used again. Neither by another order nor by a plan that is made anew.
    [Fact]
    public async Task Sscc_WhenManyParcelsArePlannedAndPlannedAnewAtOnce_NeverRepeats()
    {
        await using var shop = await OpenShop.Open();
        var orders = new List<Guid>();
        for (var i = 0; i < 4; i++) orders.Add((await shop.Storefront.Order(Designs.SmallDome, quantity: 2)).Created.Id());
        var seen = new List<string>();

        for (var round = 0; round < 3; round++)
            foreach (var answer in await Task.WhenAll(orders.Select(id => shop.Bench.Post($"/api/orders/{id}/parcels", new { anew = true }))))
                seen.AddRange(answer.Ok.Texts("parcels", "sscc"));

        Assert.True(seen.Count >= 12);
        Assert.Equal(seen.Count, seen.Distinct().Count());
    }

    [Fact]
    public async Task Parcels_WhenTheOrderChanges_AreNotPlannedAnyMore()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 100);
        var order = (await shop.Storefront.Order(Designs.SmallDome, quantity: 2)).Created;
        _ = (await shop.Bench.Post($"/api/orders/{order.Id()}/parcels")).Ok;

        _ = (await shop.Bench.Post($"/api/orders/{order.Id()}/quantity", new { quantity = 3 })).Ok;

        Assert.False((await shop.Bench.Get($"/api/orders/{order.Id()}/parcels")).Ok.At("planned").GetBoolean());
        var again = (await shop.Bench.Post($"/api/orders/{order.Id()}/parcels")).Ok;
        Assert.Equal(again.List("parcels").SelectMany(p => p.List("bundles")).Count(), (await shop.Bench.Get($"/api/orders/{order.Id()}")).Ok.List("bundles").Count);
    }

    [Fact]
    public async Task Papers_WhenParcelsArePlanned_SayWhatLiesInWhichAndLabelsCarryTheSscc()
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.Greenhouse)).Created;
        var parcels = (await shop.Bench.Post($"/api/orders/{order.Id()}/parcels")).Ok;

        using var labels = PdfDocument.Open((await shop.Bench.Get($"/api/orders/{order.Id()}/parcel-labels.pdf")).Is(200).Bytes);
        using var list = PdfDocument.Open((await shop.Bench.Get($"/api/orders/{order.Id()}/packing-list.pdf")).Is(200).Bytes);

        Assert.Equal(parcels.List("parcels").Count, labels.NumberOfPages);
        foreach (var (sscc, page) in parcels.Texts("parcels", "sscc").Zip(labels.GetPages())) Assert.Contains(sscc, page.Text, StringComparison.Ordinal);
        Assert.All(parcels.Texts("parcels", "sscc"), s => Assert.Contains(s, list.GetPages().Last().Text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Parcels_WhenTheShopHasNoPrefixOrNoTable_SaySo()
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var kinds = new[] { new { code = "box", name = "Box", maxLength = "1.75 m", maxLengthAndGirth = "3 m", maxGrams = 31_500 } };
        _ = (await shop.Admin.Put("/api/catalog/parcels", new { kinds })).Ok;

        Assert.All((await shop.Bench.Post($"/api/orders/{order.Id()}/parcels")).Ok.List("parcels"), p => Assert.True(p.IsNull("sscc")));
        (await shop.Bench.Get($"/api/orders/{order.Id()}/parcel-labels.pdf")).IsProblem(409, "parcel.no-sscc");

        _ = (await shop.Admin.Put("/api/catalog/parcels", new { kinds = Array.Empty<object>() })).Ok;
        (await shop.Bench.Post($"/api/orders/{order.Id()}/parcels", new { anew = true })).IsProblem(409, "parcel.no-kinds");
        (await shop.Admin.Put("/api/catalog/parcels", new { kinds, gs1CompanyPrefix = "12a" })).IsProblem(422, "request.invalid", "#/gs1CompanyPrefix");
    }

    [Fact]
    public async Task Parcels_WhenABundleIsTooLarge_AreRefusedAndQuotedWithoutShipping()
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        _ = (await shop.Admin.Put("/api/catalog/parcels", new { kinds = new[] { new { code = "box", name = "Box", maxLength = "600 mm", maxLengthAndGirth = "3 m", maxGrams = 31_500 } } })).Ok;

        (await shop.Bench.Post($"/api/orders/{order.Id()}/parcels")).IsProblem(422, "parcel.too-large");
        var price = (await shop.Storefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity = 1 })).Created.At("price");
        Assert.Equal("price.without-shipping", price.Text("warnings/0/code"));
        Assert.DoesNotContain("shipping", price.Texts("lines", "kind"));
    }
}
