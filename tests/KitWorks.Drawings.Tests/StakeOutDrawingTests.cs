using KitWorks.Geometry;

namespace KitWorks.Drawings.Tests;

public class StakeOutDrawingTests
{
    [Theory]
    [InlineData(1, "rows:2")]
    [InlineData(2, "1/2")]
    [InlineData(3, "5/8")]
    [InlineData(8, "1/2")]
    [InlineData(16, "1/2")]
    public void Draw_OfDome_HasEveryStakeInPictureAndTable(int frequency, string cut)
    {
        var frame = Designs.Dome(frequency, cut);
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
    public void Draw_TooWide_IsRefused() =>
        Assert.Equal("drawing.width-invalid", StakeOutDrawing.Draw(Designs.Dome(2, "1/2"), width: Length.FromMillimetres(3001)).Refusal?.Code);

    static string[] Cells(System.Xml.Linq.XElement row) => [.. row.Elements().Select(e => e.Value)];
}
