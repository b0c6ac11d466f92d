using KitWorks.Shop.Orders;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Storage;

/// <summary>Brings a database to what this version of the program expects.</summary>
public static class Upgrading
{
    /// <summary>Applies the migrations that are pending, and then works out what no SQL can.</summary>
    public static async Task Upgrade(this ShopDb db, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        await db.Database.MigrateAsync(cancellationToken);
        await db.FillInStockLines(cancellationToken);
    }
}
