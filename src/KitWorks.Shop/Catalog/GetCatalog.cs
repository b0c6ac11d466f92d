using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;

namespace KitWorks.Shop.Catalog;

/// <summary>The whole catalog as it stands.</summary>
public sealed record GetCatalog : IQuery<ShopCatalog>;

/// <summary>The whole catalog as it stands, and which it is.</summary>
public sealed record GetDatedCatalog : IQuery<DatedCatalog>;

/// <summary>A catalog, and a word that is another whenever the catalog is another.</summary>
public sealed record DatedCatalog(ShopCatalog Catalog, string Version);

/// <summary>The sections of the catalog, by the names they have in addresses.</summary>
static class Sections
{
    public const string HubSystems = "hub-systems", StrutStocks = "strut-stocks", Ties = "ties", Covers = "covers",
        Palette = "palette", Prices = "prices", Workshop = "workshop", Screening = "screening",
        Parcels = "parcels", Calendar = "calendar", Supplies = "supplies";
}

sealed class GetCatalogHandler(ShopDb db, CatalogShelf shelf) : IRequestHandler<GetCatalog, Outcome<ShopCatalog>>
{
    public async Task<Outcome<ShopCatalog>> Handle(GetCatalog query, CancellationToken cancellationToken) =>
        (await shelf.Read(db, cancellationToken)).Select(dated => dated.Catalog);
}

sealed class GetDatedCatalogHandler(ShopDb db, CatalogShelf shelf) : IRequestHandler<GetDatedCatalog, Outcome<DatedCatalog>>
{
    public Task<Outcome<DatedCatalog>> Handle(GetDatedCatalog query, CancellationToken cancellationToken) => shelf.Read(db, cancellationToken);
}
