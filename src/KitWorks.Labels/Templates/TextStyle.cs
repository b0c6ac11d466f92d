using System.Globalization;
using System.Xml.Linq;
using KitWorks.Geometry;
using SkiaSharp;

namespace KitWorks.Labels.Templates;

/// <summary>How text looks, inherited from an element to those inside it.</summary>
sealed record TextStyle(string Family, bool Bold, float Size, SKColor Colour, SKTextAlign Anchor)
{
    /// <summary>What cannot be done; it matters only where there is text of this style.</summary>
    public Refusal? Fault { get; private init; }

    /// <summary>The style of an element: this one with what the element says about itself.</summary>
    public TextStyle Of(XElement element, Stylesheet sheet, Func<string, bool> knowsFamily, string file)
    {
        var style = this;
        foreach (var (name, value) in sheet.DeclarationsOf(element))
        {
            var (next, wrong) = style.With(name, value, knowsFamily);
            style = wrong is null ? next : style with { Fault = style.Fault ?? Place.Of(file, element, $"{name}: {value}").Refuse(wrong) };
        }
        return style;
    }

    (TextStyle Style, string? Wrong) With(string name, string value, Func<string, bool> knowsFamily) => name switch
    {
        "font-family" => value.Split(',').Select(f => f.Trim(' ', '\'', '"')).FirstOrDefault(f => IsAnySans(f) || knowsFamily(f)) is { } family
            ? (IsAnySans(family) ? this : this with { Family = family }, null)
            : (this, "None of these fonts is in a font folder."),
        "font-weight" => (this with { Bold = value is "bold" or "bolder" || int.TryParse(value, CultureInfo.InvariantCulture, out var w) && w >= 600 }, null),
        "font-size" => TryNumber(value, out var size) && size > 0 ? (this with { Size = size }, null) : (this, "A font size is a number in the drawing's units."),
        "fill" => TryColour(value, out var colour) ? (this with { Colour = colour }, null) : (this, "A text's colour is #rrggbb, black or white."),
        "text-anchor" => value switch
        {
            "start" => (this with { Anchor = SKTextAlign.Left }, null),
            "middle" => (this with { Anchor = SKTextAlign.Center }, null),
            "end" => (this with { Anchor = SKTextAlign.Right }, null),
            _ => (this, "A text anchor is start, middle or end."),
        },
        _ => (this, null),
    };

    // Names that stand for whatever plain font there is.
    static bool IsAnySans(string family) => family.ToUpperInvariant() is "SANS-SERIF" or "HELVETICA" or "ARIAL";

    /// <summary>Reads a number of user units; px is what drawing programs write for them.</summary>
    public static bool TryNumber(string text, out float number) => float.TryParse(
        text.EndsWith("px", StringComparison.Ordinal) ? text[..^2] : text, NumberStyles.Float, CultureInfo.InvariantCulture, out number) && float.IsFinite(number);

    static bool TryColour(string text, out SKColor colour)
    {
        colour = text switch { "black" => SKColors.Black, "white" => SKColors.White, "none" => SKColors.Transparent, _ => default };
        return colour != default || text == "none" || SKColor.TryParse(text, out colour) || TryRgb(text, out colour);
    }

    static bool TryRgb(string text, out SKColor colour)
    {
        colour = default;
        if (!text.StartsWith("rgb(", StringComparison.Ordinal) || !text.EndsWith(')')) return false;
        var parts = text[4..^1].Split([',', ' '], StringSplitOptions.RemoveEmptyEntries);
        var channels = parts.Select(p => byte.TryParse(p, CultureInfo.InvariantCulture, out var b) ? b : (byte?)null).OfType<byte>().ToArray();
        if (parts.Length != 3 || channels.Length != 3) return false;
        colour = new(channels[0], channels[1], channels[2]);
        return true;
    }
}
