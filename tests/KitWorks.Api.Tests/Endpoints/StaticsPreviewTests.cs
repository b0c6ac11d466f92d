using System.Text.Json;
using System.Text.Json.Nodes;

namespace KitWorks.Api.Tests.Endpoints;

public sealed class StaticsPreviewTests(OneShop one) : IClassFixture<OneShop>
{
    /// <summary>One-inch schedule 40 PVC: ASTM D1785 (33.40 mm by 3.38 mm, 0.32 lb/ft); modulus as the trade takes it.</summary>
    static object Pvc => new { areaMm2 = 318.6, secondMomentMm4 = 36355, modulusMPa = 2900, massKgPerM = 0.476 };

    static JsonNode Body(string change = "{}")
    {
        var body = JsonSerializer.SerializeToNode(new
        {
            shelter = Designs.Dome(3, "5/8", "6 m"), section = Pvc, supports = "pinned",
            loads = new[] { new { node = 0, xN = 0.0, yN = 0.0, zN = -1000.0 } }, selfWeight = false,
        })!;
        foreach (var (field, value) in JsonNode.Parse(change)!.AsObject()) body[field] = value?.DeepClone();
        return body;
    }

    async Task<JsonElement> Ok(string change = "{}") => (await one.Shop.Storefront.Post("/api/statics/preview", Body(change))).Ok;

    [Fact]
    public async Task Preview_OfALoadedDome_HasTheFieldsOfTheContractAndBalances()
    {
        var answer = await Ok();

        Shape.Holds("""
            { "mechanisms": 0, "members": [{"strut": 0, "forceN": 0, "eulerFactor": null}], "displacements": [{"node": 0, "xMm": 0, "yMm": 0, "zMm": 0}],
              "reactions": [{"node": 0, "xN": 0, "yN": 0, "zN": 0}], "caution": "…" }
            """, answer);
        Assert.Equal((0, 165, 61, 15), (answer.Int("mechanisms"), answer.List("members").Count, answer.List("displacements").Count, answer.List("reactions").Count));
        Assert.Equal(1000, answer.List("reactions").Sum(r => r.Number("zN")), 1e-6);
        Assert.Equal(0, answer.List("reactions").Sum(r => r.Number("xN")), 1e-6);
        Assert.Contains("licensed engineer", answer.Text("caution"), StringComparison.Ordinal);
        // The five struts of the crown bear the load alike, by symmetry, and press.
        var crown = answer.List("members").Take(5).Select(m => m.Number("forceN")).ToList();
        Assert.All(crown, f => Assert.Equal(crown[0], f, 1e-6));
        Assert.True(crown[0] < 0);
    }

    /// <summary>Euler's load π²EI/L² (any mechanics handbook), with L from the frame.</summary>
    [Fact]
    public async Task Preview_GivesEulersLoadOverTheCompression()
    {
        var frame = (await one.Shop.Storefront.Post("/api/frames", new { shelter = Designs.Dome(3, "5/8", "6 m") })).Ok;
        var lengths = frame.List("struts").ToDictionary(s => s.Int("id"), s => s.Number("spacingMm"));

        foreach (var member in (await Ok()).List("members"))
        {
            var force = member.Number("forceN");
            if (force > -1e-3) continue;
            var euler = Math.PI * Math.PI * 2900 * 36355 / Math.Pow(lengths[member.Int("strut")], 2);
            Assert.Equal(1, member.Number("eulerFactor") * -force / euler, 1e-6);
        }
    }

    [Fact]
    public async Task Preview_WithSelfWeight_CarriesTheStrutsWeight()
    {
        var frame = (await one.Shop.Storefront.Post("/api/frames", new { shelter = Designs.Dome(3, "5/8", "6 m") })).Ok;
        var metres = frame.List("struts").Sum(s => s.Number("spacingMm")) / 1000;

        var answer = await Ok("""{"selfWeight": true, "loads": []}""");

        Assert.Equal(metres * 0.476 * 9.80665, answer.List("reactions").Sum(r => r.Number("zN")), 0.001);
    }

    [Fact]
    public async Task Preview_WhenTheBaseSlides_OnlyHoldsUp()
    {
        var answer = await Ok("""{"supports": "sliding"}""");

        Assert.All(answer.List("reactions"), r => Assert.Equal(0, Math.Abs(r.Number("xN")) + Math.Abs(r.Number("yN")), 1e-6));
    }

    [Fact]
    public async Task Preview_OfAMechanism_SaysInPlainWordsWhatIsLoose()
    {
        var frame = (await one.Shop.Storefront.Post("/api/frames", new { shelter = Designs.Dome(3, "5/8", "6 m") })).Ok;
        var crown = frame.List("struts").Where(s => s.Int("from") == 0).Select(s => s.Int("id")).Skip(2);

        var answer = await Ok($$"""{"without": [{{string.Join(',', crown)}}]}""");

        Assert.True(answer.Int("mechanisms") > 0);
        Assert.Contains("Hub 0 ", answer.Text("explanation"), StringComparison.Ordinal);
        Assert.Contains("too few struts", answer.Text("explanation"), StringComparison.Ordinal);
        Assert.Empty(answer.List("members"));
        Assert.Empty(answer.List("displacements"));
        Assert.Empty(answer.List("reactions"));
        Assert.Contains("licensed engineer", answer.Text("caution"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{"shelter": null}""", 422, "request.invalid", "#/shelter")]
    [InlineData("""{"shelter": {"kind": "dome", "frequency": 99, "cut": "1/2", "size": {"radius": "3 m"}}}""", 422, "shelter.frequency", "#/shelter/frequency")]
    [InlineData("""{"section": null}""", 422, "request.invalid", "#/section")]
    [InlineData("""{"section": {"areaMm2": 318.6, "secondMomentMm4": 36355}}""", 422, "request.invalid", "#/section/modulusMPa")]
    [InlineData("""{"section": {"areaMm2": 0, "secondMomentMm4": 36355, "modulusMPa": 2900}}""", 422, "statics.section-invalid", "#/section/areaMm2")]
    [InlineData("""{"section": {"areaMm2": "much", "secondMomentMm4": 36355, "modulusMPa": 2900}}""", 400, "request.malformed", "#/section/areaMm2")]
    [InlineData("""{"section": {"areaMm2": 1e-300, "secondMomentMm4": 36355, "modulusMPa": 2900}}""", 422, "statics.section-invalid", "#/section/areaMm2")]
    [InlineData("""{"section": {"areaMm2": 1e999, "secondMomentMm4": 36355, "modulusMPa": 2900}}""", 422, "statics.section-invalid", "#/section/areaMm2")]
    [InlineData("""{"section": {"areaMm2": 318.6, "secondMomentMm4": 36355, "modulusMPa": 2900, "colour": 1}}""", 400, "request.unknown-field", "#/section/colour")]
    [InlineData("""{"supports": null}""", 422, "request.invalid", "#/supports")]
    [InlineData("""{"supports": "glued"}""", 422, "request.invalid", "#/supports")]
    [InlineData("""{"loads": null}""", 422, "request.invalid", "#/loads")]
    [InlineData("""{"loads": [null]}""", 400, "request.malformed", "#/loads")]
    [InlineData("""{"loads": [{"zN": -1}]}""", 422, "request.invalid", "#/loads/0/node")]
    [InlineData("""{"loads": [{"node": 61, "zN": -1}]}""", 422, "statics.load-invalid", "#/loads/0/node")]
    [InlineData("""{"loads": [{"node": 0, "zN": -1e12}]}""", 422, "statics.load-invalid", "#/loads/0/zN")]
    [InlineData("""{"selfWeight": true, "section": {"areaMm2": 318.6, "secondMomentMm4": 36355, "modulusMPa": 2900}}""", 422, "request.invalid", "#/section/massKgPerM")]
    [InlineData("""{"without": [165]}""", 422, "statics.structure-invalid", "#/without/0")]
    [InlineData("""{"shelter": {"kind": "dome", "frequency": 2, "cut": "1/1", "size": {"radius": "3 m"}}}""", 422, null, null)]
    public async Task Preview_WhenAFieldIsWrong_NamesIt(string change, int status, string? code, string? pointer)
    {
        var answer = await one.Shop.Storefront.PostText("/api/statics/preview", Body(change).ToJsonString().Replace("1E+999", "1e999", StringComparison.Ordinal));

        if (code is null) answer.Is(status);
        else answer.IsProblem(status, code, pointer);
    }

    static JsonObject Picture(string change = "{}")
    {
        var body = Body(change);
        var shelter = body["shelter"]!.DeepClone();
        body.AsObject().Remove("shelter");
        return new JsonObject { ["shelter"] = shelter, ["view"] = "iso", ["forces"] = body };
    }

    [Fact]
    public async Task Drawing_WithForces_ShowsThemByColour()
    {
        var answer = (await one.Shop.Storefront.Post("/api/drawings", Picture())).Is(200);

        Assert.Equal("image/svg+xml", answer.MediaType);
        Assert.Contains("Largest compression", answer.Text, StringComparison.Ordinal);
        Assert.Contains("data-force", answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Drawing_WithForcesThatCannotBe_NamesTheField()
    {
        (await one.Shop.Storefront.Post("/api/drawings", Picture("""{"loads": [{"node": 99, "zN": -1}]}"""))).IsProblem(422, "statics.load-invalid", "#/forces/loads/0/node");
        (await one.Shop.Storefront.Post("/api/drawings", Picture("""{"supports": "glued"}"""))).IsProblem(422, "request.invalid", "#/forces/supports");
        (await one.Shop.Storefront.Post("/api/drawings", Picture("""{"without": [0, 1, 2, 3]}"""))).IsProblem(422, "statics.mechanism");
        var tier = Picture();
        tier["tier"] = 1;
        (await one.Shop.Storefront.Post("/api/drawings", tier)).IsProblem(422, "request.invalid", "#/tier");
    }

    [Fact]
    public async Task Preview_WithoutAKey_IsRefused() => (await one.Shop.Nobody.Post("/api/statics/preview", Body())).IsProblem(401, "access.no-key");
}
