using KitWorks.Geometry;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Planning;

/// <summary>Goods on their way, the soonest first; or all that ever were.</summary>
public sealed record ListExpected(int Limit, string? After, bool All = false) : IQuery<Page<ExpectedReceipt>>;

sealed class ListExpectedHandler(ShopDb db) : IRequestHandler<ListExpected, Outcome<Page<ExpectedReceipt>>>
{
    public async Task<Outcome<Page<ExpectedReceipt>>> Handle(ListExpected query, CancellationToken cancellationToken)
    {
        var skip = 0;
        if (query.After is { } after && (!int.TryParse(after, out skip) || skip < 0)) return Pages.BadCursor;
        var purchases = await db.Purchases.AsNoTracking().Where(p => query.All || !p.IsClosed).OrderBy(p => p.ExpectedOn).ThenBy(p => p.Reference)
            .Skip(skip).Take(query.Limit + 1).ToListAsync(cancellationToken);
        return Pages.Of(purchases.ConvertAll(ExpectedReceipt.Of), query.Limit, _ => $"{skip + query.Limit}");
    }
}
