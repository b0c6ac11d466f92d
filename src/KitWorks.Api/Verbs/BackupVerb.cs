using System.CommandLine;
using KitWorks.Api.Hosting;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Api.Verbs;

/// <summary><c>backup</c>: a whole copy of the database while it is in use.</summary>
static class BackupVerb
{
    public static Command Command()
    {
        var file = new Argument<string>("file") { Description = "Where to write the copy; it must not exist yet" };
        var command = new Command("backup", "Copy the database to a file while the service runs") { file };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var path = Path.GetFullPath(parsed.GetRequiredValue(file));
            if (File.Exists(path)) throw new SettingException($"{path} is there already; nothing was written. Name a new file.");
            await using var app = ShopHost.Build(("Logging:LogLevel:Default", "Warning"));
            await using var scope = app.Services.CreateAsyncScope();
            var database = await ExistingDatabase.In(scope.ServiceProvider, cancellationToken);
            if (database.GetDbConnection() is not SqliteConnection)
                throw new SettingException("This copies a SQLite database. Copy a PostgreSQL database with pg_dump, as README.md says.");
            // Written under another name first, so that a copy that was cut short is not taken for a whole one.
            var partial = path + ".partial";
            await database.OpenConnectionAsync(cancellationToken);
            await using (var copy = new SqliteConnection($"Data Source={partial};Pooling=False"))
            {
                await copy.OpenAsync(cancellationToken);
                ((SqliteConnection)database.GetDbConnection()).BackupDatabase(copy);
            }
            File.Move(partial, path);
            Console.WriteLine($"Copied to {path}. To use it, stop the service and put it in the database's place.");
            return 0;
        });
        return command;
    }
}
