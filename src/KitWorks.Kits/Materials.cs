using KitWorks.Geometry;
using KitWorks.Kits.Catalog;

namespace KitWorks.Kits;

/// <summary>What a design names, found in a catalog.</summary>
sealed record Materials(HubSystem HubSystem, StrutStock StrutStock, Tie Tie, ChosenCover? Cover)
{
    public static Outcome<Materials> Choose(Design design, ShopCatalog catalog)
    {
        var hubs = catalog.HubSystems.FirstOrDefault(h => h.Code == design.HubSystem);
        if (hubs is null) return Unknown("hubSystem", design.HubSystem, catalog.HubSystems.Select(h => h.Code));
        var pipe = catalog.StrutStocks.FirstOrDefault(s => s.Code == design.StrutStock);
        if (pipe is null) return Unknown("strutStock", design.StrutStock, catalog.StrutStocks.Select(s => s.Code));
        var tie = catalog.Ties.First(t => t.Sku == hubs.TieSku);
        if (design.Cover is not { } cover) return new Materials(hubs, pipe, tie, null);
        if (cover.Layers is < 1 or > 4)
            return Refusal.OfField("design.layers", "cover/layers", $"{cover.Layers} layers of cover: 1 to 4 can be had, or leave cover out.");
        var material = cover.Material is null ? catalog.Covers.FirstOrDefault() : catalog.Covers.FirstOrDefault(c => c.Code == cover.Material);
        return material is null
            ? Unknown("cover/material", cover.Material ?? "", catalog.Covers.Select(c => c.Code))
            : new Materials(hubs, pipe, tie, new(material, cover.Layers));
    }

    static Refusal Unknown(string field, string value, IEnumerable<string> known) =>
        Refusal.OfField("design.not-in-catalog", field, $"'{value}' is not in the catalog; it has {string.Join(", ", known)}.");
}

sealed record ChosenCover(CoverMaterial Material, int Layers);
