using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Catalog;

/// <summary>Whose turn it is in this shop when stock is short. Asked with every order, so that it reads one section only.</summary>
public sealed record GetTurns : IQuery<Turns>;

sealed class GetTurnsHandler(ShopDb db) : IRequestHandler<GetTurns, Outcome<Turns>>
{
    public async Task<Outcome<Turns>> Handle(GetTurns query, CancellationToken cancellationToken) =>
        await db.CatalogSections.Where(s => s.Name == Sections.Workshop).Select(s => s.Json).FirstOrDefaultAsync(cancellationToken) is { } workshop
            ? StoredJson.Read<Workshop>(workshop).Turns
            : new Workshop().Turns;
}
