using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Catalog;

/// <summary>The whole catalog as it stands.</summary>
public sealed record GetCatalog : IQuery<ShopCatalog>;

/// <summary>The sections of the catalog, by the names they have in addresses.</summary>
static class Sections
{
    public const string HubSystems = "hub-systems", StrutStocks = "strut-stocks", Ties = "ties", Covers = "covers",
        Palette = "palette", Prices = "prices", Workshop = "workshop", Screening = "screening",
        Parcels = "parcels", Calendar = "calendar", Supplies = "supplies";
}

sealed class GetCatalogHandler(ShopDb db) : IRequestHandler<GetCatalog, Outcome<ShopCatalog>>
{
    public async Task<Outcome<ShopCatalog>> Handle(GetCatalog query, CancellationToken cancellationToken)
    {
        var json = await db.CatalogSections.AsNoTracking().ToDictionaryAsync(s => s.Name, s => s.Json, cancellationToken);
        if (json.Count == 0)
            return new Refusal(RefusalKind.Conflict, "catalog.empty", "The shop has no catalog yet. Put one with PUT /api/catalog, hub systems, strut stocks and ties first.");
        return new ShopCatalog
        {
            HubSystems = Section<ImmutableArray<HubSystem>>(Sections.HubSystems, []),
            StrutStocks = Section<ImmutableArray<StrutStock>>(Sections.StrutStocks, []),
            Ties = Section<ImmutableArray<Tie>>(Sections.Ties, []),
            Covers = Section<ImmutableArray<CoverMaterial>>(Sections.Covers, []),
            Palette = Section(Sections.Palette, Palette.ColourBlindSafe),
            Prices = Section(Sections.Prices, new PriceBook { Currency = "USD", UnitCosts = ImmutableDictionary<string, decimal>.Empty }),
            Workshop = Section(Sections.Workshop, new Workshop()),
            Parcels = Section(Sections.Parcels, new ParcelRules()),
            Calendar = Section(Sections.Calendar, new WorkCalendar()),
            Supplies = Section<ImmutableArray<Supply>>(Sections.Supplies, []),
            Screening = Section(Sections.Screening, new ScreeningRules()),
        };

        T Section<T>(string name, T otherwise) => json.TryGetValue(name, out var text) ? StoredJson.Read<T>(text) : otherwise;
    }
}
