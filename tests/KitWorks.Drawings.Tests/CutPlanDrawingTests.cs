using KitWorks.Geometry;
using KitWorks.Kits.Cutting;

namespace KitWorks.Drawings.Tests;

public class CutPlanDrawingTests
{
    /// <summary>Two patterns of a 3V dome's struts with a 3 mm saw.</summary>
    internal static CutPlan Plan { get; } = new(
        [new("pvc-33", Length.FromMillimetres(3048), 12)],
        [
            new(12, "pvc-33", Length.FromMillimetres(3048), [new("S3", Length.FromMillimetres(1227), 2)], Length.FromMillimetres(588)),
            new(3, null, Length.FromMillimetres(2300), [new("S2", Length.FromMillimetres(1200), 1), new("odd & end", Length.FromMillimetres(1000), 1)], Length.FromMillimetres(94)),
        ],
        0.125, 12, true);

    [Fact]
    public void Draw_OfPlan_HasEachPatternWithItsPiecesToScale()
    {
        var picture = new Picture(CutPlanDrawing.Draw(Plan, Designs.TypesOf(Designs.Dome(3, "5/8"))).Value);

        Assert.Equal(["12", "3"], picture.Group("pattern").Select(p => p.Attribute("data-count")!.Value));
        Assert.Equal(["S3", "S3", "S2", "odd & end"], picture.Group("piece").Select(p => p.Attribute("data-code")!.Value));
        var perMm = Width(picture.Group("stock").First()) / 3048;
        Assert.Equal([1227, 1227, 1200, 1000], picture.Group("piece").Select(p => Math.Round(Width(p) / perMm, 0)));
        Assert.Equal([588, 94], picture.Group("remnant").Select(p => Math.Round(Width(p) / perMm, 0)));
    }

    [Fact]
    public void Draw_OfPlan_PutsPiecesSideBySideWithinTheStockLength()
    {
        var picture = new Picture(CutPlanDrawing.Draw(Plan).Value);
        foreach (var bar in picture.Group("bar"))
        {
            var rects = bar.Elements().Select(e => e.Descendants().First(r => r.Name.LocalName == "rect")).ToList();
            var stock = rects[^1];
            var x = Picture.Number(stock, "x");
            foreach (var rect in rects.SkipLast(1))
            {
                Assert.True(Picture.Number(rect, "x") >= x - 0.11);
                x = Picture.Number(rect, "x") + Picture.Number(rect, "width");
            }
            Assert.Equal(Picture.Number(stock, "x") + Picture.Number(stock, "width"), x, 0.3);
        }
    }

    [Fact]
    public void Draw_InFeetAndInches_WritesThem()
    {
        var picture = new Picture(CutPlanDrawing.Draw(Plan, units: Units.FeetAndInches).Value);
        Assert.Contains(picture.All("text"), t => t.Value == "10' 0\" pvc-33");
        Assert.Contains(picture.All("text"), t => t.Value == "4' 0 5/16\"");
    }

    [Fact]
    public void Draw_OfEmptyPlan_IsASheetWithAHeadline()
    {
        var picture = new Picture(CutPlanDrawing.Draw(new([], [], 0, 0, true)).Value);
        Assert.Empty(picture.Group("pattern"));
    }

    [Fact]
    public void Draw_TooNarrow_IsRefused() =>
        Assert.Equal("drawing.width-invalid", CutPlanDrawing.Draw(Plan, width: Length.FromMillimetres(10)).Refusal?.Code);

    static double Width(System.Xml.Linq.XElement group) => Picture.Number(group.Elements().First(e => e.Name.LocalName == "rect"), "width");
}
