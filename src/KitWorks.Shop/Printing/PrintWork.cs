using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace KitWorks.Shop.Printing;

/// <summary>Looks after the print jobs, each printer's for itself, until it is told to stop.</summary>
public sealed partial class PrintWork(IServiceScopeFactory scopes, ShopSettings settings, TimeProvider clock, ILogger<PrintWork> log)
{
    /// <summary>Works until the token says stop. A document on its way is not broken off.</summary>
    public Task Run(CancellationToken stop) => Task.WhenAll(settings.Printers.Select(p => Tend(p, stop)));

    async Task Tend(PrinterSetting printer, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            try
            {
                await using var scope = scopes.CreateAsyncScope();
                if (!await scope.ServiceProvider.GetRequiredService<PrintStep>().Take(printer, stop)) await Task.Delay(settings.PrintingPace.Beat, clock, stop);
            }
            catch (OperationCanceledException) when (stop.IsCancellationRequested)
            {
                return;
            }
            catch (Exception wrong)
            {
                // The job keeps its lease and is looked after again when that has passed.
                Failed(wrong, printer.Name);
                await Task.Delay(settings.PrintingPace.Wait(3), clock, stop).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    [LoggerMessage(LogLevel.Error, "Print jobs for {Printer} could not be looked after")]
    partial void Failed(Exception wrong, string printer);
}
