using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Standing;

namespace KitWorks.Kits;

/// <summary>What a design names, found in a catalog.</summary>
sealed record Materials(HubSystem HubSystem, StrutStock StrutStock, Tie Tie, ChosenCover? Cover)
{
    /// <summary>The fittings with the pipe that a design names, or where it names none the smallest that passes the screening.</summary>
    public static Outcome<Materials> Complete(Fittings fittings, Design design, Screener? screener, ShopCatalog catalog)
    {
        var pipe = catalog.StrutStocks.FirstOrDefault(s => s.Code == design.StrutStock);
        if (pipe is null && design.StrutStock is not null) return NotInCatalog.Of("strutStock", design.StrutStock, catalog.StrutStocks.Select(s => s.Code));
        pipe ??= screener is null ? null : Choice.Of(screener, catalog)?.Strongest;
        return pipe is not null
            ? new Materials(fittings.HubSystem, pipe, fittings.Tie, fittings.Cover)
            : Refusal.OfField("design.no-choice", "strutStock",
                $"None could be chosen for this shelter by screening: name a strut stock of the catalog, which has {string.Join(", ", catalog.StrutStocks.Select(s => s.Code))}.");
    }
}

/// <summary>What goes with the pipe: the hub system, the tie it is rated with, and the cover.</summary>
sealed record Fittings(HubSystem HubSystem, Tie Tie, ChosenCover? Cover)
{
    public static Outcome<Fittings> Choose(Design design, ShopCatalog catalog)
    {
        var hubs = catalog.HubSystems.FirstOrDefault(h => h.Code == design.HubSystem);
        if (hubs is null) return NotInCatalog.Of("hubSystem", design.HubSystem, catalog.HubSystems.Select(h => h.Code));
        var tie = catalog.Ties.First(t => t.Sku == hubs.TieSku);
        if (design.Cover is not { } cover) return new Fittings(hubs, tie, null);
        if (cover.Layers is < 1 or > 4)
            return Refusal.OfField("design.layers", "cover/layers", $"{cover.Layers} layers of cover: 1 to 4 can be had, or leave cover out.");
        var material = cover.Material is null ? catalog.Covers.FirstOrDefault() : catalog.Covers.FirstOrDefault(c => c.Code == cover.Material);
        return material is null
            ? NotInCatalog.Of("cover/material", cover.Material ?? "", catalog.Covers.Select(c => c.Code))
            : new Fittings(hubs, tie, new(material, cover.Layers));
    }
}

sealed record ChosenCover(CoverMaterial Material, int Layers);

static class NotInCatalog
{
    public static Refusal Of(string field, string value, IEnumerable<string> known) =>
        Refusal.OfField("design.not-in-catalog", field, $"'{value}' is not in the catalog; it has {string.Join(", ", known)}.");
}
