namespace KitWorks.Shop.Tests.Catalog;

public sealed class PutCatalogTests(OneShop one) : IClassFixture<OneShop>
{
    public static TheoryData<string> SectionNames => ["hub-systems", "strut-stocks", "ties", "covers", "prices", "palette", "workshop"];

    [Theory]
    [MemberData(nameof(SectionNames))]
    public async Task PutCatalog_WhenItPutsWhatItGot_ChangesNothing(string section)
    {
        var shop = one.Shop;
        var path = $"/api/catalog/{section}";
        var got = (await shop.Bench.Get(path)).Is(200).Text;

        var put = (await shop.Admin.SendText(HttpMethod.Put, path, got)).Is(200).Text;

        Assert.Equal(got, put);
        Assert.Equal(got, (await shop.Bench.Get(path)).Text);
    }

    [Fact]
    public async Task PutCatalog_WhenAHubSystemIsNew_CanBeOrderedAndIsInStock()
    {
        await using var shop = await OpenShop.Open();
        const string star = """
            { "code": "star-80", "name": "Star hub 80", "allowance": "20 mm", "tiesPerEnd": 3, "tieSku": "tie-n120",
              "stake": { "sku": "stake-450", "name": "Ground stake, 450 mm", "perBaseHub": 2, "massGrams": 410 },
              "hubs": [{ "sku": "hub-s80-6", "name": "Star hub 80, six ways", "ways": 6, "massGrams": 70 }] }
            """;
        var systems = (await shop.Bench.Get("/api/catalog/hub-systems")).Text;

        _ = (await shop.Admin.SendText(HttpMethod.Put, "/api/catalog/hub-systems", $"{systems[..^1]}, {star}]")).Ok;

        var kit = (await shop.Storefront.Post("/api/kits/preview", new { design = Designs.Of(Designs.Dome(2, "1/2", "3600 mm"), hubSystem: "star-80") })).Ok;
        Assert.Equal((26, 65, 390, 20), (kit.Int("totals/hubs"), kit.Int("totals/struts"), kit.Int("totals/ties"), kit.Int("totals/stakes")));
        Assert.Equal(["hub-s80-6"], kit.Texts("hubTypes", "sku").Distinct());
        Assert.Equal(("hub", 0), ((await shop.Bench.Item("hub-s80-6")).Text("kind"), (await shop.Bench.Item("hub-s80-6")).Int("onHand")));
    }

    [Theory]
    [InlineData("palette", "{}", 400, "request.malformed", "#/colours")]
    [InlineData("palette", """{"colours": []}""", 422, "request.invalid", "#/colours")]
    [InlineData("palette", """{"colours": null}""", 400, "request.malformed", "#/colours")]
    [InlineData("palette", """{"colours": [null]}""", 400, "request.malformed", "#/colours")]
    [InlineData("palette", """{"colours": [{"name": "red", "hex": "red"}]}""", 422, "request.invalid", "#/colours")]
    [InlineData("palette", """{"colours": [{"name": null, "hex": "#FF0000"}]}""", 400, "request.malformed", "#/colours/0/name")]
    [InlineData("hub-systems", "[null]", 400, "request.malformed", null)]
    [InlineData("hub-systems", "null", 400, "request.malformed", null)]
    [InlineData("hub-systems", "{}", 400, "request.malformed", null)]
    [InlineData("hub-systems", """[{"code": "x"}]""", 400, "request.malformed", "#/0/name")]
    [InlineData("ties", "[]", 422, "catalog.unknown-tie", null)]
    [InlineData("ties", """[{"sku": "t", "name": "T", "ratedNewtons": 1, "massGrams": -5}]""", 422, "request.invalid", "#/0/massGrams")]
    [InlineData("ties", """[{"sku": "", "name": "T", "ratedNewtons": 1, "massGrams": 5}]""", 422, "request.invalid", "#/0/sku")]
    [InlineData("covers", """[{"code": "c", "sku": "c", "name": "C", "seamAllowance": 3, "gramsPerM2": 1}]""", 400, "request.malformed", "#/0/seamAllowance")]
    [InlineData("prices", """{"currency": "dollars", "unitCosts": {}}""", 422, "request.invalid", "#/currency")]
    [InlineData("prices", """{"currency": "USD"}""", 400, "request.malformed", "#/unitCosts")]
    [InlineData("prices", """{"currency": "USD", "unitCosts": {"stake-450": -1}}""", 422, "request.invalid", "#/unitCosts")]
    [InlineData("prices", """{"currency": "USD", "unitCosts": {"stake-450": 79228162514264337593543950335}}""", 422, "request.invalid", "#/unitCosts")]
    [InlineData("workshop", """{"bundlePieces": 0}""", 422, "request.invalid", "#/bundlePieces")]
    [InlineData("workshop", """{"sawStep": "0 mm"}""", 422, "request.invalid", "#/sawStep")]
    [InlineData("workshop", """{"leadDays": 100000000}""", 422, "request.invalid", "#/leadDays")]
    public async Task PutCatalog_WhenASectionIsWrong_NamesTheField(string section, string body, int status, string code, string? pointer)
    {
        var shop = one.Shop;
        var path = $"/api/catalog/{section}";
        var before = (await shop.Bench.Get(path)).Text;

        (await shop.Admin.SendText(HttpMethod.Put, path, body)).IsProblem(status, code, pointer);

        Assert.Equal(before, (await shop.Bench.Get(path)).Text);
    }

    [Theory]
    [InlineData("\"tieSku\": \"tie-n120\"", "\"tieSku\": \"string\"", "catalog.unknown-tie", "#/0/tieSku")]
    [InlineData("\"code\": \"plate-160\"", "\"code\": \"Plate 160\"", "request.invalid", "#/1/code")]
    [InlineData("\"code\": \"plate-160\"", "\"code\": \"ring-100\"", "request.invalid", "#")]
    [InlineData("\"tiesPerEnd\": 2", "\"tiesPerEnd\": 9", "request.invalid", "#/1/tiesPerEnd")]
    [InlineData("\"ways\": 4", "\"ways\": 5", "request.invalid", "#/1/hubs")]
    [InlineData("\"ways\": 4", "\"ways\": 1", "request.invalid", "#/1/hubs/0/ways")]
    [InlineData("\"massGrams\": 232", "\"massGrams\": -1", "request.invalid", "#/1/hubs/0/massGrams")]
    [InlineData("\"perBaseHub\": 2", "\"perBaseHub\": -2", "request.invalid", "#/1/stake/perBaseHub")]
    [InlineData("\"allowance\": \"42 mm\"", "\"allowance\": \"42 m\"", "request.invalid", "#/1/allowance")]
    public async Task PutCatalog_WhenAHubSystemIsWrong_NamesTheField(string right, string wrong, string code, string pointer)
    {
        var shop = one.Shop;
        var systems = (await shop.Bench.Get("/api/catalog/hub-systems")).Text.Replace("\":", "\": ", StringComparison.Ordinal);
        Assert.Contains(right, systems, StringComparison.Ordinal);

        (await shop.Admin.SendText(HttpMethod.Put, "/api/catalog/hub-systems", systems.Replace(right, wrong, StringComparison.Ordinal))).IsProblem(422, code, pointer);
    }

    [Fact]
    public async Task Preview_WhenTheShopHasNoCatalog_SaysSo()
    {
        await using var shop = await OpenShop.Open();
        await shop.Database.Sql("DELETE FROM catalog_sections");

        (await shop.Storefront.Post("/api/kits/preview", new { design = Designs.SmallDome })).IsProblem(409, "catalog.empty");
    }
}
