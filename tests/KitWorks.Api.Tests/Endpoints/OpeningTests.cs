using System.Text.Json;

namespace KitWorks.Api.Tests.Endpoints;

public sealed class OpeningTests(OneShop one) : IClassFixture<OneShop>
{
    const string Shelter = """ "shelter": { "kind": "dome", "frequency": 3, "cut": "5/8", "size": { "floorDiameter": "6 m" } } """;

    static string Design(string openings) => $$"""{ "design": { {{Shelter}}, "hubSystem": "ring-100", "strutStock": "pvc-33", "cover": { "layers": 1 }, "openings": {{openings}} } }""";

    [Fact]
    public async Task Preview_WithADoorAndAVent_TellsThem()
    {
        var plain = (await one.Shop.Storefront.PostText("/api/kits/preview", Design("[]"))).Ok;
        var kit = (await one.Shop.Storefront.PostText("/api/kits/preview", Design("""[{ "kind": "vent" }, { "kind": "door", "stake": 4 }]"""))).Ok;

        Shape.Holds("""
            { "openings": [{ "kind": "door", "clearWidthMm": 1, "clearHeightMm": 1, "leftOut": { "hubs": 1, "struts": 4, "panels": 3 },
                             "frame": [{ "part": "post", "code": "S1", "count": 2 }] }] }
            """, kit);
        var (door, vent) = (kit.List("openings")[0], kit.List("openings")[1]);
        Assert.Equal(("door", 4, "level"), (door.Text("kind"), door.Int("stake"), door.Text("top")));
        Assert.Equal([4, 5], door.List("feet").Select(f => f.GetInt32()));
        Assert.Equal("vent", vent.Text("kind"));
        Assert.Equal(3, vent.List("frame").Sum(p => p.Int("count")));
        Assert.Empty(plain.List("openings"));
        Assert.NotEqual(plain.Text("designId"), kit.Text("designId"));
        Assert.Equal(165 + 1 + 3, kit.GetProperty("totals").Int("struts"));
    }

    [Theory]
    [InlineData("""[{}]""", "#/design/openings/0/kind")]
    [InlineData("""[{ "kind": "window" }]""", "#/design/openings/0/kind")]
    [InlineData("""[{ "kind": "vent", "stake": 1 }]""", "#/design/openings/0/stake")]
    [InlineData("""[{ "kind": "door", "panel": 1 }]""", "#/design/openings/0/panel")]
    [InlineData("""[{ "kind": "door" }, { "kind": "door", "top": "round" }]""", "#/design/openings/1/top")]
    [InlineData("""[{ "kind": "door", "stake": 99 }]""", "#/design/openings/0/stake")]
    [InlineData("""[{ "kind": "vent", "panel": 104 }]""", "#/design/openings/0/panel")]
    [InlineData("""[{ "kind": "door", "stake": 4 }, { "kind": "door", "stake": 5 }]""", "#/design/openings/1/stake")]
    public async Task Preview_WhenAnOpeningIsWrong_NamesTheField(string openings, string pointer)
    {
        var answer = (await one.Shop.Storefront.PostText("/api/kits/preview", Design(openings))).Is(422);
        Assert.Equal(pointer, answer.Json.List("errors").Single().Text("pointer"));
    }

    [Fact]
    public async Task FramesDrawingsAndStatics_TakeOpeningsBesideTheShelter()
    {
        var openings = """ "openings": [{ "kind": "door", "top": "peaked" }] """;
        var frame = (await one.Shop.Storefront.PostText("/api/frames", $"{{ {Shelter}, {openings} }}")).Ok;
        Assert.Equal((62, 164, 16), (frame.List("nodes").Count, frame.List("struts").Count, frame.List("base").Count));

        var svg = (await one.Shop.Storefront.PostText("/api/drawings", $"{{ {Shelter}, {openings}, \"view\": \"spread\" }}")).Is(200);
        Assert.Contains("data-opening=\"door\"", svg.Text, StringComparison.Ordinal);

        var statics = (await one.Shop.Storefront.PostText("/api/statics/preview",
            $$"""{ {{Shelter}}, {{openings}}, "section": { "areaMm2": 318.6, "secondMomentMm4": 36355, "modulusMPa": 2900 }, "supports": "pinned", "loads": [{ "node": 0, "zN": -500 }] }""")).Ok;
        Assert.Equal((0, 164), (statics.Int("mechanisms"), statics.List("members").Count));

        var wrong = (await one.Shop.Storefront.PostText("/api/frames", $$"""{ {{Shelter}}, "openings": [{ "kind": "door", "stake": 16 }] }""")).Is(422);
        Assert.Equal("#/openings/0/stake", wrong.Json.List("errors").Single().Text("pointer"));
    }
}
