using System.Xml.Linq;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;

namespace KitWorks.Drawings.Tests;

public class FrameDrawingTests
{
    public static TheoryData<int, string, View> Views =>
    [
        .. from view in Enum.GetValues<View>()
           from design in new[] { (1, "1/2"), (2, "1/2"), (3, "5/8"), (3, "3/8"), (4, "1/2"), (8, "1/2"), (16, "1/2") }
           select new TheoryDataRow<int, string, View>(design.Item1, design.Item2, view),
    ];

    [Theory, MemberData(nameof(Views))]
    public void Draw_OfWholeFrame_HasEveryStrutAndHubOnceInItsColourWithItsCode(int frequency, string cut, View view)
    {
        var frame = Frame(frequency, cut);
        var types = Designs.TypesOf(frame);
        var picture = Drawn(frame, new() { View = view }, types);

        Assert.Equal(Enumerable.Range(0, frame.Struts.Length), picture.With("data-strut").Select(Id).Order());
        Assert.Equal(Enumerable.Range(0, frame.Nodes.Length), picture.With("data-hub").Select(e => int.Parse(e.Attribute("data-hub")!.Value)).Order());
        foreach (var line in picture.With("data-strut"))
        {
            var type = types.Single(t => t.Families.Contains(frame.Struts[Id(line)].Family));
            Assert.Equal(type.Code, (string?)line.Attribute("data-code"));
            if ((string?)line.Parent!.Parent!.Attribute("class") == "strong") Assert.Equal(type.Tag.Hex, (string?)line.Parent.Attribute("stroke"));
        }
    }

    [Theory, MemberData(nameof(Views))]
    public void Draw_OfWholeFrame_KeepsCodesApartAndOffOtherStruts(int frequency, string cut, View view)
    {
        var picture = Drawn(Frame(frequency, cut), new() { View = view });
        var codes = picture.Codes().ToList();
        var struts = picture.Group("strong").Descendants().Where(e => e.Attribute("data-strut") is not null).Select(e =>
        {
            var (a, b) = ((X: Picture.Number(e, "x1"), Y: Picture.Number(e, "y1")), (X: Picture.Number(e, "x2"), Y: Picture.Number(e, "y2")));
            return (Code: e.Attribute("data-code")!.Value, Ends: new[] { a, b });
        }).ToList();
        foreach (var (code, index) in codes.Select((c, i) => (c, i)))
        {
            Assert.DoesNotContain(codes.Skip(index + 1), other => Near(code.Corners, other.Corners) && Picture.Overlap(code.Corners, other.Corners));
            var under = struts.Where(s => Near(code.Corners, s.Ends) && Picture.Overlap(code.Corners, s.Ends)).ToList();
            Assert.Equal([code.Code], under.Select(s => s.Code));
        }
    }

    [Theory, MemberData(nameof(Views))]
    public void Draw_OfWholeFrame_SaysHowManyCodesItLeavesOut(int frequency, string cut, View view)
    {
        var picture = Drawn(Frame(frequency, cut), new() { View = view });
        var shown = picture.Group("strong").Descendants().Count(e => e.Attribute("data-strut") is not null);
        var missing = shown - picture.Codes().Count();
        var words = string.Join(' ', picture.Group("legend").Elements().Where(e => e.Name.LocalName == "text").Select(e => e.Value));
        if (missing == 0) Assert.DoesNotContain("left out", words);
        else if (missing == shown) Assert.Contains("too close", words);
        else Assert.Contains(missing == 1 ? "1 code is left out" : $"{missing} codes are left out", words);
    }

    [Theory]
    [InlineData(2, "1/2", View.Spread)]
    [InlineData(3, "5/8", View.Spread)]
    [InlineData(4, "1/2", View.Spread)]
    [InlineData(3, "5/8", View.Plan)]
    [InlineData(3, "5/8", View.Isometric)]
    public void Draw_OfEachTier_ShowsItsStrutsStrongTheEarlierPaleTheLaterNot(int frequency, string cut, View view)
    {
        var frame = Frame(frequency, cut);
        var types = Designs.TypesOf(frame);
        for (var tier = 0; tier < frame.TierCount; tier++)
        {
            var picture = Drawn(frame, new() { View = view, Tier = tier, Width = Length.FromMillimetres(100) }, types);
            var strong = picture.Group("strong").Concat(picture.Group("behind")).Descendants().Where(e => e.Attribute("data-strut") is not null).Select(Id).Order();
            Assert.Equal(frame.Struts.Where(s => s.Tier == tier).Select(s => s.Id), strong);
            Assert.Equal(frame.Struts.Where(s => s.Tier <= tier).Select(s => s.Id), picture.With("data-strut").Select(Id).Order());
            Assert.Equal(frame.Nodes.Where(n => n.Tier <= tier).Select(n => n.Id), picture.With("data-hub").Select(e => int.Parse(e.Attribute("data-hub")!.Value)).Order());

            var expected = frame.Struts.Where(s => s.Tier == tier).CountBy(s => types.Single(t => t.Families.Contains(s.Family)).Code).ToDictionary();
            var legend = picture.Group("entry").Where(e => e.Attribute("data-code") is not null)
                .ToDictionary(e => e.Attribute("data-code")!.Value, e => int.Parse(e.Attribute("data-count")!.Value));
            Assert.Equal(expected, legend);
        }
    }

    [Fact]
    public void Draw_OfThreeVFiveEighths_GivesPublishedCountsInTheLegend()
    {
        // 30, 55 and 80 struts: the trade's tables for 3V 5/8 (Kenner, Geodesic Math; from memory).
        var picture = Drawn(Designs.Dome(3, "5/8"), new() { View = View.Spread });
        var counts = picture.Group("entry").Where(e => e.Attribute("data-code") is not null).Select(e => (e.Attribute("data-code")!.Value, e.Attribute("data-count")!.Value));
        Assert.Equal([("S1", "30"), ("S2", "55"), ("S3", "80")], counts);
        Assert.Equal(165, picture.Codes().Count());
    }

    [Fact]
    public void Draw_Twice_GivesTheSameText()
    {
        var options = new DrawingOptions { View = View.Isometric };
        Assert.Equal(FrameDrawing.Draw(Designs.Dome(4, "1/2"), options).Value, FrameDrawing.Draw(Designs.Dome(4, "1/2"), options).Value);
    }

    [Theory]
    [InlineData(-1, 180, "drawing.tier-invalid")]
    [InlineData(6, 180, "drawing.tier-invalid")]
    [InlineData(0, 59, "drawing.width-invalid")]
    [InlineData(0, 3001, "drawing.width-invalid")]
    public void Draw_OfWhatCannotBe_IsRefused(int tier, int width, string code)
    {
        var outcome = FrameDrawing.Draw(Designs.Dome(3, "5/8"), new() { Tier = tier, Width = Length.FromMillimetres(width) });
        Assert.Equal(code, outcome.Refusal?.Code);
    }

    [Fact]
    public void Draw_WithTypesOfAnotherFrame_Throws()
    {
        var types = Designs.TypesOf(Designs.Dome(2, "1/2"));
        Assert.Throws<ArgumentException>(() => FrameDrawing.Draw(Designs.Dome(3, "5/8"), new(), types));
    }

    [Fact]
    public void Draw_WithTitleAndColourThatXmlEscapes_IsStillXml()
    {
        var frame = Designs.Dome(2, "1/2");
        StrutType[] types = [.. Designs.TypesOf(frame).Select(t => t with { Tag = new Tag("<red & \"white\">\u0001", "#AA0000", 1) })];
        var picture = Drawn(frame, new() { Title = "Tom & Ann's <hut>\u0000" }, types);
        Assert.StartsWith("Tom & Ann's <hut> ·", picture.All("title").Single().Value);
    }

    static Frame Frame(int frequency, string cut) => Designs.Dome(frequency, frequency == 1 ? "rows:2" : cut);

    static Picture Drawn(Frame frame, DrawingOptions options, StrutType[]? types = null) => new(FrameDrawing.Draw(frame, options, types).Value);

    static int Id(XElement line) => int.Parse(line.Attribute("data-strut")!.Value);

    static bool Near((double X, double Y)[] a, (double X, double Y)[] b) =>
        a.Max(p => p.X) > b.Min(p => p.X) && b.Max(p => p.X) > a.Min(p => p.X) && a.Max(p => p.Y) > b.Min(p => p.Y) && b.Max(p => p.Y) > a.Min(p => p.Y);
}
