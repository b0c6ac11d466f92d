using System.Globalization;

namespace KitWorks.Drawings.Paper;

/// <summary>The colours of a drawing that are not a tag's, and what is mixed from them.</summary>
static class Ink
{
    public const string Paper = "#FFFFFF";
    public const string Dark = "#1E2A35";
    public const string Soft = "#5B6875";
    public const string Line = "#93A0AC";
    public const string Pale = "#C9D1D8";
    public const string Faint = "#EDF1F4";

    /// <summary>Font families that most machines have one of.</summary>
    public const string Font = "Helvetica, Arial, 'DejaVu Sans', sans-serif";

    /// <summary>A colour part of the way from one to another.</summary>
    public static string Mix(string from, string to, double share)
    {
        var (a, b) = (Parse(from), Parse(to));
        return $"#{Channel(a.R, b.R, share):X2}{Channel(a.G, b.G, share):X2}{Channel(a.B, b.B, share):X2}";
    }

    /// <summary>Dark or white, whichever shows on a colour; luminance by the usual weights of ITU-R BT.601.</summary>
    public static string On(string colour)
    {
        var (r, g, b) = Parse(colour);
        return 0.299 * r + 0.587 * g + 0.114 * b > 90 ? Dark : Paper;
    }

    static int Channel(int from, int to, double share) => (int)Math.Round(from + (to - from) * share);

    static (int R, int G, int B) Parse(string colour) =>
        colour is ['#', ..] && colour.Length == 7 && int.TryParse(colour.AsSpan(1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var rgb)
            ? (rgb >> 16, rgb >> 8 & 255, rgb & 255)
            : throw new ArgumentException($"A colour is #RRGGBB, not '{colour}'.", nameof(colour));
}
