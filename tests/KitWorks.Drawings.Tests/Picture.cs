using System.Globalization;
using System.Xml.Linq;

namespace KitWorks.Drawings.Tests;

/// <summary>A drawing read back from its SVG, as a reader that knows nothing of the code that made it.</summary>
sealed class Picture(string svg)
{
    public XElement Root { get; } = XDocument.Parse(svg).Root!;

    public IEnumerable<XElement> All(string name) => Root.Descendants().Where(e => e.Name.LocalName == name);

    public IEnumerable<XElement> Group(string kind) => All("g").Where(e => (string?)e.Attribute("class") == kind);

    public IEnumerable<XElement> With(string attribute) => Root.Descendants().Where(e => e.Attribute(attribute) is not null);

    public (double Width, double Height) ViewBox
    {
        get
        {
            var numbers = Numbers((string)Root.Attribute("viewBox")!);
            return (numbers[2], numbers[3]);
        }
    }

    /// <summary>The four corners of each code's plate.</summary>
    public IEnumerable<(string Code, (double X, double Y)[] Corners)> Codes()
    {
        foreach (var g in Group("codes").Elements())
        {
            var place = Numbers(((string)g.Attribute("transform")!).Replace("translate(", "").Replace(") rotate(", " ").TrimEnd(')'));
            var rect = g.Elements().First(e => e.Name.LocalName == "rect");
            var (x, y, w, h) = (Number(rect, "x"), Number(rect, "y"), Number(rect, "width"), Number(rect, "height"));
            var (sin, cos) = Math.SinCos(place[2] * Math.PI / 180);
            (double, double) Turn(double a, double b) => (place[0] + a * cos - b * sin, place[1] + a * sin + b * cos);
            yield return (g.Value, [Turn(x, y), Turn(x + w, y), Turn(x + w, y + h), Turn(x, y + h)]);
        }
    }

    public static double Number(XElement element, string attribute) => double.Parse((string)element.Attribute(attribute)!, CultureInfo.InvariantCulture);

    public static double[] Numbers(string text) => [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(n => double.Parse(n, CultureInfo.InvariantCulture))];

    /// <summary>Whether two convex polygons overlap, by separating axes.</summary>
    public static bool Overlap((double X, double Y)[] a, (double X, double Y)[] b)
    {
        foreach (var polygon in new[] { a, b })
        {
            for (var i = 0; i < polygon.Length; i++)
            {
                var (p, q) = (polygon[i], polygon[(i + 1) % polygon.Length]);
                var (nx, ny) = (p.Y - q.Y, q.X - p.X);
                if (a.Max(c => c.X * nx + c.Y * ny) <= b.Min(c => c.X * nx + c.Y * ny) || b.Max(c => c.X * nx + c.Y * ny) <= a.Min(c => c.X * nx + c.Y * ny)) return false;
            }
        }
        return true;
    }
}
