using System.Xml.Linq;
using SkiaSharp;
using Svg;
using Svg.Model;
using Svg.Skia;

namespace KitWorks.Labels.Templates;

/// <summary>Renders what stays the same on every label, once, as a picture in the drawing's units.</summary>
sealed class FixedPicture(XElement svg, Func<XElement, bool> isDynamic)
{
    static readonly string[] Shapes = ["path", "rect", "circle", "ellipse", "line", "polyline", "polygon", "image", "use"];

    /// <summary>The fixed part of a group or of the whole drawing, or null where there is none.</summary>
    public SKPicture? Of(XElement scope)
    {
        var copy = Copy(svg, scope, svg == scope);
        if (!copy.Descendants().Any(e => Shapes.Contains(e.Name.LocalName) && !e.Ancestors().Any(a => a.Name.LocalName == "defs"))) return null;
        var box = ((string)svg.Attribute("viewBox")!).Split([' ', ','], StringSplitOptions.RemoveEmptyEntries);
        copy.SetAttributeValue("width", box[2]);
        copy.SetAttributeValue("height", box[3]);
        return Render(copy.ToString());
    }

    /// <summary>A drawing as a picture; nothing outside it is fetched.</summary>
    public static SKPicture? Render(string source)
    {
        var closed = new SvgDocumentLoadOptions { ExternalResources = SvgExternalResourcePolicy.SameDocumentAndDataOnly };
        using var stream = new MemoryStream(System.Text.Encoding.UTF8.GetBytes(source));
        using var drawing = new SKSvg();
        var model = drawing.Load(stream, new SvgParameters(null, null, null, closed));
        if (model is null) return null;
        // The drawing owns its picture; ours outlives it.
        using var recorder = new SKPictureRecorder();
        recorder.BeginRecording(model.CullRect).DrawPicture(model);
        return recorder.EndRecording();
    }

    XElement Copy(XElement element, XElement scope, bool inside)
    {
        var copy = new XElement(element.Name, element.Attributes());
        if (element.Name.LocalName is "defs" or "style")
        {
            copy.Add(element.Nodes());
            return copy;
        }
        foreach (var child in element.Elements().Where(c => c.Name.Namespace == SvgNames.Space))
        {
            if (child.Name.LocalName is "defs" or "style") copy.Add(Copy(child, scope, inside));
            else if (child == scope) copy.Add(Copy(child, scope, true));
            else if (inside ? !isDynamic(child) : child.Descendants().Contains(scope)) copy.Add(Copy(child, scope, inside));
        }
        return copy;
    }
}
