using Microsoft.Data.Sqlite;

namespace KitWorks.Tests;

/// <summary>A SQLite database of one test: a copy of one that is made once in a test run.</summary>
sealed class FreshDatabase : IAsyncDisposable
{
    static readonly Lazy<Task<(byte[] File, ShopKeys Keys)>> Made = new(Make);

    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("kitworks-shop-");

    FreshDatabase(ShopKeys keys) => Keys = keys;

    public ShopKeys Keys { get; }
    public string File => FileIn(folder);
    public (string, string?)[] Settings => [("ConnectionStrings:KitWorks", $"Data Source={File}")];

    /// <summary>Settings for what looks at the model only.</summary>
    public static (string, string?)[] NeverMade => [("ConnectionStrings:KitWorks", "Data Source=never-made.db")];

    public static async Task<FreshDatabase> Open()
    {
        var (file, keys) = await Made.Value;
        var database = new FreshDatabase(keys);
        await System.IO.File.WriteAllBytesAsync(database.File, file);
        return database;
    }

    /// <summary>Changes the database behind the shop's back.</summary>
    public async Task Sql(string statement)
    {
        await using var connection = new SqliteConnection($"Data Source={File};Pooling=False");
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
        command.CommandText = statement;
        await command.ExecuteNonQueryAsync();
    }

    public ValueTask DisposeAsync()
    {
        CloseAll(File);
        folder.Delete(recursive: true);
        return ValueTask.CompletedTask;
    }

    static async Task<(byte[], ShopKeys)> Make()
    {
        var folder = Directory.CreateTempSubdirectory("kitworks-fresh-");
        var keys = await Opening.Fill(("ConnectionStrings:KitWorks", $"Data Source={FileIn(folder)}"));
        CloseAll(FileIn(folder));
        var file = await System.IO.File.ReadAllBytesAsync(FileIn(folder));
        folder.Delete(recursive: true);
        return (file, keys);
    }

    /// <summary>Closes the connections that are kept open; the last brings the log into the file.</summary>
    static void CloseAll(string path)
    {
        using var connection = new SqliteConnection($"Data Source={path}");
        SqliteConnection.ClearPool(connection);
    }

    static string FileIn(DirectoryInfo folder) => Path.Combine(folder.FullName, "kitworks.db");
}
