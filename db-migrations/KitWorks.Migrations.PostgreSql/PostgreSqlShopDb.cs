using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Npgsql;

namespace KitWorks.Migrations.PostgreSql;

/// <summary>The shop's database on a PostgreSQL server, which several instances may share.</summary>
public static class PostgreSqlShopDb
{
    /// <summary>Takes the database from a PostgreSQL server, with the migrations of this project.</summary>
    public static DbContextOptionsBuilder UseShopPostgreSql(this DbContextOptionsBuilder options, string connectionString)
    {
        ArgumentNullException.ThrowIfNull(options);
        // The same few statements come with every order; a server that plans them once saves a good part of its work.
        var connection = new NpgsqlConnectionStringBuilder(connectionString);
        if (!connection.ContainsKey("Max Auto Prepare")) connection.MaxAutoPrepare = 64;
        return options.UseNpgsql(connection.ConnectionString, npgsql => npgsql.MigrationsAssembly(typeof(PostgreSqlShopDb).Assembly.FullName));
    }
}

/// <summary>For the migration tool, which needs a context and no database.</summary>
sealed class DesignTime : IDesignTimeDbContextFactory<ShopDb>
{
    public ShopDb CreateDbContext(string[] args) =>
        new((DbContextOptions<ShopDb>)new DbContextOptionsBuilder<ShopDb>().UseShopPostgreSql("Host=none").Options);
}
