using System.Text;

namespace KitWorks.Api.Tests.Http;

/// <summary>Whatever is sent, the answer names the field and the remedy. <see cref="Answer"/> sees to it that no answer is a 5xx or shows types.</summary>
public sealed class BadInputTests(OneShop one) : IClassFixture<OneShop>
{
    [Theory]
    [InlineData("frequency", "0", 422, "shelter.frequency", "#/design/shelter/frequency")]
    [InlineData("frequency", "17", 422, "shelter.frequency", "#/design/shelter/frequency")]
    [InlineData("frequency", "-3", 422, "shelter.frequency", "#/design/shelter/frequency")]
    [InlineData("frequency", "2147483647", 422, "shelter.frequency", "#/design/shelter/frequency")]
    [InlineData("frequency", "2147483648", 400, "request.malformed", "#/design/shelter/frequency")]
    [InlineData("frequency", "3.5", 400, "request.malformed", "#/design/shelter/frequency")]
    [InlineData("frequency", "\"3\"", 400, "request.malformed", "#/design/shelter/frequency")]
    [InlineData("frequency", "null", 422, "shelter.frequency", "#/design/shelter/frequency")]
    [InlineData("cut", "\"4/7\"", 422, "shelter.cut-invalid", "#/design/shelter/cut")]
    [InlineData("cut", "\"rows:99\"", 422, "shelter.cut-invalid", "#/design/shelter/cut")]
    [InlineData("cut", "\"most of it\"", 422, "shelter.cut-invalid", "#/design/shelter/cut")]
    [InlineData("cut", "\"5/0\"", 422, "shelter.cut-invalid", "#/design/shelter/cut")]
    [InlineData("cut", "null", 422, "shelter.cut-invalid", "#/design/shelter/cut")]
    [InlineData("kind", "\"yurt\"", 422, "request.invalid", "#/design/shelter/kind")]
    [InlineData("solid", "\"cube\"", 422, "request.invalid", "#/design/shelter/solid")]
    [InlineData("class", "4", 422, "shelter.class", "#/design/shelter/class")]
    [InlineData("size", "{}", 422, "shelter.size", "#/design/shelter/size")]
    [InlineData("size", "{\"height\": \"3 m\", \"radius\": \"3 m\"}", 422, "shelter.size", "#/design/shelter/size")]
    [InlineData("size", "{\"floorDiameter\": 6}", 400, "request.malformed", "#/design/shelter/size/floorDiameter")]
    [InlineData("size", "{\"floorDiameter\": \"6\"}", 400, "request.malformed", "#/design/shelter/size/floorDiameter")]
    [InlineData("size", "{\"floorDiameter\": \"6 kg\"}", 400, "request.malformed", "#/design/shelter/size/floorDiameter")]
    [InlineData("size", "{\"floorDiameter\": \"6 parsecs\"}", 400, "request.malformed", "#/design/shelter/size/floorDiameter")]
    [InlineData("size", "{\"floorDiameter\": \"NaN m\"}", 400, "request.malformed", "#/design/shelter/size/floorDiameter")]
    [InlineData("size", "{\"floorDiameter\": \"∞ m\"}", 400, "request.malformed", "#/design/shelter/size/floorDiameter")]
    [InlineData("size", "{\"floorDiameter\": \"-6 m\"}", 400, "request.malformed", "#/design/shelter/size/floorDiameter")]
    [InlineData("size", "{\"floorDiameter\": \"1e400 m\"}", 400, "request.malformed", "#/design/shelter/size/floorDiameter")]
    [InlineData("size", "{\"floorDiameter\": \"6,5 m\"}", 400, "request.malformed", "#/design/shelter/size/floorDiameter")]
    [InlineData("size", "{\"floorDiameter\": \"1001 m\"}", 400, "request.malformed", "#/design/shelter/size/floorDiameter")]
    [InlineData("size", "{\"floorDiameter\": \"\"}", 400, "request.malformed", "#/design/shelter/size/floorDiameter")]
    [InlineData("size", "{\"floorDiameter\": null}", 422, "shelter.size", "#/design/shelter/size")]
    [InlineData("size", "{\"floorDiameter\": \"0 m\"}", 422, "shelter.size", "#/design/shelter/size/floorDiameter")]
    [InlineData("size", "{\"floorDiameter\": \"10 mm\"}", 422, null, null)]
    [InlineData("size", "{\"fits\": {}}", 422, "shelter.size", null)]
    [InlineData("size", "[]", 400, "request.malformed", "#/design/shelter/size")]
    [InlineData("flatBase", "\"yes\"", 400, "request.malformed", "#/design/shelter/flatBase")]
    [InlineData("fold", "6", 422, "request.invalid", "#/design/shelter/fold")]
    [InlineData("colour", "\"red\"", 400, "request.unknown-field", "#/design/shelter/colour")]
    [InlineData("lattice", "[2, 1]", 422, "shelter.lattice", "#/design/shelter/lattice")]
    public async Task Preview_WhenAFieldOfTheShelterIsWrong_NamesIt(string field, string value, int status, string? code, string? pointer)
    {
        var shelter = new Dictionary<string, string>
        {
            ["kind"] = "\"dome\"", ["class"] = "1", ["frequency"] = "3", ["cut"] = "\"5/8\"", ["size"] = "{\"floorDiameter\": \"6 m\"}",
            [field] = value,
        };
        var design = $$"""{"shelter": {{Written(shelter)}}, "hubSystem": "ring-100", "strutStock": "pvc-33"}""";

        var answer = await one.Shop.Storefront.PostText("/api/kits/preview", $$"""{"design": {{design}}}""");

        if (code is null) answer.Is(status);
        else answer.IsProblem(status, code, pointer);
    }

    [Fact]
    public async Task Preview_WhenTheCutDoesNotExist_ListsThoseThatDo()
    {
        var problem = (await one.Shop.Storefront.Post("/api/kits/preview", new { design = Designs.Of(Designs.Dome(3, "1/2", "6 m")) }))
            .IsProblem(422, "shelter.cut-invalid", "#/design/shelter/cut");

        Assert.Contains("3/8", problem.Text("detail"), StringComparison.Ordinal);
        Assert.Contains("5/8", problem.Text("detail"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("hubSystem", "\"ring-999\"", 422, "design.not-in-catalog", "#/design/hubSystem")]
    [InlineData("hubSystem", "null", 422, "request.invalid", "#/design/hubSystem")]
    [InlineData("strutStock", "\"oak\"", 422, "design.not-in-catalog", "#/design/strutStock")]
    [InlineData("cover", "{\"layers\": 0}", 422, "design.layers", "#/design/cover/layers")]
    [InlineData("cover", "{\"layers\": 5}", 422, "design.layers", "#/design/cover/layers")]
    [InlineData("cover", "{\"layers\": 1, \"material\": \"silk\"}", 422, "design.not-in-catalog", "#/design/cover/material")]
    [InlineData("maxStrutTypes", "0", 422, "request.invalid", "#/design/maxStrutTypes")]
    [InlineData("maxStrutTypes", "2", 422, "design.strut-types", "#/design/maxStrutTypes")]
    [InlineData("shelter", "null", 422, "request.invalid", "#/design/shelter")]
    [InlineData("shelter", "\"dome\"", 400, "request.malformed", "#/design/shelter")]
    [InlineData("price", "1", 400, "request.unknown-field", "#/design/price")]
    public async Task Preview_WhenAFieldOfTheDesignIsWrong_NamesIt(string field, string value, int status, string code, string pointer)
    {
        var design = new Dictionary<string, string>
        {
            ["shelter"] = """{"kind": "dome", "frequency": 3, "cut": "5/8", "size": {"floorDiameter": "6 m"}}""",
            ["hubSystem"] = "\"ring-100\"", ["strutStock"] = "\"pvc-33\"", [field] = value,
        };

        (await one.Shop.Storefront.PostText("/api/kits/preview", $$"""{"design": {{Written(design)}} }"""))
            .IsProblem(status, code, pointer);
    }

    [Theory]
    [InlineData("{\"design\": null}", "request.invalid", "#/design")]
    [InlineData("{}", "request.invalid", "#/design")]
    [InlineData("null", "request.malformed", null)]
    [InlineData("", "request.malformed", null)]
    [InlineData("[]", "request.malformed", null)]
    [InlineData("{\"design\": {", "request.malformed", null)]
    [InlineData("{\"design\": {}} {}", "request.malformed", null)]
    [InlineData("not json", "request.malformed", null)]
    [InlineData("{'design': {}}", "request.malformed", null)]
    [InlineData("{\"design\": {}, \"design\": {}}", "request.malformed", null)]
    [InlineData("{\"designs\": {}}", "request.unknown-field", "#/designs")]
    [InlineData("{\"design\": {}, // as agreed\n}", "request.malformed", null)]
    public async Task Preview_WhenTheBodyIsMalformed_SaysWhere(string body, string code, string? pointer) =>
        (await one.Shop.Storefront.PostText("/api/kits/preview", body)).IsProblem(400, code, pointer);

    [Fact]
    public async Task Preview_WhenTheBodyIsNestedTooDeep_IsRefused()
    {
        var deep = new string('[', 1000) + new string(']', 1000);

        (await one.Shop.Storefront.PostText("/api/kits/preview", $$"""{"design": {{deep}}}""")).IsProblem(400, "request.malformed");
        (await one.Shop.Storefront.PostText("/api/kits/preview", "{\"design\": {\"shelter\": {\"size\": {\"fits\": " + deep + "}}}}")).IsProblem(400, "request.malformed");
    }

    [Theory]
    [InlineData("/api/kits/preview", null)]
    [InlineData("/api/orders", "big-1")]
    public async Task Post_WhenTheBodyHas10MB_IsTooLarge(string path, string? once)
    {
        var body = new StringBuilder("{\"design\": \"").Append('x', 10 * 1024 * 1024).Append("\"}").ToString();

        (await one.Shop.Storefront.PostText(path, body, once)).IsProblem(413, "request.too-large");
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData(null)]
    public async Task Post_WhenTheMediaTypeIsWrong_AsksForJson(string? mediaType) =>
        (await one.Shop.Storefront.SendText(HttpMethod.Post, "/api/kits/preview", """{"design": {}}""", mediaType)).IsProblem(415, "request.media-type");

    [Theory]
    [InlineData("quantity", "0", 422, "request.invalid", "#/quantity")]
    [InlineData("quantity", "101", 422, "request.invalid", "#/quantity")]
    [InlineData("quantity", "-1", 422, "request.invalid", "#/quantity")]
    [InlineData("quantity", "1.5", 400, "request.malformed", "#/quantity")]
    [InlineData("quoteId", "\"01970000-0000-7000-8000-000000000000\"", 422, "request.invalid", "#/quoteId")]
    [InlineData("quoteId", "\"seventeen\"", 400, "request.malformed", "#/quoteId")]
    [InlineData("design", "null", 422, "request.invalid", "#/design")]
    [InlineData("whenShort", "\"later\"", 400, "request.malformed", "#/whenShort")]
    [InlineData("whenShort", "1", 400, "request.malformed", "#/whenShort")]
    [InlineData("customer", "null", 422, "request.invalid", "#/customer/name")]
    [InlineData("customer", "{\"name\": \" \"}", 422, "request.invalid", "#/customer/name")]
    [InlineData("customer", "{\"name\": \"A\", \"email\": \"nobody\"}", 422, "request.invalid", "#/customer/email")]
    [InlineData("discount", "90", 400, "request.unknown-field", "#/discount")]
    public async Task PlaceOrder_WhenAFieldIsWrong_NamesIt(string field, string value, int status, string code, string pointer)
    {
        const string design = """{"shelter": {"kind": "dome", "frequency": 2, "cut": "1/2", "size": {"height": "2 m"}}, "hubSystem": "ring-100", "strutStock": "pvc-33"}""";
        var order = new Dictionary<string, string> { ["design"] = design, ["quantity"] = "1", ["customer"] = """{"name": "A. Customer"}""" };
        order[field] = value;

        (await one.Shop.Storefront.PostText("/api/orders", Written(order), once: Guid.NewGuid().ToString()))
            .IsProblem(status, code, pointer);
    }

    [Theory]
    [InlineData("/api/stock/receipts", """{"lines": [{"sku": "stake-450", "quantity": 0}], "reference": "r"}""", 422, "request.invalid", "#/lines/0/quantity")]
    [InlineData("/api/stock/receipts", """{"lines": [{"sku": "stake-450", "quantity": 3000000}], "reference": "r"}""", 422, "request.invalid", "#/lines/0/quantity")]
    [InlineData("/api/stock/receipts", """{"lines": [{"sku": "no-such", "quantity": 1}], "reference": "r"}""", 422, "stock.unknown-sku", "#/lines/0/sku")]
    [InlineData("/api/stock/receipts", """{"lines": [{"sku": null, "quantity": 1}], "reference": "r"}""", 400, "request.malformed", "#/lines/0/sku")]
    [InlineData("/api/stock/receipts", """{"lines": [{"quantity": 1}], "reference": "r"}""", 400, "request.malformed", "#/lines/0/sku")]
    [InlineData("/api/stock/receipts", """{"lines": [{"sku": "stake-450"}], "reference": "r"}""", 400, "request.malformed", "#/lines/0/quantity")]
    [InlineData("/api/stock/counts", """{"lines": [{"sku": "stake-450"}], "reason": "r"}""", 400, "request.malformed", "#/lines/0/counted")]
    [InlineData("/api/stock/receipts", """{"lines": [], "reference": "r"}""", 422, "request.invalid", "#/lines")]
    [InlineData("/api/stock/receipts", """{"lines": [null], "reference": "r"}""", 400, "request.malformed", "#/lines")]
    [InlineData("/api/stock/receipts", """{"reference": "r"}""", 422, "request.invalid", "#/lines")]
    [InlineData("/api/stock/receipts", """{"lines": [{"sku": "stake-450", "quantity": 1}]}""", 422, "request.invalid", "#/reference")]
    [InlineData("/api/stock/counts", """{"lines": [null], "reason": "r"}""", 400, "request.malformed", "#/lines")]
    [InlineData("/api/stock/counts", """{"lines": [{"sku": "no-such", "counted": 1}], "reason": "r"}""", 422, "stock.unknown-sku", "#/lines/0/sku")]
    [InlineData("/api/stock/counts", """{"lines": [{"sku": "stake-450", "counted": -1}], "reason": "r"}""", 422, "request.invalid", "#/lines/0/counted")]
    [InlineData("/api/stock/counts", """{"lines": [{"sku": "stake-450", "counted": 1}, {"sku": "stake-450", "counted": 2}], "reason": "r"}""", 422, "request.invalid", "#/lines")]
    [InlineData("/api/stock/adjustments", """{"sku": "no-such", "quantity": 1, "reason": "r"}""", 422, "stock.unknown-sku", "#/sku")]
    [InlineData("/api/stock/adjustments", """{"sku": "stake-450", "quantity": 0, "reason": "r"}""", 422, "request.invalid", "#/quantity")]
    [InlineData("/api/stock/adjustments", """{"sku": "stake-450", "quantity": 1}""", 422, "request.invalid", "#/reason")]
    [InlineData("/api/scans", """{"code": "", "station": "b"}""", 422, "request.invalid", "#/code")]
    [InlineData("/api/scans", """{"code": "1001B0011"}""", 422, "request.invalid", "#/station")]
    [InlineData("/api/scans", """{"code": "hello", "station": "b"}""", 422, "bundle.code", "#/code")]
    [InlineData("/api/cut-plans/preview", """{"pieces": [null], "stock": [null], "remnants": [null]}""", 400, "request.malformed", "#/pieces")]
    [InlineData("/api/cut-plans/preview", """{"pieces": [{"cutLength": "1 m", "count": 0}], "stock": [{"length": "3 m"}]}""", 422, "request.invalid", "#/pieces/0/count")]
    [InlineData("/api/cut-plans/preview", """{"pieces": [{"cutLength": 1000, "count": 1}], "stock": [{"length": "3 m"}]}""", 400, "request.malformed", "#/pieces/0/cutLength")]
    [InlineData("/api/cut-plans/preview", """{"pieces": [{"cutLength": "1 m", "count": 1}], "stock": [{"length": "3 m", "cost": 5}]}""", 400, "request.malformed", "#/stock/0/cost")]
    public async Task Post_WhenAFieldIsWrong_NamesIt(string path, string body, int status, string code, string pointer) =>
        (await one.Shop.Bench.PostText(path, body)).IsProblem(status, code, pointer);

    static string Written(Dictionary<string, string> fields) => $"{{{string.Join(", ", fields.Select(f => $"\"{f.Key}\": {f.Value}"))}}}";
}
