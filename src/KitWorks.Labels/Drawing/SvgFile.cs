using System.Globalization;
using System.Text;
using System.Xml.Linq;
using KitWorks.Labels.Templates;
using SkiaSharp;

namespace KitWorks.Labels.Drawing;

/// <summary>Writes a label as SVG: its size in millimetres, and the fonts it is set in inside it.</summary>
static class SvgFile
{
    public static string Write(Template template, int dpi, Ink ink, Action<SKCanvas> draw)
    {
        var dots = dpi / 25.4;
        var (width, height) = (template.WidthMm * dots, template.HeightMm * dots);
        using var buffer = new MemoryStream();
        using (var canvas = SKSvgCanvas.Create(SKRect.Create((float)width, (float)height), buffer)) draw(canvas);
        buffer.Position = 0;
        var svg = XDocument.Load(buffer).Root!;
        svg.SetAttributeValue("width", Mm(template.WidthMm));
        svg.SetAttributeValue("height", Mm(template.HeightMm));
        svg.SetAttributeValue("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {width:0.###} {height:0.###}"));
        var css = new StringBuilder();
        foreach (var (face, file) in ink.Files)
            css.Append(CultureInfo.InvariantCulture, $"@font-face{{font-family:'{face.Family}';font-weight:{(face.Bold ? "bold" : "normal")};src:url(data:font/ttf;base64,{Convert.ToBase64String(file.AsSpan())})}}");
        svg.AddFirst(new XElement(SvgNames.Of("style"), css.ToString()));
        foreach (var text in svg.Descendants(SvgNames.Of("text"))) text.Value = text.Value.Trim();
        return svg.ToString(SaveOptions.DisableFormatting);
    }

    static string Mm(double mm) => mm.ToString("0.###", CultureInfo.InvariantCulture) + "mm";
}
