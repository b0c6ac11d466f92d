using System.Text.Json;

namespace KitWorks.Api.Tests.Endpoints;

public sealed class PreviewTests(OneShop one) : IClassFixture<OneShop>
{
    [Fact]
    public async Task Preview_WhenTheDomeIs3V58_HasTheFieldsOfTheContract()
    {
        Shape.Holds("""
            { "designId": "…", "engine": "1.0",
              "dimensions": { "heightMm": 0, "lengthMm": 0, "widthMm": 0, "floorAreaM2": 0, "volumeM3": 0, "coverAreaM2": 0 },
              "totals": { "hubs": 0, "struts": 0, "panels": 0, "ties": 0, "tiesWithSpares": 0, "stakes": 0, "massGrams": 0 },
              "strutTypes": [ { "code": "S1", "tag": { "colour": "orange", "hex": "#E69F00", "bands": 1 }, "spacingMm": 0, "cutLengthMm": 0, "chordFactor": 0, "count": 0 } ],
              "hubTypes": [ { "sku": "…", "ways": 6, "degree": 4, "count": 0 } ],
              "tiers": [ { "number": 0, "name": "Foundation", "struts": [ { "code": "S1", "count": 0 } ], "hubs": [ { "ways": 6, "degree": 4, "count": 0 } ], "ties": 0 } ],
              "panelTypes": [ { "code": "P1", "struts": ["S1"], "areaM2": 0, "count": 0 } ],
              "warnings": [ { "code": "…", "detail": "…" } ] }
            """, await Greenhouse());
    }

    /// <summary>Counts: Kenner, Geodesic Math and How to Use It (1976), from memory: 3V at 5/8 has 61 hubs and 30 + 55 + 80 struts.</summary>
    [Fact]
    public async Task Preview_WhenTheDomeIs3V58_CountsWhatTheTablesCount()
    {
        var kit = await Greenhouse();

        Assert.Equal((61, 165, 105, 330), (kit.Int("totals/hubs"), kit.Int("totals/struts"), kit.Int("totals/panels"), kit.Int("totals/ties")));
        Assert.Equal([30, 55, 80], kit.List("strutTypes").Select(t => t.Int("count")));
        Assert.Equal(["S1", "S2", "S3"], kit.Texts("strutTypes", "code"));
        Assert.Equal(["orange", "sky blue", "reddish purple"], kit.Texts("strutTypes", "tag/colour"));
        Assert.Equal([0.34862, 0.40355, 0.41241], kit.List("strutTypes").Select(t => Math.Round(t.Number("chordFactor"), 5)));
        Assert.Equal(347, kit.Int("totals/tiesWithSpares"));
        Assert.Equal(15, kit.Int("totals/stakes"));
        Assert.InRange(kit.Number("dimensions/lengthMm"), 5900, 6000);
    }

    [Theory]
    [InlineData(3, "5/8")]
    [InlineData(2, "1/2")]
    [InlineData(4, "1/2")]
    [InlineData(3, "3/8")]
    [InlineData(6, "1/2")]
    public async Task Preview_WhenAnyDome_TiersAddUpToTheTotals(int frequency, string cut)
    {
        var kit = (await one.Shop.Storefront.Post("/api/kits/preview", new { design = Designs.Of(Designs.Dome(frequency, cut, "6 m")) })).Ok;
        var tiers = kit.List("tiers");

        Assert.Equal(Enumerable.Range(0, tiers.Count), tiers.Select(t => t.Int("number")));
        Assert.Equal(kit.Int("totals/hubs"), tiers.SelectMany(t => t.List("hubs")).Sum(h => h.Int("count")));
        Assert.Equal(kit.Int("totals/hubs"), kit.List("hubTypes").Sum(h => h.Int("count")));
        Assert.Equal(kit.Int("totals/struts"), kit.List("strutTypes").Sum(t => t.Int("count")));
        Assert.Equal(kit.Int("totals/panels"), kit.List("panelTypes").Sum(t => t.Int("count")));
        Assert.Equal(kit.Int("totals/ties"), tiers.Sum(t => t.Int("ties")));
        Assert.Equal(kit.Int("totals/ties"), 2 * kit.Int("totals/struts"));
        Assert.All(kit.List("strutTypes"), type => Assert.Equal(type.Int("count"),
            tiers.SelectMany(t => t.List("struts")).Where(s => s.Text("code") == type.Text("code")).Sum(s => s.Int("count"))));
        Assert.Equal(2 * kit.Int("totals/struts"), kit.List("hubTypes").Sum(h => h.Int("degree") * h.Int("count")));
        Assert.All(kit.List("hubTypes"), h => Assert.InRange(h.Int("degree"), 1, h.Int("ways")));
        Assert.All(kit.List("strutTypes"), t => Assert.Equal(t.Number("spacingMm") - 30, t.Number("cutLengthMm"), 0.26));
    }

    [Fact]
    public async Task Preview_WhenTheSameDesignIsWrittenInAnotherWay_HasTheSameId()
    {
        var id = (await Greenhouse()).Text("designId");

        Assert.Equal(id, (await PreviewOf("5/8", "600 cm")).Text("designId"));
        Assert.Equal(id, (await PreviewOf("rows:5", "6000 mm")).Text("designId"));
        Assert.NotEqual(id, (await PreviewOf("5/8", "6.1 m")).Text("designId"));
    }

    [Fact]
    public async Task Preview_WhenAsked_StoresNothing()
    {
        await using var shop = await OpenShop.Open();
        _ = (await shop.Storefront.Post("/api/kits/preview", new { design = Designs.Greenhouse })).Ok;

        Assert.Empty((await shop.Bench.Get("/api/orders")).Ok.List("items"));
        Assert.Empty((await shop.Bench.Get("/api/stock/stake-450/movements")).Ok.List("items"));
    }

    async Task<JsonElement> Greenhouse() => (await one.Shop.Storefront.Post("/api/kits/preview", new { design = Designs.Greenhouse })).Ok;

    async Task<JsonElement> PreviewOf(string cut, string floor) =>
        (await one.Shop.Storefront.Post("/api/kits/preview", new { design = Designs.Of(Designs.Dome(3, cut, floor), new { layers = 1 }) })).Ok;
}
