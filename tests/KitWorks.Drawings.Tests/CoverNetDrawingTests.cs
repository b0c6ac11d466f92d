using KitWorks.Geometry;

namespace KitWorks.Drawings.Tests;

public class CoverNetDrawingTests
{
    [Theory]
    [InlineData("1V")]
    [InlineData("3V 5/8")]
    [InlineData("16V 1/2")]
    [InlineData("oblong 6-1-0")]
    public void Draw_OfShelter_HasEveryPanelKindToOneScale(string design)
    {
        var frame = Designs.Named(design);
        var seam = Length.FromMillimetres(20);
        var picture = new Picture(CoverNetDrawing.Draw(frame, seam).Value);
        var nets = CoverNet.Of(frame, seam);

        Assert.Equal(nets.Select(n => $"P{n.Kind + 1}"), picture.Group("net").Select(g => g.Attribute("data-code")!.Value));
        var scale = 0.0;
        foreach (var (net, drawn) in nets.Zip(picture.Group("net")))
        {
            var corners = drawn.Elements().First().Attribute("points")!.Value.Split(' ').Select(p => p.Split(',').Select(double.Parse).ToArray()).ToArray();
            double Side(int i, int j) => Math.Sqrt(Math.Pow(corners[i][0] - corners[j][0], 2) + Math.Pow(corners[i][1] - corners[j][1], 2));
            double[] sides = [Side(1, 2), Side(0, 2), Side(0, 1)];
            if (scale == 0) scale = sides[2] / net.CutSidesMm[2];
            for (var side = 0; side < 3; side++) Assert.Equal(net.CutSidesMm[side] * scale, sides[side], 0.3);
        }
    }

    [Fact]
    public void Draw_OfOneV_SaysTheSidesOfAnEquilateralTriangleBySeam()
    {
        // Moving the sides of an equilateral triangle out by s lengthens them by 2·√3·s.
        var frame = Designs.Named("1V");
        var text = CoverNetDrawing.Draw(frame, Length.FromMillimetres(10)).Value;

        Assert.Contains($"{frame.Families[0].SpacingMm + 20 * Math.Sqrt(3):0.0} mm", text, StringComparison.Ordinal);
        Assert.Contains("60°", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_TooWide_IsRefused() =>
        Assert.Equal("drawing.width-invalid", CoverNetDrawing.Draw(Designs.Named("1V"), Length.Zero, width: Length.FromMillimetres(3001)).Refusal?.Code);
}
