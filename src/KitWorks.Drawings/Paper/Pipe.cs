using System.Text;
using System.Xml.Linq;
using KitWorks.Kits.Catalog;

namespace KitWorks.Drawings.Paper;

/// <summary>
/// A strut's look: a dark rim, the tag's colour inside, in the colour a pattern that reads in black and white, and a tick
/// for each band where a colour serves more than one type.
/// </summary>
static class Pipe
{
    /// <summary>Thinner than this, in millimetres, a pattern inside the line would only be dirt.</summary>
    public const double ThinnestPatterned = 0.55;

    /// <summary>Dash lengths in line widths; null is an unbroken line, empty none at all.</summary>
    static readonly double[]?[] Patterns = [[], [0.5, 1.1], [3.2, 1.4], [2.6, 0.9, 0.5, 0.9], null, [0.5, 3.4], [1.3, 1.3], [2.4, 0.8, 0.5, 0.8, 0.5, 0.8]];

    public static double Rim(double width) => Math.Clamp(width * 0.13, 0.05, 0.15);

    public static string Core(double width) => Svg.N(width - 2 * Rim(width));

    /// <summary>The pattern drawn over a core, as attributes of a path; none where the colour is plain or the line too thin.</summary>
    public static XElement? Pattern(string d, int pattern, string colour, double width)
    {
        var dashes = Patterns[pattern % Patterns.Length];
        if (dashes is [] || width < ThinnestPatterned) return null;
        var path = Svg.Path(d, ("stroke", Ink.On(colour)), ("stroke-width", Svg.N(Math.Max(0.12, width * 0.24))));
        if (dashes is not null) path.SetAttributeValue("stroke-dasharray", string.Join(' ', dashes.Select(dash => Svg.N(dash * width))));
        return path;
    }

    /// <summary>The path of a tag's ticks across a strut, starting some way from an end.</summary>
    public static string Bands(Spot from, Spot to, int bands, double start, double width)
    {
        var along = (to - from).Unit;
        var step = Math.Min(width * 0.95, (from.DistanceTo(to) - 2 * start) / Math.Max(1, bands - 1));
        var path = new StringBuilder();
        for (var i = 0; i < bands; i++)
        {
            var at = from + along * (start + i * step);
            path.Append(Svg.Segment(at + along.Turned * (width * 0.85), at - along.Turned * (width * 0.85)));
        }
        return path.ToString();
    }

    /// <summary>A short strut for a legend, with all that its tag has.</summary>
    public static XElement Swatch(Spot from, double length, double width, Tag tag, int pattern)
    {
        var to = from + new Spot(length, 0);
        var d = Svg.Segment(from, to);
        var swatch = Svg.Group("swatch", ("fill", "none"));
        swatch.Add(
            Svg.Path(d, ("stroke", Ink.Dark), ("stroke-width", Svg.N(width))),
            Svg.Path(Svg.Segment(from + new Spot(Rim(width), 0), to - new Spot(Rim(width), 0)), ("stroke", tag.Hex), ("stroke-width", Core(width))),
            Pattern(d, pattern, tag.Hex, width),
            tag.Bands > 1 ? Svg.Path(Bands(from, to, tag.Bands, width * 1.2, width), ("stroke", Ink.Dark), ("stroke-width", Svg.N(width * 0.3))) : null);
        return swatch;
    }
}
