using KitWorks.Geometry;
using KitWorks.Labels;
using KitWorks.Shop.Printing.Ipp;
using MediatR;

namespace KitWorks.Shop.Printing;

/// <summary>A document as a printer is sent it.</summary>
/// <param name="Format">Its media type.</param>
/// <param name="Content">The document; whoever sends it closes it.</param>
/// <param name="Template">The settings that go with it.</param>
sealed record DocumentToSend(string Format, Stream Content, IReadOnlyList<IppAttribute> Template);

/// <summary>Makes what a job prints, in a form that its printer takes.</summary>
sealed class PrintedDocument(IMediator mediator, Call call)
{
    const string Pdf = "application/pdf", Raster = "image/pwg-raster";
    const int UsualDpi = 300;

    /// <param name="job">What to print.</param>
    /// <param name="printer">What lies in the printer.</param>
    /// <param name="says">What the printer says of itself.</param>
    /// <param name="cancellationToken">To stop.</param>
    public async Task<Outcome<DocumentToSend>> For(PrintJob job, PrinterSetting printer, IppMessage says, CancellationToken cancellationToken)
    {
        (call.Actor, call.Role) = (job.CreatedBy, Role.Bench);
        var takes = says.Texts("document-format-supported");
        var labels = job.What == Printable.Labels;
        var raster = printer.Form == DocumentForm.Raster || printer.Form == DocumentForm.Auto && !takes.Contains(Pdf) && takes.Contains(Raster);
        if (raster && !labels) return Impossible($"The printer {printer.Name} takes dots only, and papers are printed from PDF.");
        if (printer.Form == DocumentForm.Auto && !raster && !takes.Contains(Pdf))
            return Impossible($"The printer {printer.Name} takes {string.Join(", ", takes.Take(6))}, and neither {Pdf} nor {Raster}.");
        var dpi = (raster ? says.Number("pwg-raster-document-resolution-supported") : null) ?? says.Number("printer-resolution-default") ?? UsualDpi;
        var made = labels
            ? await mediator.Send(new GetOrderLabels(job.OrderId, new(raster ? LabelFormat.Raster : LabelFormat.Pdf) { Stock = printer.Labels.Name, Dpi = dpi, StartAt = job.StartAt, Template = job.Template }) { Tier = job.Tier }, cancellationToken)
            : (await mediator.Send(new GetOrderPaper(job.OrderId, PaperOf(job.What), printer.Paper), cancellationToken)).Select(Stream (pdf) => new MemoryStream(pdf));
        return made.Select(content => new DocumentToSend(raster ? Raster : Pdf, content, [.. Template(labels ? MediaOf(printer.Labels) : MediaOf(printer.Paper), says)]));
    }

    /// <summary>Only what the printer says that it knows: an unknown setting may cost the job.</summary>
    static IEnumerable<IppAttribute> Template(string media, IppMessage says)
    {
        if (says.Texts("media-supported").Contains(media)) yield return IppAttribute.Job("media", IppTag.Keyword, media);
        // Bars keep their width only in their own size.
        if (says.Texts("print-scaling-supported").Contains("none")) yield return IppAttribute.Job("print-scaling", IppTag.Keyword, "none");
    }

    /// <summary>Self-describing names by PWG 5101.1.</summary>
    static string MediaOf(PaperSize paper) => paper switch { PaperSize.A4 => "iso_a4_210x297mm", PaperSize.Letter => "na_letter_8.5x11in" };

    static string MediaOf(LabelStock stock) => (stock.PageWidthMm, stock.PageHeightMm) switch
    {
        (210, 297) => MediaOf(PaperSize.A4),
        (8.5 * 25.4, 11 * 25.4) => MediaOf(PaperSize.Letter),
        (4 * 25.4, 6 * 25.4) => "na_index-4x6_4x6in",
        var (width, height) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"om_{stock.Name}_{width}x{height}mm"),
    };

    static PaperKind PaperOf(Printable what) => what switch
    {
        Printable.Picklist => PaperKind.Picklist,
        Printable.CutPlan => PaperKind.CutSheet,
        Printable.PackingList => PaperKind.PackingList,
        Printable.Guide => PaperKind.BuildGuide,
        Printable.Labels => throw new ArgumentOutOfRangeException(nameof(what)),
    };

    static Refusal Impossible(string detail) => new(RefusalKind.Impossible, "print-job.format", detail);
}
