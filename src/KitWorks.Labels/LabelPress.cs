using System.Collections.Immutable;
using Fluid;
using KitWorks.Geometry;
using KitWorks.Labels.Drawing;
using KitWorks.Labels.Fonts;
using SkiaSharp;

namespace KitWorks.Labels;

/// <summary>Where a press finds what it prints from.</summary>
public sealed record PressFolders
{
    /// <summary>The templates shipped with the program, their fonts beside them.</summary>
    public string Templates { get; init; } = Path.Combine(AppContext.BaseDirectory, "labels-templates");

    /// <summary>The shop's own templates; a file here stands in for the shipped one of the same name. Null for none.</summary>
    public string? OwnTemplates { get; init; }

    /// <summary>A folder of the shop's own fonts, looked through before the system's. Null for none.</summary>
    public string? OwnFonts { get; init; }

    /// <summary>Where the operating system keeps fonts.</summary>
    public ImmutableArray<string> SystemFonts { get; init; } = FontShelf.SystemFolders;
}

/// <summary>Prints labels to PDF, PNG and SVG. Opened once, when all templates and fonts are read and checked; may be used by many threads.</summary>
public sealed class LabelPress
{
    readonly TemplateShelf templates;
    readonly Shelves shelves;
    readonly TemplateOptions options = Values.Options();

    LabelPress(TemplateShelf templates, FontShelf fonts)
    {
        this.templates = templates;
        shelves = new(new(new TextShaper(fonts)), new(fonts), new());
    }

    /// <summary>Reads templates and fonts, and tries every template on a made-up label.</summary>
    public static Outcome<LabelPress> Open(PressFolders? folders = null)
    {
        var from = folders ?? new();
        var fontFolders = new[] { Path.Combine(from.Templates, "fonts"), from.OwnFonts }.OfType<string>().ToArray();
        if (!FontShelf.Open(fontFolders, from.SystemFonts).Succeeds(out var fonts, out var refusal)) return refusal;
        if (!TemplateShelf.Open(new[] { from.Templates, from.OwnTemplates }.OfType<string>(), fonts).Succeeds(out var templates, out refusal)) return refusal;
        var press = new LabelPress(templates, fonts);
        return press.TryTemplates() is { } wrong ? wrong : press;
    }

    /// <summary>Labels as one PDF document, in their order.</summary>
    /// <param name="labels">The labels: one or more.</param>
    /// <param name="stock">What they are printed on.</param>
    /// <param name="startAt">The first free place of the first sheet, from 1, counted along rows.</param>
    public Outcome<byte[]> Pdf(IReadOnlyList<Label> labels, LabelStock stock, int startAt = 1)
    {
        using var buffer = new MemoryStream();
        return WritePdf(buffer, labels, stock, startAt) is { } refusal ? refusal : buffer.ToArray();
    }

    /// <summary>As <see cref="Pdf(IReadOnlyList{Label}, LabelStock, int)"/>, written as it is made: memory does not grow with the number of labels. Nothing is written where the answer is a refusal.</summary>
    public Refusal? WritePdf(Stream to, IReadOnlyList<Label> labels, LabelStock stock, int startAt = 1)
    {
        if (stock.Broken() is { } broken) return broken;
        if (labels.Count == 0) return new(RefusalKind.Impossible, "label.none", "There is no label to print.");
        if (startAt < 1 || startAt > stock.PerPage)
            return Refusal.OfField("label.start-at", "startAt", $"A sheet of this stock has places 1 to {stock.PerPage}; {startAt} is none of them.");
        using var ink = new Ink();
        var run = new SheetRun(templates, stock, options);
        if (run.Each(labels, startAt, (_, _) => PainterOn(null, ink, stock.Dpi, inset: true), () => { }) is { } refusal) return refusal;
        ink.CutDown();
        using var document = new PdfPages(to, stock.PageWidthMm, stock.PageHeightMm, stock.Dpi);
        return run.Each(labels, startAt, (page, _) => PainterOn(document.Page(page), ink, stock.Dpi, inset: true), document.Close);
    }

    /// <summary>A paper as a PDF document.</summary>
    public Outcome<byte[]> Pdf(Paper paper, PaperSize size = PaperSize.A4)
    {
        var (width, height) = size switch { PaperSize.A4 => (210, 297), PaperSize.Letter => (8.5 * 25.4, 11 * 25.4) };
        using var ink = new Ink();
        var run = new PaperRun(templates, options, width, height, PaperDpi);
        if ((run.Plan(paper) ?? run.Each((_, flowed) => PainterOn(null, ink, PaperDpi, inset: true, flowed), () => { })) is { } refusal) return refusal;
        ink.CutDown();
        using var buffer = new MemoryStream();
        using (var document = new PdfPages(buffer, width, height, PaperDpi))
            if (run.Each((page, flowed) => PainterOn(document.Page(page), ink, PaperDpi, inset: true, flowed), document.Close) is { } wrong) return wrong;
        return buffer.ToArray();
    }

    /// <summary>One label as a PNG picture that knows its resolution.</summary>
    public Outcome<byte[]> Png(Label label, int dpi = 300, LabelStock? stock = null)
    {
        var on = (stock ?? LabelStock.Page100x150) with { Dpi = dpi };
        if (on.Broken() is { } broken) return broken;
        if (!templates.For(label.Kind, on.LabelWidthMm, on.LabelHeightMm).Succeeds(out var template, out var refusal)) return refusal;
        using var ink = new Ink();
        var dots = dpi / 25.4;
        using var bitmap = new SKBitmap(new SKImageInfo((int)Math.Round(template.WidthMm * dots), (int)Math.Round(template.HeightMm * dots), SKColorType.Bgra8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        if (PainterOn(canvas, ink, dpi, inset: false).Paint(template, Values.Of(label, options), default) is { } wrong) return wrong;
        canvas.Flush();
        return PngFile.Write(bitmap, dpi);
    }

    /// <summary>Labels as PWG raster, one a page, in the printer's own dots.</summary>
    /// <param name="labels">The labels: one or more.</param>
    /// <param name="stock">A roll, or pages of one label; its resolution is the printer's.</param>
    public Outcome<byte[]> Raster(IReadOnlyList<Label> labels, LabelStock stock)
    {
        if (stock.Broken() is { } broken) return broken;
        if (labels.Count == 0) return new Refusal(RefusalKind.Impossible, "label.none", "There is no label to print.");
        if (stock.PerPage > 1) return Refusal.OfField("label.stock", "sheet", $"Sheets of {stock.PerPage} labels are printed as PDF; raster is for rolls and pages of one label.");
        using var ink = new Ink();
        using var buffer = new MemoryStream();
        PwgFile.Begin(buffer);
        var dots = stock.Dpi / 25.4;
        using var bitmap = new SKBitmap(new SKImageInfo((int)Math.Round(stock.PageWidthMm * dots), (int)Math.Round(stock.PageHeightMm * dots), SKColorType.Bgra8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(bitmap);
        foreach (var label in labels)
        {
            canvas.Clear(SKColors.White);
            if (new SheetRun(templates, stock, options).Each([label], 1, (_, _) => PainterOn(canvas, ink, stock.Dpi, inset: false), canvas.Flush) is { } wrong) return wrong;
            PwgFile.Page(buffer, bitmap, stock.Dpi, labels.Count);
        }
        return buffer.ToArray();
    }

    /// <summary>One label as an SVG drawing that carries its fonts.</summary>
    public Outcome<string> Svg(Label label, LabelStock? stock = null)
    {
        var on = stock ?? LabelStock.Page100x150;
        if (on.Broken() is { } broken) return broken;
        if (!templates.For(label.Kind, on.LabelWidthMm, on.LabelHeightMm).Succeeds(out var template, out var refusal)) return refusal;
        using var ink = new Ink();
        if (PainterOn(null, ink, on.Dpi, inset: false).Paint(template, Values.Of(label, options), default) is { } wrong) return wrong;
        ink.CutDown();
        return SvgFile.Write(template, on.Dpi, ink, canvas => PainterOn(canvas, ink, on.Dpi, inset: false).Paint(template, Values.Of(label, options), default));
    }

    Painter PainterOn(SKCanvas? canvas, Ink ink, int dpi, bool inset, int flowed = 0) =>
        new(canvas, ink, shelves, dpi / 25.4, inset ? VectorInset : 0) { FlowedPages = flowed };

    // Papers come from office printers.
    const int PaperDpi = 600;

    // Bars that touch in vector output are merged by some viewers; a fiftieth of a dot keeps them apart and prints the same.
    const float VectorInset = 0.02f;

    Refusal? TryTemplates()
    {
        using var ink = new Ink();
        foreach (var (kind, template) in templates.All)
            foreach (var sample in Samples.Of(kind))
            {
                var values = Values.Of(sample, options).SetValue("page", new PageMark(1, 1, 1));
                if (PainterOn(null, ink, PaperDpi, inset: false).Paint(template, values, default) is { } wrong) return wrong;
            }
        return null;
    }
}
