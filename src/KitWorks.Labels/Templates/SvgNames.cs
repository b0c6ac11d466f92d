using System.Xml.Linq;

namespace KitWorks.Labels.Templates;

/// <summary>The names of SVG.</summary>
static class SvgNames
{
    public static readonly XNamespace Space = "http://www.w3.org/2000/svg";

    public static XName Of(string local) => Space + local;
}
