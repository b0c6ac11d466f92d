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

    [Fact]
    public async Task CutPlan_WhenTheOrderIsForTwoKits_CutsBothFromTheStockThatIsReserved()
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.SmallDome, quantity: 2)).Created;
        var kit = (await shop.Bench.Get($"/api/orders/{order.Id()}/kit")).Ok;
        var plan = (await shop.Bench.Get($"/api/orders/{order.Id()}/cut-plan")).Ok;

        // 65 struts by the closed form of a 2V half sphere of class I: counted, not taken from the kit.
        Assert.Equal(2 * 65, plan.List("patterns").Sum(p => p.Int("count") * p.List("cuts").Sum(c => c.Int("count"))));
        foreach (var used in plan.List("stockLengths"))
        {
            var reserved = 2 * kit.List("parts").Where(p => p.Text("sku") == used.Text("sku")).Sum(p => p.Int("quantity"));
            Assert.Equal(reserved, used.Int("count"));
            Assert.Equal(reserved, plan.List("patterns").Where(p => p.Text("sku") == used.Text("sku")).Sum(p => p.Int("count")));
        }
        var kept = plan.List("patterns").Where(p => p.Number("remnantMm") >= 300).Sum(p => p.Int("count"));
        using var labels = PdfDocument.Open((await shop.Bench.Get($"/api/orders/{order.Id()}/remnant-labels.pdf")).Is(200).Bytes);
        Assert.Equal(kept, labels.NumberOfPages);

        using var sheet = PdfDocument.Open((await shop.Bench.Get($"/api/orders/{order.Id()}/cut-plan.pdf")).Is(200).Bytes);
        var words = string.Join(' ', sheet.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
        Assert.Contains("for all 2 kits", words, StringComparison.Ordinal);
        foreach (var used in plan.List("stockLengths")) Assert.Contains($"{used.Int("count")} × {used.Text("sku")}", words, StringComparison.Ordinal);
        foreach (var (pattern, i) in plan.List("patterns").Select((p, i) => (p, i)))
            Assert.Contains($"pattern {i + 1}: 2 kits × {pattern.Int("count") / 2}", words, StringComparison.Ordinal);
    }
}
