using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using KitWorks.Geometry;
using SkiaSharp;

namespace KitWorks.Labels.Templates;

/// <summary>Reads the transform attribute of SVG.</summary>
static partial class Transform
{
    [GeneratedRegex(@"\G[\s,]*(?<name>[a-zA-Z]+)\s*\((?<numbers>[^)]*)\)[\s,]*")]
    private static partial Regex Step();

    public static Outcome<SKMatrix> Of(XElement element, string file)
    {
        var text = (string?)element.Attribute("transform") ?? "";
        var matrix = SKMatrix.Identity;
        var read = 0;
        foreach (Match step in Step().Matches(text))
        {
            read += step.Length;
            var numbers = step.Groups["numbers"].Value.Split([' ', ',', '\n', '\t'], StringSplitOptions.RemoveEmptyEntries)
                .Select(n => float.TryParse(n, CultureInfo.InvariantCulture, out var x) ? x : float.NaN).ToArray();
            if (Read(step.Groups["name"].Value, numbers) is not { } next) return Wrong();
            matrix = matrix.PreConcat(next);
        }
        return read == text.Length ? matrix : Wrong();

        Refusal Wrong() => Place.Of(file, element, text).Refuse("This transform cannot be read.");
    }

    static SKMatrix? Read(string name, float[] n) => (name, n) switch
    {
        (_, _) when n.Any(float.IsNaN) => null,
        ("matrix", [var a, var b, var c, var d, var e, var f]) => new SKMatrix(a, c, e, b, d, f, 0, 0, 1),
        ("translate", [var x]) => SKMatrix.CreateTranslation(x, 0),
        ("translate", [var x, var y]) => SKMatrix.CreateTranslation(x, y),
        ("scale", [var s]) => SKMatrix.CreateScale(s, s),
        ("scale", [var x, var y]) => SKMatrix.CreateScale(x, y),
        ("rotate", [var degrees]) => SKMatrix.CreateRotationDegrees(degrees),
        ("rotate", [var degrees, var x, var y]) => SKMatrix.CreateRotationDegrees(degrees, x, y),
        _ => null,
    };
}
