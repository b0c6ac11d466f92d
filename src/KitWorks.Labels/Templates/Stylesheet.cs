using System.Xml.Linq;
using ExCSS;

namespace KitWorks.Labels.Templates;

/// <summary>The style rules of one drawing: enough of CSS for what drawing programs write, which is rules for classes, ids and element names.</summary>
sealed class Stylesheet
{
    readonly ILookup<string, (string Name, string Value)> rules;

    Stylesheet(ILookup<string, (string, string)> rules) => this.rules = rules;

    public static Stylesheet Of(XElement svg)
    {
        var css = string.Join('\n', svg.Descendants(SvgNames.Of("style")).Select(s => s.Value));
        var parsed = new StylesheetParser(includeUnknownDeclarations: true).Parse(css);
        return new((
            from rule in parsed.StyleRules.OfType<StyleRule>()
            from selector in rule.SelectorText.Split(',')
            from property in rule.Style
            select (Selector: selector.Trim(), Property: (property.Name, property.Value))).ToLookup(r => r.Selector, r => r.Property));
    }

    /// <summary>What an element says about itself, the weightiest last: attributes, then rules, then its own style.</summary>
    public IEnumerable<(string Name, string Value)> DeclarationsOf(XElement element)
    {
        var classes = ((string?)element.Attribute("class") ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return element.Attributes().Where(a => a.Name.NamespaceName.Length == 0).Select(a => (a.Name.LocalName, a.Value))
            .Concat(rules[element.Name.LocalName])
            .Concat(classes.SelectMany(c => rules["." + c]))
            .Concat(element.Attribute("id") is { } id ? rules["#" + id.Value] : [])
            .Concat(Inline((string?)element.Attribute("style") ?? ""));
    }

    static IEnumerable<(string, string)> Inline(string style) =>
        from declaration in style.Split(';', StringSplitOptions.RemoveEmptyEntries)
        let colon = declaration.IndexOf(':', StringComparison.Ordinal)
        where colon > 0
        select (declaration[..colon].Trim(), declaration[(colon + 1)..].Trim());
}
