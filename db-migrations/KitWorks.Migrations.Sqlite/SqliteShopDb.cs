using System.Data.Common;
using KitWorks.Shop.Storage;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace KitWorks.Migrations.Sqlite;

/// <summary>The shop's database in one SQLite file.</summary>
public static class SqliteShopDb
{
    /// <summary>Takes the database from a SQLite file, with durable commits and the migrations of this project.</summary>
    public static DbContextOptionsBuilder UseShopSqlite(this DbContextOptionsBuilder options, string connectionString)
    {
        ArgumentNullException.ThrowIfNull(options);
        return options
            .UseSqlite(connectionString, sqlite => sqlite.MigrationsAssembly(typeof(SqliteShopDb).Assembly.FullName))
            .AddInterceptors(DurableCommits.Instance);
    }

    /// <summary>
    /// Write-ahead log, so that readers do not wait for a writer, and full synchronisation, so that a commit that was
    /// acknowledged survives a power cut. Both are said at every opening: the second is not kept in the file.
    /// </summary>
    sealed class DurableCommits : DbConnectionInterceptor
    {
        public static readonly DurableCommits Instance = new();

        const string Pragmas = "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;";

        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData) => Say((SqliteConnection)connection);

        public override Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            Say((SqliteConnection)connection);
            return Task.CompletedTask;
        }

        static void Say(SqliteConnection connection)
        {
            // A look whether the file is there; a copy made by backup has no log yet, and cannot get one so.
            if (new SqliteConnectionStringBuilder(connection.ConnectionString).Mode == SqliteOpenMode.ReadOnly) return;
            using var command = connection.CreateCommand();
            command.CommandText = Pragmas;
            command.ExecuteNonQuery();
        }
    }
}

/// <summary>For the migration tool, which needs a context and no database.</summary>
sealed class DesignTime : IDesignTimeDbContextFactory<ShopDb>
{
    public ShopDb CreateDbContext(string[] args) =>
        new((DbContextOptions<ShopDb>)new DbContextOptionsBuilder<ShopDb>().UseShopSqlite("Data Source=:memory:").Options);
}
