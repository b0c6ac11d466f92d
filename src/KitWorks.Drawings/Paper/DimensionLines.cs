using System.Xml.Linq;

namespace KitWorks.Drawings.Paper;

/// <summary>Dimension lines beside a picture.</summary>
static class DimensionLines
{
    const double Gap = 1.2, Past = 1, Arrow = 1.8, TextSize = 2.6;

    /// <summary>A dimension along x under a picture: from and to are the points measured, y is where the line goes.</summary>
    public static XElement Along(Spot from, Spot to, double y, string text)
    {
        var (a, b) = (new Spot(from.X, y), new Spot(to.X, y));
        return Draw(
            Svg.Segment(from + new Spot(0, Gap), a + new Spot(0, Past)) + Svg.Segment(to + new Spot(0, Gap), b + new Spot(0, Past)), a, b, text);
    }

    /// <summary>A dimension along y, left of a picture.</summary>
    public static XElement Up(Spot from, Spot to, double x, string text)
    {
        var (a, b) = (new Spot(x, from.Y), new Spot(x, to.Y));
        return Draw(
            Svg.Segment(from - new Spot(Gap, 0), a - new Spot(Past, 0)) + Svg.Segment(to - new Spot(Gap, 0), b - new Spot(Past, 0)), a, b, text);
    }

    static XElement Draw(string extensions, Spot a, Spot b, string text)
    {
        var along = (b - a).Unit;
        var half = TextWidth.Of(text, TextSize) / 2 + 0.8;
        var middle = a.Towards(b, 0.5);
        var group = Svg.Group("dimension", ("stroke", Ink.Soft), ("stroke-width", Svg.N(0.13)), ("fill", "none"));
        group.Add(
            Svg.Path(extensions),
            Svg.Path(Svg.Segment(a, middle - along * half) + Svg.Segment(middle + along * half, b)),
            Svg.Path(Head(a, along) + Head(b, along * -1), ("fill", Ink.Soft), ("stroke", "none")));
        var at = $"translate({Svg.N(middle.X)} {Svg.N(middle.Y)})" + (Math.Abs(along.X) < 0.5 ? " rotate(-90)" : "");
        var words = Svg.Element("text", ("transform", at), ("y", Svg.N(TextSize * 0.36)), ("font-size", Svg.N(TextSize)), ("text-anchor", "middle"), ("fill", Ink.Dark), ("stroke", "none"));
        group.Add(words.Saying(text));
        return group;
    }

    static string Head(Spot tip, Spot along)
    {
        var (left, right) = (tip + along * Arrow + along.Turned * (Arrow * 0.2), tip + along * Arrow - along.Turned * (Arrow * 0.2));
        return $"M{Svg.N(tip.X)} {Svg.N(tip.Y)}L{Svg.N(left.X)} {Svg.N(left.Y)}L{Svg.N(right.X)} {Svg.N(right.Y)}Z";
    }
}
