using UglyToad.PdfPig;

namespace KitWorks.Shop.Tests.Printing;

public sealed class GetShelfLabelsTests(OneShop one) : IClassFixture<OneShop>
{
    [Fact]
    public async Task BinLabels_HaveOneForEachBinOfTheStock()
    {
        var bench = one.Shop.Bench;
        var bins = (await bench.Get("/api/stock?limit=200")).Ok.List("items").Select(i => i.Text("bin")).Where(b => b.Length > 0).Distinct().ToList();
        Assert.NotEmpty(bins);

        using var pdf = PdfDocument.Open((await bench.Get("/api/stock/bin-labels.pdf")).Is(200).Bytes);
        using var single = PdfDocument.Open((await bench.Get($"/api/stock/bin-labels.pdf?bin={bins[0]}&sheet=a4&startAt=8")).Is(200).Bytes);

        Assert.Equal(bins.Count, pdf.NumberOfPages);
        foreach (var bin in bins) Assert.Contains(pdf.GetPages(), p => p.Text.Contains($"BIN-{bin}", StringComparison.Ordinal));
        Assert.Equal(1, single.NumberOfPages);
        Assert.True(single.GetPage(1).Letters.All(l => l.StartBaseLine.X > single.GetPage(1).Width / 2));
        (await bench.Get("/api/stock/bin-labels.pdf?bin=NOWHERE")).IsProblem(404, "bin.unknown");
        (await one.Shop.Storefront.Get("/api/stock/bin-labels.pdf")).Is(403);
    }

    [Fact]
    public async Task RemnantLabels_HaveOneForEachOffcutWorthKeeping()
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var patterns = (await shop.Bench.Get($"/api/orders/{order.Id()}/cut-plan")).Ok.List("patterns").ToList();
        var kept = patterns.Where(p => p.Number("remnantMm") >= 300).Sum(p => p.Int("count"));
        Assert.NotEqual(0, kept);

        using var pdf = PdfDocument.Open((await shop.Bench.Get($"/api/orders/{order.Id()}/remnant-labels.pdf")).Is(200).Bytes);

        Assert.Equal(kept, pdf.NumberOfPages);
        Assert.Equal(kept, pdf.GetPages().Select(p => p.Text).Distinct().Count());
        (await shop.Storefront.Get($"/api/orders/{order.Id()}/remnant-labels.pdf")).Is(403);
    }
}
