using System.Xml.Linq;
using KitWorks.Geometry;

namespace KitWorks.Labels.Templates;

/// <summary>What a template may not hold.</summary>
static class TemplateRules
{
    static readonly XName LinkName = XName.Get("href", "http://www.w3.org/1999/xlink");

    /// <summary>The first rule that a template breaks, or null.</summary>
    public static Refusal? Broken(string file, XElement svg, bool isPicture) => svg.DescendantsAndSelf()
        .Select(e => BrokenBy(file, e, isPicture)).FirstOrDefault(r => r is not null) ?? Nested(file, svg);

    /// <summary>A copy of copies: a few lines of it can stand for more shapes than are ever drawn to an end.</summary>
    static Refusal? Nested(string file, XElement svg)
    {
        var uses = svg.Descendants(SvgNames.Of("use")).ToList();
        var holding = uses.SelectMany(u => u.AncestorsAndSelf()).Select(e => "#" + (string?)e.Attribute("id")).ToHashSet();
        return uses.Where(u => ((string?)(u.Attribute(LinkName) ?? u.Attribute("href"))) is { } target && holding.Contains(target))
            .Select(u => Place.Of(file, u, "<use>").Refuse("A copy is of something that holds no copy itself.")).FirstOrDefault();
    }

    static Refusal? BrokenBy(string file, XElement element, bool isPicture)
    {
        foreach (var attribute in element.Attributes().Where(a => !isPicture && Placeholder.IsIn(a.Value)))
            return Place.Of(file, attribute, attribute.ToString()).Refuse("A placeholder stands in text or in a description, not in an attribute.");
        if (element.Name.LocalName is "script" or "foreignObject")
            return Place.Of(file, element, $"<{element.Name.LocalName}>").Refuse("A template holds no scripts and no foreign objects.");
        if ((element.Attribute(LinkName) ?? element.Attribute("href")) is { } link && element.Name.LocalName != "a"
            && !link.Value.StartsWith('#') && !link.Value.StartsWith("data:", StringComparison.Ordinal))
            return Place.Of(file, link, link.Value).Refuse("A template takes nothing from outside its file; embed the picture.");
        if (element.Name == SvgNames.Of("style") && (element.Value.Contains("@import", StringComparison.Ordinal) || HasOutsideUrl(element.Value)))
            return Place.Of(file, element, "<style>").Refuse("A template takes nothing from outside its file.");
        return element.Attributes().Where(a => HasOutsideUrl(a.Value)).Select(a => Place.Of(file, a, a.Value).Refuse("A template takes nothing from outside its file.")).FirstOrDefault();
    }

    static bool HasOutsideUrl(string css)
    {
        for (var at = css.IndexOf("url(", StringComparison.Ordinal); at >= 0; at = css.IndexOf("url(", at + 4, StringComparison.Ordinal))
        {
            var target = css.AsSpan(at + 4).TrimStart(" '\"");
            if (!target.StartsWith("#") && !target.StartsWith("data:")) return true;
        }
        return false;
    }
}
