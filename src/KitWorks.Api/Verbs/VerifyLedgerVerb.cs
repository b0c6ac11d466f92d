using System.CommandLine;
using KitWorks.Api.Hosting;
using KitWorks.Shop.Inventory;
using MediatR;

namespace KitWorks.Api.Verbs;

/// <summary><c>verify-ledger</c>: whether every balance is what its movements add up to.</summary>
static class VerifyLedgerVerb
{
    public static Command Command()
    {
        var command = new Command("verify-ledger", "Hold the stock balances against the ledger");
        command.SetAction(async (_, cancellationToken) =>
        {
            await using var app = ShopHost.Build(("Logging:LogLevel:Default", "Warning"));
            await using var scope = app.Services.CreateAsyncScope();
            await ExistingDatabase.In(scope.ServiceProvider, cancellationToken);
            var report = (await scope.ServiceProvider.GetRequiredService<IMediator>().Send(new VerifyLedger(), cancellationToken)).Value;
            foreach (var fault in report.Faults) Console.Error.WriteLine(fault);
            Console.WriteLine($"{report.Items} items, {report.Movements} movements, {report.Faults.Count} faults.");
            return report.Faults.Count == 0 ? 0 : 1;
        });
        return command;
    }
}
