using KitWorks.Shop.Orders;
using KitWorks.Shop.Packing;
using Microsoft.AspNetCore.Razor.TagHelpers;

namespace KitWorks.Api.Pages.Parts;

/// <summary>Where an order or a bundle stands, as a filling disc and a word: the disc says it without colour, the word without sight.</summary>
[HtmlTargetElement("state", TagStructure = TagStructure.WithoutEndTag)]
public sealed class StateTag : TagHelper
{
    /// <summary>An order's state.</summary>
    [HtmlAttributeName("order")]
    public OrderStatus? OfOrder { get; set; }

    /// <summary>A bundle's state.</summary>
    [HtmlAttributeName("bundle")]
    public BundleStatus? OfBundle { get; set; }

    /// <inheritdoc/>
    public override void Process(TagHelperContext context, TagHelperOutput output)
    {
        ArgumentNullException.ThrowIfNull(output);
        var (word, tone, disc) = OfOrder is { } order ? Of(order) : Of(OfBundle ?? default);
        output.TagName = "span";
        output.TagMode = TagMode.StartTagAndEndTag;
        output.Attributes.SetAttribute("class", $"state {tone}");
        output.Content.SetHtmlContent($"<svg viewBox=\"0 0 16 16\" aria-hidden=\"true\"><circle cx=\"8\" cy=\"8\" r=\"6.5\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2\"/>{disc}</svg>{word}");
    }

    const string Quarter = "<path d=\"M8 8V3a5 5 0 0 1 5 5z\" fill=\"currentColor\"/>", Half = "<path d=\"M8 3a5 5 0 0 1 0 10z\" fill=\"currentColor\"/>",
        Full = "<circle cx=\"8\" cy=\"8\" r=\"4.2\" fill=\"currentColor\"/>", Gone = "<path d=\"M5 8h6M8.5 5 11.5 8l-3 3\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"1.8\"/>",
        Off = "<path d=\"M5.5 5.5l5 5m0-5-5 5\" stroke=\"currentColor\" stroke-width=\"1.8\"/>";

    static (string, string, string) Of(OrderStatus status) => (Say.Status(status), status switch
    {
        OrderStatus.Waiting => "wait",
        OrderStatus.Reserved or OrderStatus.Picking => "go",
        OrderStatus.Packed => "good",
        OrderStatus.Shipped or OrderStatus.Cancelled => "past",
    }, status switch
    {
        OrderStatus.Waiting => "",
        OrderStatus.Reserved => Quarter,
        OrderStatus.Picking => Half,
        OrderStatus.Packed => Full,
        OrderStatus.Shipped => Gone,
        OrderStatus.Cancelled => Off,
    });

    static (string, string, string) Of(BundleStatus status) => status switch
    {
        BundleStatus.Open => ("open", "go", ""),
        BundleStatus.Packed => ("packed", "good", Full),
        BundleStatus.Shipped => ("shipped", "past", Gone),
    };
}
