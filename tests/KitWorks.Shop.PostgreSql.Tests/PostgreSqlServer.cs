using Testcontainers.PostgreSql;

[assembly: AssemblyFixture(typeof(KitWorks.Tests.PostgreSqlServer))]

namespace KitWorks.Tests;

/// <summary>
/// One PostgreSQL server for a test run, in Docker. POSTGRES_IMAGE names its image where it is not the usual one. Where
/// there is no Docker the tests are skipped; where CI is true they fail.
/// </summary>
public sealed class PostgreSqlServer : IAsyncDisposable
{
    static readonly Lazy<Task<PostgreSqlContainer>> Started = new(Start);

    internal static async Task<string> Connection()
    {
        try
        {
            return (await Started.Value).GetConnectionString();
        }
        catch (Exception none) when (Environment.GetEnvironmentVariable("CI") != "true")
        {
            Assert.Skip($"No PostgreSQL in Docker here: {none.Message}");
            throw;
        }
    }

    static async Task<PostgreSqlContainer> Start()
    {
        var container = new PostgreSqlBuilder(Environment.GetEnvironmentVariable("POSTGRES_IMAGE") ?? "postgres:17")
            .WithCommand("-c", "max_connections=400").Build();
        await container.StartAsync();
        return container;
    }

    public async ValueTask DisposeAsync()
    {
        if (Started is { IsValueCreated: true, Value.IsCompletedSuccessfully: true }) await (await Started.Value).DisposeAsync();
    }
}
