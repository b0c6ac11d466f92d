using System.Globalization;
using System.Xml.Linq;
using KitWorks.Drawings;
using KitWorks.Kits;
using KitWorks.Kits.Cutting;
using KitWorks.Labels.Templates;

namespace KitWorks.Labels;

/// <summary>One cutting pattern to scale, with codes to be read from where the saw stands.</summary>
static class PatternPicture
{
    const double Width = 184, Height = 18, Bar = 12;

    public static string Draw(CutPattern pattern, double longestMm, IReadOnlyList<StrutType> types, Units units)
    {
        var scale = Width / longestMm;
        var svg = new XElement(SvgNames.Of("svg"), new XAttribute("width", Width + "mm"), new XAttribute("height", Height + "mm"),
            new XAttribute("viewBox", $"0 0 {Width} {Height}"), new XAttribute("font-family", "sans-serif"));
        svg.Add(Rect(0, pattern.StockLength.Millimetres * scale, "#EEEEEE"));
        var pieces = pattern.Cuts.SelectMany(c => Enumerable.Repeat(c, c.Count)).ToList();
        var lost = pattern.StockLength.Millimetres - pattern.Remnant.Millimetres - pieces.Sum(p => p.CutLength.Millimetres);
        var gap = pieces.Count == 0 ? 0 : Math.Max(0, lost) / pieces.Count * scale;
        var x = 0.0;
        foreach (var piece in pieces)
        {
            var wide = piece.CutLength.Millimetres * scale;
            svg.Add(Rect(x, wide, "#FFFFFF"));
            if (types.FirstOrDefault(t => t.Code == piece.Code) is { } type) svg.Add(Bands(x, wide, type));
            svg.Add(Text(x + wide / 2 + 1.5, Bar * 0.62, Math.Min(5, wide / 3), piece.Code, bold: true));
            if (wide > 20) svg.Add(Text(x + wide / 2, Bar + 4, Math.Min(3, wide / 9), Measure.Part(piece.CutLength.Millimetres, units), bold: false));
            x += wide + gap;
        }
        return svg.ToString(SaveOptions.DisableFormatting);
    }

    // Bands at the piece's left end, as on the strut itself.
    static IEnumerable<XElement> Bands(double x, double wide, StrutType type)
    {
        var band = Math.Min(2.4, wide * 0.3 / (2 * type.Tag.Bands));
        for (var i = 0; i < type.Tag.Bands; i++) yield return Rect(x + band * (0.5 + 1.5 * i), band, type.Tag.Hex);
    }

    static XElement Rect(double x, double wide, string fill) => new(SvgNames.Of("rect"), new XAttribute("x", N(x)), new XAttribute("y", "0.2"),
        new XAttribute("width", N(wide)), new XAttribute("height", N(Bar)), new XAttribute("fill", fill), new XAttribute("stroke", "#000000"), new XAttribute("stroke-width", "0.25"));

    static XElement Text(double x, double y, double size, string words, bool bold) => new(SvgNames.Of("text"), new XAttribute("x", N(x)), new XAttribute("y", N(y)),
        new XAttribute("font-size", N(size)), new XAttribute("font-weight", bold ? "bold" : "normal"), new XAttribute("text-anchor", "middle"), words);

    static string N(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
