using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Printing.Ipp;
using MediatR;

namespace KitWorks.Shop.Printing;

/// <summary>The shop's printers, as each of them answers now.</summary>
public sealed record ListPrinters : IQuery<IReadOnlyList<PrinterAnswer>>;

/// <summary>What a printer is doing.</summary>
public enum PrinterState
{
    /// <summary>Nothing, and it would print.</summary>
    Idle,

    /// <summary>It prints.</summary>
    Printing,

    /// <summary>It has stopped, and says why.</summary>
    Stopped,

    /// <summary>It does not answer.</summary>
    Away,
}

/// <summary>A printer.</summary>
/// <param name="Name">What it is called in a print job.</param>
/// <param name="Uri">Where it is.</param>
/// <param name="State">What it is doing.</param>
/// <param name="Detail">The same in words.</param>
/// <param name="Reasons">What holds it up.</param>
/// <param name="TakesJobs">Whether it would take a job now.</param>
/// <param name="Formats">The formats of documents that it takes.</param>
public sealed record PrinterAnswer(
    string Name, Uri Uri, PrinterState State, string Detail, IReadOnlyList<PrinterReason> Reasons, bool TakesJobs, IReadOnlyList<string> Formats);

sealed class ListPrintersHandler(ShopSettings settings, PrinterRoom room) : IRequestHandler<ListPrinters, Outcome<IReadOnlyList<PrinterAnswer>>>
{
    public async Task<Outcome<IReadOnlyList<PrinterAnswer>>> Handle(ListPrinters query, CancellationToken cancellationToken) =>
        await Task.WhenAll(settings.Printers.Select(p => Look(p, cancellationToken)));

    async Task<PrinterAnswer> Look(PrinterSetting printer, CancellationToken cancellationToken)
    {
        var reply = await room.At(printer).Look(settings.PrintingPace.ToAnswer, cancellationToken);
        if (!reply.Succeeded) return new(printer.Name, printer.Uri, PrinterState.Away, reply.Words, PrinterReason.Of([PrinterReason.Away]), false, []);
        var answer = reply.Message!;
        // printer-state: 3 idle, 4 processing, 5 stopped (RFC 8011, section 5.4.11).
        var state = answer.Number("printer-state") switch { 3 => PrinterState.Idle, 4 => PrinterState.Printing, _ => PrinterState.Stopped };
        var reasons = PrinterReason.Of(IppWords.Codes(answer.Texts("printer-state-reasons")));
        var detail = string.Join(", ", reasons.Select(r => r.Detail).Prepend(state.ToString().ToLowerInvariant()));
        return new(printer.Name, printer.Uri, state, detail, reasons, answer.Number("printer-is-accepting-jobs") == 1, answer.Texts("document-format-supported"));
    }
}

/// <summary>The printers by name.</summary>
sealed class PrinterRoom(ShopSettings settings, IppConnections connections, TimeProvider clock)
{
    readonly Dictionary<string, IppPrinter> printers = settings.Printers.ToDictionary(p => p.Name, p => new IppPrinter(connections, p.Uri, clock));

    public IppPrinter At(PrinterSetting printer) => printers[printer.Name];
}
