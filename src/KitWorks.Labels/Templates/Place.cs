using System.Xml;
using System.Xml.Linq;
using KitWorks.Geometry;

namespace KitWorks.Labels.Templates;

/// <summary>Where a text stands in a template, and what it says there; errors name it.</summary>
sealed record Place(string File, int Line, string Text)
{
    public static Place Of(string file, XObject node, string text) => new(file, ((IXmlLineInfo)node).LineNumber, Trim(text));

    public Refusal Refuse(string what) => new(RefusalKind.Impossible, "label.template", $"{File}, line {Line}: {(Text.Length > 0 ? $"“{Text}”: " : "")}{what}");

    static string Trim(string text)
    {
        var line = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return line.Length <= 120 ? line : line[..117] + "…";
    }
}
