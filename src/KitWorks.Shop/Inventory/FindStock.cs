using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Inventory;

/// <summary>Stock items by what is on a shelf's label or in somebody's mind: a bin, or a part of the SKU or of the description.</summary>
public sealed record FindStock(string Text, int Limit = 200) : IQuery<IReadOnlyList<StockItemAnswer>>;

sealed class FindStockHandler(ShopDb db) : IRequestHandler<FindStock, Outcome<IReadOnlyList<StockItemAnswer>>>
{
    public async Task<Outcome<IReadOnlyList<StockItemAnswer>>> Handle(FindStock query, CancellationToken cancellationToken)
    {
        var text = query.Text.Trim().ToUpperInvariant();
        return await GetStockItemHandler.Answers(db, i => i.Bin.ToUpper() == text || i.Sku.ToUpper().Contains(text) || i.Description.ToUpper().Contains(text))
            .Take(query.Limit).ToListAsync(cancellationToken);
    }
}
