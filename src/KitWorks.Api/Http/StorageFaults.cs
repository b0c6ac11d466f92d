using Microsoft.Data.Sqlite;
using Npgsql;

namespace KitWorks.Api.Http;

/// <summary>Which exceptions say that the database cannot serve at the moment, and that nothing is wrong with the request or with us.</summary>
static class StorageFaults
{
    /// <summary>SQLite's result codes: busy, locked, read-only, input/output error, full, cannot open.</summary>
    static readonly int[] Sqlite = [5, 6, 8, 10, 13, 14];

    /// <summary>PostgreSQL's classes of error: connection, read-only transaction, resources (disk, memory, connections), shutting down, system.</summary>
    static readonly string[] PostgreSql = ["08", "25", "53", "57", "58"];

    public static bool IsUnavailable(Exception thrown)
    {
        for (var at = thrown; at is not null; at = at.InnerException)
            switch (at)
            {
                case SqliteException sqlite when Sqlite.Contains(sqlite.SqliteErrorCode):
                case PostgresException server when PostgreSql.Contains(server.SqlState[..2]):
                case NpgsqlException and not PostgresException:
                    return true;
            }
        return false;
    }
}
