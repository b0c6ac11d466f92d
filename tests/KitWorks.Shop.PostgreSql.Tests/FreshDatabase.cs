using Npgsql;

namespace KitWorks.Tests;

/// <summary>A PostgreSQL database of one test: a copy of one that is made once in a test run.</summary>
sealed class FreshDatabase : IAsyncDisposable
{
    static readonly Lazy<Task<(string Template, ShopKeys Keys)>> Made = new(Make);
    static int made;

    readonly string connection;

    FreshDatabase(string connection, ShopKeys keys) => (this.connection, Keys) = (connection, keys);

    public ShopKeys Keys { get; }
    public (string, string?)[] Settings => SettingsOf(connection);

    /// <summary>Settings for what looks at the model only.</summary>
    public static (string, string?)[] NeverMade => SettingsOf("Host=none");

    public static async Task<FreshDatabase> Open()
    {
        var server = await PostgreSqlServer.Connection();
        var (template, keys) = await Made.Value;
        var name = NewName();
        await Run(server, $"CREATE DATABASE {name} TEMPLATE {template}");
        return new(To(name, server), keys);
    }

    /// <summary>Changes the database behind the shop's back.</summary>
    public Task Sql(string statement) => Run(connection, statement);

    public async ValueTask DisposeAsync()
    {
        await using (var pooled = new NpgsqlConnection(connection)) NpgsqlConnection.ClearPool(pooled);
        await Run(await PostgreSqlServer.Connection(), $"DROP DATABASE {new NpgsqlConnectionStringBuilder(connection).Database} WITH (FORCE)");
    }

    static async Task<(string, ShopKeys)> Make()
    {
        var server = await PostgreSqlServer.Connection();
        var name = NewName();
        await Run(server, $"CREATE DATABASE {name}");
        var keys = await Opening.Fill(SettingsOf(To(name, server)));
        // A database that somebody is connected to cannot be copied.
        await using (var pooled = new NpgsqlConnection(To(name, server))) NpgsqlConnection.ClearPool(pooled);
        return (name, keys);
    }

    static string NewName() => $"shop_{Interlocked.Increment(ref made)}";

    static string To(string database, string server) => new NpgsqlConnectionStringBuilder(server) { Database = database, MaxPoolSize = 30 }.ConnectionString;

    static (string, string?)[] SettingsOf(string connection) => [("Database:Provider", "PostgreSql"), ("ConnectionStrings:KitWorks", connection)];

    static async Task Run(string to, string statement)
    {
        await using var connection = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(to) { Pooling = false }.ConnectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(statement, connection);
        await command.ExecuteNonQueryAsync();
    }
}
