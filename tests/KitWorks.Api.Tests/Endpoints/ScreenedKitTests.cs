using System.Text.Json;

namespace KitWorks.Api.Tests.Endpoints;

public sealed class ScreenedKitTests(OneShop one) : IClassFixture<OneShop>
{
    [Fact]
    public async Task Preview_OfADome_CarriesItsScreeningAndARecommendation()
    {
        var kit = (await one.Shop.Storefront.Post("/api/kits/preview", new { design = Designs.Greenhouse })).Ok;

        Shape.Holds("""
            { "loadSet": "garden", "passes": false, "margin": 0, "stakesNeeded": 0, "stakesInKit": 15, "notes": [], "caution": "…",
              "governing": { "kind": "buckling", "loadCase": "…", "loadedHub": null, "at": 0, "strutType": null, "demand": 0, "capacity": 0, "unit": "N", "utilisation": 0 },
              "checks": [{ "kind": "buckling", "loadCase": "…", "loadedHub": null, "at": 0, "strutType": null, "demand": 0, "capacity": 0, "unit": "N", "utilisation": 0 }] }
            """, kit.At("screening"));
        Shape.Holds("""{ "loadSet": "garden", "strutStock": "…", "tie": "…", "isInKit": false, "reason": "…" }""", kit.At("recommendation"));
        Assert.Contains("licensed engineer", kit.Text("screening/caution"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Quote_WhenThePipeIsLeftOut_TakesOneAndSaysWhy()
    {
        var quote = (await one.Shop.Storefront.Post("/api/quotes", new { design = new { shelter = Designs.Dome(3, "5/8", "6 m"), hubSystem = "plate-160" }, quantity = 1 })).Created;

        var advice = quote.At("kit/recommendation");
        Assert.Equal("pvc-42", advice.Text("strutStock"));
        Assert.Contains(quote.List("kit/parts"), p => p.Text("sku") == "pipe-pvc-42");
        Assert.Contains("smallest pipe of the catalog that passes the screening", advice.Text("reason"), StringComparison.Ordinal);
        var again = (await one.Shop.Storefront.Get($"/api/quotes/{quote.Text("id")}")).Ok;
        Assert.Equal(advice.Text("reason"), again.Text("kit/recommendation/reason"));
        Assert.Equal(quote.Number("kit/screening/margin"), again.Number("kit/screening/margin"));
    }

    [Fact]
    public async Task Preview_WhenALoadSetIsNamed_IsScreenedForIt()
    {
        var shelter = Designs.Dome(3, "5/8", "6 m");
        var kit = (await one.Shop.Storefront.Post("/api/kits/preview", new { design = new { shelter, hubSystem = "ring-100", strutStock = "pvc-33", loadSet = "open field" } })).Ok;

        Assert.Equal("open field", kit.Text("screening/loadSet"));
        Assert.Contains("statics.outgrown", kit.Texts("warnings", "code"));
        (await one.Shop.Storefront.Post("/api/kits/preview", new { design = new { shelter, hubSystem = "ring-100", loadSet = "blizzard" } }))
            .IsProblem(422, "design.not-in-catalog", "#/design/loadSet");
    }

    [Fact]
    public async Task Screening_OfTheCatalog_TakesWhatItGives()
    {
        await using var shop = await OpenShop.Open();
        var rules = (await shop.Bench.Get("/api/catalog/screening")).Ok;
        Assert.Equal(["garden", "open field"], rules.Texts("loadSets", "name"));

        _ = (await shop.Admin.SendText(HttpMethod.Put, "/api/catalog/screening", rules.GetRawText())).Ok;
        _ = (await shop.Admin.SendText(HttpMethod.Put, "/api/catalog/screening", """{"loadSets": [{"name": "hall", "personN": 800, "snow": {"groundPa": 1200}}], "criteria": {"bucklingSafety": 3}}""")).Ok;
        Assert.Equal("hall", (await shop.Storefront.Post("/api/kits/preview", new { design = Designs.Greenhouse })).Ok.Text("screening/loadSet"));
    }

    [Theory]
    [InlineData("""{"loadSets": [{"name": "a", "personN": -5}]}""", 422, "statics.factor-invalid", "#/loadSets/0/personN")]
    [InlineData("""{"loadSets": [{"name": "a"}, {"name": "a"}]}""", 422, "catalog.screening-invalid", "#/loadSets/1/name")]
    [InlineData("""{"loadSets": [{"name": "a", "snow": {"depth": 1}}]}""", 400, "request.unknown-field", "#/loadSets/0/snow/depth")]
    [InlineData("""{"loadSets": [{"name": "a", "snow": {}}]}""", 400, "request.malformed", null)]
    [InlineData("""{"loadSets": null}""", 400, "request.malformed", "#/loadSets")]
    [InlineData("""{"loadSets": [null]}""", 400, "request.malformed", "#/loadSets")]
    [InlineData("""{"criteria": null}""", 400, "request.malformed", "#/criteria")]
    [InlineData("""{"criteria": {"tieRatedN": 500}}""", 422, "catalog.screening-invalid", "#/criteria/tieRatedN")]
    public async Task Screening_WhenARuleIsWrong_NamesIt(string body, int status, string code, string? pointer) =>
        (await one.Shop.Admin.SendText(HttpMethod.Put, "/api/catalog/screening", body)).IsProblem(status, code, pointer);
}
