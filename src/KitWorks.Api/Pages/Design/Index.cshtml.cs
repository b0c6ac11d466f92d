using KitWorks.Api.Http;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Quotes;
using MediatR;
using Length = KitWorks.Geometry.Length;

namespace KitWorks.Api.Pages.Design;

/// <summary>From what a customer needs, ground and headroom, to the shelters that would do.</summary>
sealed class NeedModel(IMediator mediator) : BenchPage(mediator)
{
    public override bool PlacesRefusals => true;
    public string? Long { get; private set; }
    public string? Wide { get; private set; }
    public string? Headroom { get; private set; }
    public int Kits { get; private set; } = 1;
    public string? Cover { get; private set; }
    public IReadOnlyList<CoverMaterial> Covers { get; private set; } = [];
    public bool Asked { get; private set; }
    public Suggestions? Found { get; private set; }

    public async Task OnGet(string? @long, string? wide, string? headroom, string? cover, int kits = 1)
    {
        (Long, Wide, Headroom, Kits, Cover) = (@long, wide, headroom, kits, cover);
        if (await Ask(new GetCatalog()) is not { } catalog) return;
        Covers = catalog.Covers;
        Asked = !string.IsNullOrWhiteSpace(@long) || !string.IsNullOrWhiteSpace(wide);
        if (!Asked) return;
        if (Read("length", @long, out var along) && Read("width", wide, out var across) && Read("headroom", headroom, out var high))
            Found = await Ask(new SuggestDesigns
            {
                Long = along, Wide = across, Headroom = high, Quantity = kits, Cover = string.IsNullOrEmpty(cover) ? null : new(1, cover),
            });
    }

    public static string PictureOf(TriedDesign offer) => DesignInQuery.AddressOf(offer.Kit, 1).Replace("/design/shelter?", "/design/sketch.svg?", StringComparison.Ordinal);

    /// <summary>What a shelter is, for somebody who sells it and not only for who builds it.</summary>
    public static string NameOf(Kit kit) => kit.Design.Shelter switch
    {
        Dome dome => $"Round, {dome.Lattice.Frequency}V dome, {dome.Cut} of the sphere",
        Oblong oblong => $"Long, {oblong.Fold}-fold{(oblong.Frequency > 1 ? $", {oblong.Frequency}V" : "")}{(oblong.Bays == 0 ? "" : oblong.Bays < 0 ? ", shortened" : $", {oblong.Bays} bays")}",
        _ => "",
    };

    bool Read(string what, string? text, out Length? length)
    {
        length = null;
        if (string.IsNullOrWhiteSpace(text)) return true;
        if (LengthText.TryParse(text.Trim(), out var read))
        {
            length = read;
            return true;
        }
        Refuse(Refusal.OfField("request.invalid", what, $"The {what} '{text}' is not a length: {LengthText.WhatIsRight}."));
        return false;
    }
}
