using System.CommandLine;
using KitWorks.Api.Hosting;
using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Api.Verbs;

/// <summary><c>migrate</c>: brings the database up to date and says what it did.</summary>
static class MigrateVerb
{
    public static Command Command()
    {
        var command = new Command("migrate", "Bring the database up to date");
        command.SetAction(async (_, cancellationToken) =>
        {
            await using var app = ShopHost.Build(("Logging:LogLevel:Default", "Warning"));
            await using var scope = app.Services.CreateAsyncScope();
            var db = scope.ServiceProvider.GetRequiredService<ShopDb>();
            var pending = (await db.Database.GetPendingMigrationsAsync(cancellationToken)).ToList();
            await db.Upgrade(cancellationToken);
            Console.WriteLine(pending.Count == 0 ? "The database was up to date." : $"Applied {string.Join(", ", pending)}.");
            return 0;
        });
        return command;
    }
}
