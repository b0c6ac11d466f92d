using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Inventory;

/// <summary>Makes sure that these items are kept in stock: new ones start at nothing, known ones take the new words.</summary>
public sealed record KeepStockItems(IReadOnlyList<StockItemWords> Items) : ICommand<Unit>;

/// <summary>What is known of a stock item besides its balance. Null bin and reorder point leave what is there.</summary>
public sealed record StockItemWords(string Sku, string Kind, string Description, string Unit, string? Bin = null, int? ReorderAt = null);

sealed class KeepStockItemsHandler(ShopDb db) : IRequestHandler<KeepStockItems, Outcome<Unit>>
{
    public async Task<Outcome<Unit>> Handle(KeepStockItems command, CancellationToken cancellationToken)
    {
        var known = await db.StockItems.ToDictionaryAsync(i => i.Sku, cancellationToken);
        foreach (var words in command.Items)
        {
            if (known.TryGetValue(words.Sku, out var item))
            {
                (item.Description, item.Unit) = (words.Description, words.Unit);
                item.Bin = words.Bin ?? item.Bin;
                item.ReorderAt = words.ReorderAt ?? item.ReorderAt;
                continue;
            }
            db.StockItems.Add(new()
            {
                Sku = words.Sku, Kind = words.Kind, Description = words.Description, Unit = words.Unit, Bin = words.Bin ?? "", ReorderAt = words.ReorderAt ?? 0,
            });
            db.StockBalances.Add(new() { Sku = words.Sku });
        }
        return Unit.Value;
    }
}
