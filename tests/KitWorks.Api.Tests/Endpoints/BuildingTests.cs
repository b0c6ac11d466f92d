using System.Text;
using System.Text.Json;
using System.Xml.Linq;

namespace KitWorks.Api.Tests.Endpoints;

public sealed class BuildingTests(OneShop one) : IClassFixture<OneShop>
{
    [Fact]
    public async Task StakeOut_WhenA2VHemisphere_IsARegularDecagon()
    {
        var layout = (await one.Shop.Storefront.Post("/api/stake-outs", new { shelter = Designs.Dome(2, "1/2", "6 m") })).Ok;

        Shape.Holds("""
            { "stakes": [{ "stake": 1, "node": 0, "xMm": 0, "yMm": 0, "heightMm": 0 }], "baseline": { "from": 1, "to": 6, "distanceMm": 1 },
              "sides": [{ "from": 1, "to": 2, "distanceMm": 1 }], "diagonals": [{ "from": 1, "to": 3, "distanceMm": 1 }],
              "checks": [{ "from": 2, "to": 7, "distanceMm": 1 }] }
            """, layout);
        Assert.Equal(10, layout.List("stakes").Count);
        Assert.Equal((1, 6, 6000.0), (layout.Int("baseline/from"), layout.Int("baseline/to"), layout.At("baseline").Number("distanceMm")));
        Assert.All(layout.List("sides"), s => Assert.Equal(6000 * Math.Sin(Math.PI / 10), s.Number("distanceMm"), 0.001));
        Assert.All(layout.List("checks"), c => Assert.Equal(6000, c.Number("distanceMm"), 0.001));
        Assert.Empty(layout.List("widths"));
    }

    [Fact]
    public async Task StakeOut_WhenAnOblong_GivesTheWidthsToCheck()
    {
        var layout = (await one.Shop.Storefront.PostText("/api/stake-outs", Oblong())).Ok;

        var stakes = layout.List("stakes").ToDictionary(s => s.Int("stake"), s => s);
        Assert.NotEmpty(layout.List("widths"));
        Assert.All(layout.List("widths"), w => Assert.Equal(stakes[w.Int("from")].Number("yMm") - stakes[w.Int("to")].Number("yMm"), w.Number("distanceMm"), 0.002));
    }

    [Fact]
    public async Task CoverNets_WhenThreeV_AddUpToTheCover()
    {
        var shelter = Designs.Dome(3, "5/8", "6 m");
        var nets = (await one.Shop.Storefront.Post("/api/cover-nets", new { shelter, seamAllowance = "0 mm" })).Ok.EnumerateArray().ToList();
        var frame = (await one.Shop.Storefront.Post("/api/frames", new { shelter })).Ok;

        Assert.Equal(105, nets.Sum(n => n.Int("count")));
        Assert.Equal(frame.At("dimensions").Number("coverAreaM2"), nets.Sum(n => n.Int("count") * n.Number("cutAreaM2")), 0.001);
        Assert.All(nets, n => Assert.Equal(180, n.List("anglesDegrees").Sum(a => a.GetDouble()), 0.001));
        Assert.All(nets, n => Assert.Equal(n.List("sidesMm").Select(s => s.GetDouble()), n.List("cutSidesMm").Select(s => s.GetDouble())));
    }

    [Fact]
    public async Task CoverNets_WhenNoSeamIsGiven_CutTwentyMillimetresOutside()
    {
        var nets = (await one.Shop.Storefront.Post("/api/cover-nets", new { shelter = Designs.Dome(1, "rows:2", "6 m") })).Ok;

        // An equilateral triangle's sides grow by 2·√3 times the seam.
        var net = nets.EnumerateArray().Single();
        Assert.Equal(net.List("sidesMm")[0].GetDouble() + 40 * Math.Sqrt(3), net.List("cutSidesMm")[0].GetDouble(), 0.002);
    }

    [Theory]
    [InlineData("/api/stake-outs/drawing", "")]
    [InlineData("/api/stake-outs/drawing", ", \"units\": \"feet\"")]
    [InlineData("/api/cover-nets/drawing", "")]
    [InlineData("/api/cover-nets/drawing", ", \"units\": \"feet\", \"seamAllowance\": \"1 in\"")]
    public async Task Drawing_WhenAsked_IsAnSvg(string path, string more) => IsAnSvg(await one.Shop.Storefront.PostText(path, Oblong(more)));

    [Fact]
    public async Task CutPlanDrawing_WhenAsked_HasItsPatterns()
    {
        var answer = await one.Shop.Storefront.PostText("/api/cut-plans/drawing",
            """{ "job": { "pieces": [{ "code": "S1", "cutLength": "1008.9 mm", "count": 55 }], "stock": [{ "length": "3048 mm" }], "kerf": "3 mm" } }""");

        IsAnSvg(answer);
        // Three pieces and two kerfs would take 3,032.7 mm: 18 lengths of three and one for the last.
        Assert.Contains("18 ×", answer.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData(", \"cover\": true, \"strutDiameter\": \"33 mm\"")]
    public async Task Model_WhenAsked_IsBinaryGltf2(string more)
    {
        var answer = (await one.Shop.Storefront.PostText("/api/frames/model", Oblong(more))).Is(200);

        Assert.Equal("model/gltf-binary", answer.MediaType);
        // glTF 2.0 specification, 4.4: magic, version, length; then the JSON chunk's length and type.
        Assert.Equal("glTF", Encoding.ASCII.GetString(answer.Bytes, 0, 4));
        Assert.Equal((2, answer.Bytes.Length), (BitConverter.ToInt32(answer.Bytes, 4), BitConverter.ToInt32(answer.Bytes, 8)));
        Assert.Equal("JSON", Encoding.ASCII.GetString(answer.Bytes, 16, 4));
        using var json = JsonDocument.Parse(answer.Bytes.AsMemory(20, BitConverter.ToInt32(answer.Bytes, 12)));
        Assert.Equal("2.0", json.RootElement.GetProperty("asset").GetProperty("version").GetString());
    }

    [Theory]
    [InlineData("/api/stake-outs/drawing", "\"units\": \"cubits\"", "#/units")]
    [InlineData("/api/cover-nets", "\"seamAllowance\": \"301 mm\"", "#/seamAllowance")]
    [InlineData("/api/cover-nets/drawing", "\"units\": \"cubits\"", "#/units")]
    [InlineData("/api/frames/model", "\"strutDiameter\": \"0 mm\"", "#/strutDiameter")]
    [InlineData("/api/frames/model", "\"strutDiameter\": \"1.1 m\"", "#/strutDiameter")]
    public async Task Building_WhenAFieldIsWrong_NamesIt(string path, string field, string pointer)
    {
        var answer = await one.Shop.Storefront.PostText(path, Oblong(", " + field));

        answer.IsProblem(422, answer.Is(422).Json.Text("code"), pointer);
    }

    [Theory]
    [InlineData("/api/stake-outs"), InlineData("/api/stake-outs/drawing"), InlineData("/api/cover-nets"), InlineData("/api/cover-nets/drawing"), InlineData("/api/frames/model")]
    public async Task Building_WhenThereIsNoShelter_SaysSo(string path) =>
        (await one.Shop.Storefront.PostText(path, "{}")).IsProblem(400, "request.invalid", "#/shelter");

    [Theory]
    [InlineData("{}", 400, "#/job")]
    [InlineData("""{ "job": { "stock": [{ "length": "3 m" }] } }""", 422, "#/job/pieces")]
    public async Task CutPlanDrawing_WhenTheJobIsWrong_NamesTheField(string body, int status, string pointer) =>
        (await one.Shop.Storefront.PostText("/api/cut-plans/drawing", body)).IsProblem(status, "request.invalid", pointer);

    static string Oblong(string more = "") =>
        "{\"shelter\": {\"kind\": \"oblong\", \"fold\": 6, \"size\": {\"longestStrut\": \"5 ft\"}}" + more + "}";

    static void IsAnSvg(Answer answer)
    {
        Assert.Equal("image/svg+xml", answer.Is(200).MediaType);
        Assert.Equal("svg", XDocument.Parse(answer.Text).Root!.Name.LocalName);
    }
}
