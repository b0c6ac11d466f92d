using System.Xml.Linq;
using KitWorks.Geometry;

namespace KitWorks.Drawings.Tests;

public class StakeOutDrawingTests
{
    [Theory]
    [InlineData("1V")]
    [InlineData("3V 5/8")]
    [InlineData("16V 1/2")]
    [InlineData("oblong 6-1-0")]
    [InlineData("oblong 8-2-1")]
    public void Draw_OfShelter_HasEveryStakeInPictureAndTable(string design)
    {
        var frame = Designs.Named(design);
        var picture = new Picture(StakeOutDrawing.Draw(frame).Value);
        var numbers = Enumerable.Range(1, frame.Base.Length).Select(n => n.ToString()).ToList();
        Assert.Equal(numbers, picture.With("data-stake").Select(e => e.Attribute("data-stake")!.Value));
        Assert.Equal(numbers, picture.Group("row").Select(Cells).Where(c => c[0] != "Stake").Select(c => c[0]));
    }

    [Fact]
    public void Draw_OfTwoVHemisphere_GivesARegularDecagonInFigures()
    {
        // The equator of a 2V hemisphere is a regular decagon: sides 2 r sin 18°, diagonals 2 r sin(k 18°).
        var picture = new Picture(StakeOutDrawing.Draw(Designs.Dome(2, "1/2")).Value);
        var rows = picture.Group("row").Select(Cells).Where(c => c[0] != "Stake").ToList();
        Assert.All(rows, r => Assert.Equal("3000", r[3]));
        Assert.All(rows, r => Assert.Equal("1854", r[4]));
        Assert.Equal(["-", "1854", "3527", "4854", "5706", "6000", "5706", "4854", "3527", "1854"], rows.Select(r => r[1]));
    }

    [Theory]
    [InlineData(false, true)]
    [InlineData(true, false)]
    public void Draw_OfThreeVFiveEighths_TellsHeightsOnlyWhereTheBaseIsNotLevel(bool flatBase, bool expected)
    {
        var picture = new Picture(StakeOutDrawing.Draw(Designs.Dome(3, "5/8", flatBase)).Value);
        Assert.Equal(expected, picture.Group("row").Any(r => Cells(r).Contains("Height")));
        Assert.Equal(expected, picture.All("desc").Single().Value.Contains("not level", StringComparison.Ordinal));
    }

    [Fact]
    public void Draw_OfOblong_GivesItsWidthAtMidLengthToCheck()
    {
        var frame = Designs.Oblong(6, 1, 0);
        var picture = new Picture(StakeOutDrawing.Draw(frame).Value);
        var width = Math.Round(frame.Base.Select(id => frame.Nodes[id].Position).Where(p => Math.Abs(p.X) < 1).Max(p => p.Y) * 2).ToString();
        Assert.Contains(picture.Group("checks").Descendants(), e => e.Value == width);
        Assert.Contains("spread", picture.All("desc").Single().Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_TooWide_IsRefused() =>
        Assert.Equal("drawing.width-invalid", StakeOutDrawing.Draw(Designs.Dome(2, "1/2"), width: Length.FromMillimetres(3001)).Refusal?.Code);

    static string[] Cells(XElement row) => [.. row.Elements().Select(e => e.Value)];
}
