using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Storage;

namespace KitWorks.Shop.Storage;

/// <summary>What the two databases do differently about connections and locks.</summary>
static class Connections
{
    /// <summary>Any number will do, as long as nobody else takes it in this database.</summary>
    const long WritersLock = 0x4B69_7457;

    /// <summary>Whether this is PostgreSQL; otherwise it is SQLite.</summary>
    public static bool IsPostgreSql(this DatabaseFacade database) => database.ProviderName!.EndsWith("PostgreSQL", StringComparison.Ordinal);

    /// <summary>
    /// Waits until no other instance writes, and holds the others off until the transaction ends. SQLite has one writer at
    /// a time by itself.
    /// </summary>
    public static async Task OneWriterAtATime(this DatabaseFacade database)
    {
        if (database.IsPostgreSql()) await database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({WritersLock})");
    }

    /// <summary>Puts a context into another's transaction until what is given back is disposed.</summary>
    public static async Task<IAsyncDisposable> Borrow(this DatabaseFacade database, DbConnection connection, IDbContextTransaction transaction)
    {
        var own = database.GetConnectionString();
        database.SetDbConnection(connection);
        await database.UseTransactionAsync(transaction.GetDbTransaction());
        database.AutoSavepointsEnabled = false;
        return new Loan(database, own);
    }

    sealed class Loan(DatabaseFacade database, string? own) : IAsyncDisposable
    {
        public async ValueTask DisposeAsync()
        {
            await database.UseTransactionAsync(null);
            database.SetDbConnection(null);
            database.SetConnectionString(own);
        }
    }
}
