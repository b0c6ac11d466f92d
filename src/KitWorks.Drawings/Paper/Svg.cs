using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace KitWorks.Drawings.Paper;

/// <summary>
/// Makes SVG elements from millimetres on paper. A user unit is a tenth of a millimetre, so that numbers stay short and
/// text is never smaller than a few units, which some renderers hint badly.
/// </summary>
static class Svg
{
    static readonly XNamespace Ns = "http://www.w3.org/2000/svg";

    /// <summary>A sheet with its title and description.</summary>
    public static XElement Sheet(double widthMm, double heightMm, string title, string description) => new(
        Ns + "svg",
        new XAttribute("viewBox", $"0 0 {N(widthMm)} {N(heightMm)}"),
        new XAttribute("width", Plain(widthMm) + "mm"),
        new XAttribute("height", Plain(heightMm) + "mm"),
        new XAttribute("role", "img"),
        new XElement(Ns + "title", Clean(title)),
        new XElement(Ns + "desc", Clean(description)),
        Element("rect", ("width", N(widthMm)), ("height", N(heightMm)), ("fill", Ink.Paper)));

    public static XElement Element(string name, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        var element = new XElement(Ns + name);
        foreach (var (key, value) in attributes) element.Add(new XAttribute(key, Clean(value)));
        return element;
    }

    public static XElement Group(string kind, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        var group = Element("g", attributes);
        group.SetAttributeValue("class", kind);
        return group;
    }

    public static XElement Line(Spot from, Spot to, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        var line = Element("line", ("x1", N(from.X)), ("y1", N(from.Y)), ("x2", N(to.X)), ("y2", N(to.Y)));
        foreach (var (key, value) in attributes) line.Add(new XAttribute(key, Clean(value)));
        return line;
    }

    public static XElement Path(string d, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        var path = Element("path", ("d", d));
        foreach (var (key, value) in attributes) path.Add(new XAttribute(key, Clean(value)));
        return path;
    }

    /// <summary>Text with its baseline at a spot; size in millimetres.</summary>
    public static XElement Text(Spot at, string text, double size, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        var element = Element("text", ("x", N(at.X)), ("y", N(at.Y)), ("font-size", N(size)));
        foreach (var (key, value) in attributes) element.Add(new XAttribute(key, Clean(value)));
        return element.Saying(text);
    }

    /// <summary>The element with text in it, without the characters that XML forbids.</summary>
    public static XElement Saying(this XElement element, string text)
    {
        element.Add(Clean(text));
        return element;
    }

    /// <summary>The path command of one straight line.</summary>
    public static string Segment(Spot from, Spot to) => $"M{N(from.X)} {N(from.Y)}L{N(to.X)} {N(to.Y)}";

    /// <summary>Millimetres in user units, to a hundredth of a millimetre.</summary>
    public static string N(double mm)
    {
        if (!double.IsFinite(mm)) throw new ArgumentOutOfRangeException(nameof(mm), mm, "A place on paper is a finite number.");
        var text = (mm * 10).ToString("0.#", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    /// <summary>A number as it is, to two decimals.</summary>
    public static string Plain(double value) => value.ToString("0.##", CultureInfo.InvariantCulture) is var text && text == "-0" ? "0" : text;

    /// <summary>The document as text, the same on every machine.</summary>
    public static string Write(XElement sheet)
    {
        var text = new StringBuilder();
        var settings = new XmlWriterSettings { OmitXmlDeclaration = true, Indent = true, IndentChars = " ", NewLineChars = "\n" };
        using (var writer = XmlWriter.Create(text, settings)) sheet.WriteTo(writer);
        return text.Append('\n').ToString();
    }

    static string Clean(string text) => text.All(XmlConvert.IsXmlChar) ? text : string.Concat(text.Where(XmlConvert.IsXmlChar));
}
