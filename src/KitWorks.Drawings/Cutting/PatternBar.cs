using System.Xml.Linq;
using KitWorks.Drawings.Paper;
using KitWorks.Kits;
using KitWorks.Kits.Cutting;

namespace KitWorks.Drawings.Cutting;

/// <summary>
/// One stock length with the pieces cut from it. What is neither a piece nor the remnant, the saw's cuts and the trimmed end,
/// is shared out between the pieces.
/// </summary>
sealed class PatternBar(CutPattern pattern, Spot at, double scale, IReadOnlyList<StrutType>? types, Units units)
{
    public const double Height = 7.6;

    const double CodeSize = 2.7, LengthSize = 2.1;

    public XElement Draw()
    {
        var group = Svg.Group("bar");
        var pieces = pattern.Cuts.SelectMany(c => Enumerable.Repeat(c, c.Count)).ToList();
        var left = pattern.StockLength.Millimetres - pattern.Remnant.Millimetres - pieces.Sum(p => p.CutLength.Millimetres);
        var gap = pieces.Count == 0 ? 0 : Math.Max(0, left) / pieces.Count * scale;
        var x = at.X;
        foreach (var piece in pieces)
        {
            var wide = piece.CutLength.Millimetres * scale;
            group.Add(Piece(piece, x, wide));
            x += wide + gap;
        }
        if (pattern.Remnant.Tenths > 0) group.Add(Remnant(x, pattern.Remnant.Millimetres * scale));
        group.Add(Outline());
        return group;
    }

    XElement Piece(CutPiece piece, double x, double wide)
    {
        var type = types?.FirstOrDefault(t => t.Code == piece.Code);
        var group = Svg.Group("piece", ("data-code", piece.Code));
        group.Add(Rect(x, wide, type is null ? Ink.Paper : Ink.Mix(type.Tag.Hex, Ink.Paper, 0.62), Ink.Dark));
        if (type is not null) group.Add(Svg.Element("rect", ("x", Svg.N(x)), ("y", Svg.N(at.Y + Height - 1.5)), ("width", Svg.N(wide)), ("height", Svg.N(1.5)),
            ("fill", type.Tag.Hex), ("stroke", Ink.Dark), ("stroke-width", Svg.N(0.12))));
        var tall = type is null ? Height : Height - 1.5;
        var length = Measure.Part(piece.CutLength.Millimetres, units);
        var middle = x + wide / 2;
        if (TextWidth.Of(length, LengthSize) + 1 <= wide)
        {
            group.Add(Words(middle, at.Y + tall * 0.46, piece.Code, CodeSize, bold: true), Words(middle, at.Y + tall * 0.86, length, LengthSize));
        }
        else if (TextWidth.Of(piece.Code, CodeSize) + 0.6 <= wide)
        {
            group.Add(Words(middle, at.Y + tall * 0.7, piece.Code, CodeSize, bold: true));
        }
        return group;
    }

    XElement Remnant(double x, double wide)
    {
        var group = Svg.Group("remnant");
        var stripes = string.Concat(Enumerable.Range(0, (int)((wide + Height) / 1.6) + 1).Select(i => Stripe(x, wide, i * 1.6)));
        group.Add(Rect(x, wide, Ink.Faint, Ink.Line), Svg.Path(stripes, ("stroke", Ink.Pale), ("stroke-width", Svg.N(0.15)), ("fill", "none")));
        var text = Measure.Part(pattern.Remnant.Millimetres, units);
        var half = TextWidth.Of(text, LengthSize) / 2 + 0.7;
        if (2 * half > wide) return group;
        group.Add(
            Svg.Element("rect", ("x", Svg.N(x + wide / 2 - half)), ("y", Svg.N(at.Y + Height / 2 - 1.5)), ("width", Svg.N(2 * half)), ("height", Svg.N(3)), ("fill", Ink.Faint)),
            Words(x + wide / 2, at.Y + Height / 2 + LengthSize * 0.36, text, LengthSize));
        return group;
    }

    /// <summary>A line up to the right from the bar's foot, kept inside the rectangle.</summary>
    string Stripe(double x, double wide, double offset)
    {
        var (from, to) = (Math.Max(0, offset - wide), Math.Min(Height, offset));
        return from >= to ? "" : Svg.Segment(new(x + offset - from, at.Y + Height - from), new(x + offset - to, at.Y + Height - to));
    }

    XElement Outline()
    {
        var end = at.X + pattern.StockLength.Millimetres * scale;
        var text = $"{Measure.Part(pattern.StockLength.Millimetres, units)} {pattern.Sku ?? "remnant"}";
        var group = Svg.Group("stock");
        group.Add(
            Svg.Element("rect", ("x", Svg.N(at.X)), ("y", Svg.N(at.Y)), ("width", Svg.N(end - at.X)), ("height", Svg.N(Height)),
                ("fill", "none"), ("stroke", Ink.Dark), ("stroke-width", Svg.N(0.25))),
            Svg.Text(new(at.X, at.Y + Height + 2.8), text, LengthSize, ("fill", Ink.Soft)));
        return group;
    }

    XElement Rect(double x, double wide, string fill, string stroke) => Svg.Element(
        "rect", ("x", Svg.N(x)), ("y", Svg.N(at.Y)), ("width", Svg.N(wide)), ("height", Svg.N(Height)), ("fill", fill), ("stroke", stroke), ("stroke-width", Svg.N(0.12)));

    static XElement Words(double x, double y, string text, double size, bool bold = false) =>
        Svg.Text(new(x, y), text, size, ("text-anchor", "middle"), ("fill", Ink.Dark), ("font-weight", bold ? "bold" : "normal"));
}
