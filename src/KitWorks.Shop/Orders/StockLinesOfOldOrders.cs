using KitWorks.Kits;
using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

static class StockLinesOfOldOrders
{
    /// <summary>Fills in what orders of the first version take from stock, which worked it out from the kit each time.</summary>
    public static async Task FillInStockLines(this ShopDb db, CancellationToken cancellationToken)
    {
        var without = await db.Orders.Where(o => o.StockLines == "").Select(o => new { o.Id, o.Quantity }).ToListAsync(cancellationToken);
        foreach (var order in without)
        {
            var kit = await db.OrderKits.AsNoTracking().SingleAsync(k => k.OrderId == order.Id, cancellationToken);
            var lines = StoredJson.Write(Order.LinesOf(StoredJson.Unpack<Kit>(kit.Packed), order.Quantity));
            await db.Orders.Where(o => o.Id == order.Id && o.StockLines == "")
                .ExecuteUpdateAsync(u => u.SetProperty(o => o.StockLines, lines), cancellationToken);
        }
    }
}
