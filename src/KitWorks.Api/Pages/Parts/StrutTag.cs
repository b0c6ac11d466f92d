using System.Net;
using System.Text;
using KitWorks.Kits.Catalog;
using Microsoft.AspNetCore.Razor.TagHelpers;

namespace KitWorks.Api.Pages.Parts;

/// <summary>A strut type's tag as it is printed: its colour on white, with as many bands as the strut carries. Drawn, because the content policy takes no style in a page.</summary>
[HtmlTargetElement("strut-tag", TagStructure = TagStructure.WithoutEndTag)]
public sealed class StrutTag : TagHelper
{
    /// <summary>The tag.</summary>
    public Tag? Tag { get; set; }

    /// <summary>Another colour to draw it in, as somebody else's eyes would see it.</summary>
    public string? SeenAs { get; set; }

    /// <inheritdoc/>
    public override void Process(TagHelperContext context, TagHelperOutput output)
    {
        ArgumentNullException.ThrowIfNull(output);
        if (Tag is null)
        {
            output.SuppressOutput();
            return;
        }
        output.TagName = null;
        output.Content.SetHtmlContent(Draw(Tag, SeenAs ?? Tag.Hex));
    }

    static string Draw(Tag tag, string hex)
    {
        var words = WebUtility.HtmlEncode($"{tag.Colour}, {(tag.Bands == 1 ? "one band" : $"{tag.Bands} bands")}");
        var svg = new StringBuilder($"<svg class=\"tag\" viewBox=\"0 0 48 20\" role=\"img\" aria-label=\"{words}\"><title>{words}</title><rect x=\".75\" y=\".75\" width=\"46.5\" height=\"18.5\" rx=\"3\" fill=\"#fff\" stroke=\"#17212b\" stroke-width=\"1.5\"/>");
        // The bands share the tag's width; gaps keep them countable without colour.
        const double left = 5, room = 38, gap = 3;
        var width = Math.Min(12, (room - gap * (tag.Bands - 1)) / tag.Bands);
        var start = left + (room - tag.Bands * width - gap * (tag.Bands - 1)) / 2;
        for (var i = 0; i < tag.Bands; i++)
            svg.Append($"<rect x=\"{start + i * (width + gap):0.##}\" y=\"1.5\" width=\"{width:0.##}\" height=\"17\" fill=\"{WebUtility.HtmlEncode(hex)}\" stroke=\"#17212b\" stroke-width=\".75\"/>");
        return svg.Append("</svg>").ToString();
    }
}
