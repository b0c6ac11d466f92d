using KitWorks.Api.Hosting;
using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;

namespace KitWorks.Api.Verbs;

/// <summary>The database of a verb that only looks; it makes none.</summary>
static class ExistingDatabase
{
    /// <exception cref="SettingException">There is none.</exception>
    public static async Task<DatabaseFacade> In(IServiceProvider services, CancellationToken cancellationToken)
    {
        var database = services.GetRequiredService<ShopDb>().Database;
        return await database.CanConnectAsync(cancellationToken)
            ? database
            : throw new SettingException($"There is no database at {database.GetDbConnection().DataSource}. Say which with ConnectionStrings__KitWorks.");
    }
}
