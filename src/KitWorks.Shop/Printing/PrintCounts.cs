using System.Diagnostics.Metrics;
using KitWorks.Shop.Counting;

namespace KitWorks.Shop.Printing;

/// <summary>Counts print jobs as they are queued and as they end.</summary>
sealed class PrintCounts : IAfterwards<QueuePrintJob, PrintJobAnswer>
{
    static readonly Counter<long> Jobs = ShopMeter.Meter.CreateCounter<long>("kitworks.print_jobs", "{job}", "Print jobs, by printer and what became of them");

    public void After(QueuePrintJob request, PrintJobAnswer answer) => Became(answer.Printer, PrintJobStatus.Queued);

    public static void Became(string printer, PrintJobStatus status) =>
        Jobs.Add(1, new("printer", printer), new("status", status.ToString().ToLowerInvariant()));
}
