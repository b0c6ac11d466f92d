using System.Text.Json;

namespace KitWorks.Api.Tests.Endpoints;

public sealed class DesigningTests(OneShop one) : IClassFixture<OneShop>
{
    [Fact]
    public async Task Frame_WhenTheDomeIs3V58_IsWhole()
    {
        var frame = (await one.Shop.Storefront.Post("/api/frames", new { shelter = Designs.Dome(3, "5/8", "6 m") })).Ok;

        Shape.Holds("""
            { "radiusMm": 1, "baseSpreadMm": 0, "families": [{ "family": 0, "spacingMm": 1, "chordFactor": 0.3, "count": 1 }],
              "nodes": [{ "id": 0, "xMm": 0, "yMm": 0, "zMm": 0, "degree": 5, "tier": 0 }],
              "struts": [{ "id": 0, "from": 0, "to": 1, "family": 0, "spacingMm": 1, "tier": 0 }],
              "panels": [{ "nodes": [0], "code": "P1", "areaM2": 1 }], "base": [0] }
            """, frame);
        var nodes = frame.List("nodes");
        Assert.Equal((61, 165, 105, 15), (nodes.Count, frame.List("struts").Count, frame.List("panels").Count, frame.List("base").Count));
        Assert.Equal(165, frame.List("families").Sum(f => f.Int("count")));
        Assert.All(frame.List("struts"), s => Assert.Equal(s.Number("spacingMm"), Distance(nodes[s.Int("from")], nodes[s.Int("to")]), 0.001));
        // Floor diameter: twice the mean distance of the base nodes from the axis.
        Assert.Equal(3000, frame.List("base").Average(i => Math.Sqrt(Square(nodes[i.GetInt32()], "xMm") + Square(nodes[i.GetInt32()], "yMm"))), 0.1);
        Assert.Equal(1, nodes.Count - frame.List("struts").Count + frame.List("panels").Count);
    }

    [Fact]
    public async Task Frame_WhenTheShelterIsAnOblong_HasNoRadius()
    {
        var frame = (await one.Shop.Storefront.PostText("/api/frames",
            """{"shelter": { "kind": "oblong", "fold": 6, "frequency": 1, "bays": 0, "size": { "longestStrut": "5 ft" } } }""")).Ok;

        Assert.True(frame.IsNull("radiusMm"));
        Assert.All(frame.List("families"), f => Assert.True(f.IsNull("chordFactor")));
        Assert.Equal(1524, frame.List("struts").Max(s => s.Number("spacingMm")), 0.1);
    }

    [Theory]
    [InlineData("plan", null)]
    [InlineData("side", null)]
    [InlineData("end", null)]
    [InlineData("iso", null)]
    [InlineData("iso", 1)]
    public async Task Drawing_WhenAViewIsAsked_IsAnSvg(string view, int? tier)
    {
        var answer = (await one.Shop.Storefront.Post("/api/drawings", new { shelter = Designs.Dome(2, "1/2", "6 m"), view, tier })).Is(200);

        Assert.Equal("image/svg+xml", answer.MediaType);
        Assert.Equal("svg", System.Xml.Linq.XDocument.Parse(answer.Text).Root!.Name.LocalName);
    }

    [Theory]
    [InlineData("\"view\": \"above\"", 422, "#/view")]
    [InlineData("\"tier\": 99", 422, "#/tier")]
    [InlineData("\"tier\": -1", 422, "#/tier")]
    public async Task Drawing_WhenAFieldIsWrong_NamesIt(string field, int status, string pointer)
    {
        var answer = await one.Shop.Storefront.PostText("/api/drawings",
            "{\"shelter\": {\"kind\": \"dome\", \"frequency\": 2, \"cut\": \"1/2\", \"size\": {\"height\": \"2 m\"}}, " + field + "}");

        answer.IsProblem(status, answer.Is(status).Json.Text("code"), pointer);
    }

    [Fact]
    public async Task Shapes_WhenAsked_ListsKindsSolidsClassesAndLimits()
    {
        var shapes = (await one.Shop.Storefront.Get("/api/shapes")).Ok;

        Assert.Contains("dome", shapes.Texts("kinds", "kind"));
        Assert.Equal(["icosahedron", "octahedron", "tetrahedron"], shapes.List("kinds/0/solids").Select(s => s.GetString()));
        Assert.Equal((1, 16), (shapes.Int("kinds/0/classes/0/minFrequency"), shapes.Int("kinds/0/classes/0/maxFrequency")));
    }

    [Theory]
    [InlineData("""{"dome": {"class": 1, "frequency": 3}}""")]
    [InlineData("""{"shelter": {"kind": "dome", "class": 1, "frequency": 3}}""")]
    [InlineData("""{"kind": "dome", "solid": "icosahedron", "class": 1, "frequency": 3}""")]
    public async Task Cuts_WhenADomeIsGiven_ListsThoseItHas(string body)
    {
        var cuts = (await one.Shop.Storefront.PostText("/api/shapes/cuts", body)).Ok.EnumerateArray().ToList();

        Assert.All(cuts, c => Shape.Holds("""{ "cut": "5/8", "rows": 5, "heightOverRadius": 1 }""", c));
        Assert.Contains(("3/8", 4), cuts.Select(c => (c.Text("cut"), c.Int("rows"))));
        Assert.Contains(("5/8", 5), cuts.Select(c => (c.Text("cut"), c.Int("rows"))));
        foreach (var cut in cuts) (await one.Shop.Storefront.Post("/api/frames", new { shelter = Designs.Dome(3, cut.Text("cut"), "6 m") })).Is(200);
    }

    [Theory]
    [InlineData("""{"dome": {"class": 1, "frequency": 17}}""", "#/dome/frequency")]
    [InlineData("""{"shelter": {"class": 1, "frequency": 0}}""", "#/shelter/frequency")]
    [InlineData("""{"class": 1, "frequency": 0}""", "#/frequency")]
    public async Task Cuts_WhenTheDomeIsWrong_NamesTheField(string body, string pointer) =>
        (await one.Shop.Storefront.PostText("/api/shapes/cuts", body)).IsProblem(422, "shelter.frequency", pointer);

    [Fact]
    public async Task CutPlan_WhenPiecesFillALengthExactly_NeedsOneKerfLess()
    {
        var plan = (await one.Shop.Storefront.PostText("/api/cut-plans/preview", """
            { "pieces": [{"cutLength": "1000 mm", "count": 3}], "stock": [{"length": "3006 mm"}], "kerf": "3 mm" }
            """)).Ok;

        Shape.Holds("""
            { "stockLengths": [{ "sku": "…", "lengthMm": 1, "count": 1 }], "wasteRatio": 0, "lowerBound": 1, "proven": true,
              "patterns": [{ "count": 1, "stockLengthMm": 1, "cuts": [{ "code": "…", "cutLengthMm": 1, "count": 1 }], "remnantMm": 0 }] }
            """, plan);
        Assert.Equal(1, plan.Int("stockLengths/0/count"));
    }

    [Fact]
    public async Task CutPlan_WhenAPieceIsLongerThanAnyStock_IsRefused()
    {
        var answer = await one.Shop.Storefront.PostText("/api/cut-plans/preview", """{ "pieces": [{"cutLength": "4 m", "count": 1}], "stock": [{"length": "3 m"}] }""");

        answer.IsProblem(422, answer.Is(422).Json.Text("code"), "#/pieces/0/cutLength");
    }

    static double Distance(JsonElement a, JsonElement b) => Math.Sqrt(new[] { "xMm", "yMm", "zMm" }.Sum(axis => Math.Pow(a.Number(axis) - b.Number(axis), 2)));

    static double Square(JsonElement node, string axis) => node.Number(axis) * node.Number(axis);
}
