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
        if (from.OwnFonts is { } missing && !Directory.Exists(missing))
            return new Refusal(RefusalKind.Impossible, "label.fonts-folder", $"There is no folder '{missing}', which is set as that of the shop's own fonts.");
        var fontFolders = new[] { Path.Combine(from.Templates, "fonts"), from.OwnFonts }.OfType<string>().ToArray();
        if (!FontShelf.Open(fontFolders, from.SystemFonts).Succeeds(out var fonts, out var refusal)) return refusal;
        if (!TemplateShelf.Open(from, fonts).Succeeds(out var templates, out refusal)) return refusal;
        var press = new LabelPress(templates, fonts);
        return press.TryTemplates() is { } wrong ? wrong : press;
    }

    /// <summary>The templates as they were opened, by name.</summary>
    public IReadOnlyList<LabelTemplate> Templates => templates.All;

    /// <summary>Labels as one PDF document, in their order.</summary>
    /// <param name="labels">The labels: one or more.</param>
    /// <param name="stock">What they are printed on.</param>
    /// <param name="startAt">The first free place of the first sheet, from 1, counted along rows.</param>
    /// <param name="template">The name of a template, without its kind: <c>96x64</c>. Kinds that have none of this name, and all where it is null, take the largest that fits.</param>
    public Outcome<byte[]> Pdf(IReadOnlyList<Label> labels, LabelStock stock, int startAt = 1, string? template = null)
    {
        using var buffer = new MemoryStream();
        return WritePdf(buffer, labels, stock, startAt, template) is { } refusal ? refusal : buffer.ToArray();
    }

    /// <summary>As <see cref="Pdf(IReadOnlyList{Label}, LabelStock, int, string?)"/>, written as it is made: memory does not grow with the number of labels. Nothing is written where the answer is a refusal.</summary>
    public Refusal? WritePdf(Stream to, IReadOnlyList<Label> labels, LabelStock stock, int startAt = 1, string? template = null)
    {
        if (Broken(labels, stock, template) is { } broken) return broken;
        if (startAt < 1 || startAt > stock.PerPage)
            return Refusal.OfField("label.start-at", "startAt", $"A sheet of this stock has places 1 to {stock.PerPage}; {startAt} is none of them.");
        using var ink = new Ink();
        var run = new SheetRun(templates, stock, template, options);
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
    public Outcome<byte[]> Png(Label label, int dpi = 300, LabelStock? stock = null, string? template = null)
    {
        var on = (stock ?? LabelStock.Page100x150) with { Dpi = dpi };
        if (Broken([label], on, template) is { } broken) return broken;
        if (!templates.For(label.Kind, on, template).Succeeds(out var drawing, out var refusal)) return refusal;
        if (TooManyDots(drawing.WidthMm, drawing.HeightMm, dpi) is { } tooMany) return tooMany;
        using var ink = new Ink();
        using var bitmap = Blank(drawing.WidthMm, drawing.HeightMm, dpi);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        if (PainterOn(canvas, ink, dpi, inset: false).Paint(drawing, Values.Of(label, options), default) is { } wrong) return wrong;
        canvas.Flush();
        return PngFile.Write(bitmap, dpi);
    }

    /// <summary>Labels as PWG raster, one a page, in the printer's own dots, written as it is made. Nothing is written where the answer is a refusal.</summary>
    /// <param name="to">Where it goes.</param>
    /// <param name="labels">The labels: one or more.</param>
    /// <param name="stock">A roll, or pages of one label; its resolution is the printer's.</param>
    /// <param name="template">As for PDF.</param>
    public Refusal? WriteRaster(Stream to, IReadOnlyList<Label> labels, LabelStock stock, string? template = null)
    {
        if (Broken(labels, stock, template) is { } broken) return broken;
        if (stock.PerPage > 1) return Refusal.OfField("label.stock", "sheet", $"Sheets of {stock.PerPage} labels are printed as PDF; raster is for rolls and pages of one label.");
        if (TooManyDots(stock.PageWidthMm, stock.PageHeightMm, stock.Dpi) is { } tooMany) return tooMany;
        using var ink = new Ink();
        var run = new SheetRun(templates, stock, template, options);
        if (run.Each(labels, 1, (_, _) => PainterOn(null, ink, stock.Dpi, inset: false), () => { }) is { } refusal) return refusal;
        PwgFile.Begin(to);
        using var bitmap = Blank(stock.PageWidthMm, stock.PageHeightMm, stock.Dpi);
        using var canvas = new SKCanvas(bitmap);
        foreach (var label in labels)
        {
            canvas.Clear(SKColors.White);
            if (run.Each([label], 1, (_, _) => PainterOn(canvas, ink, stock.Dpi, inset: false), canvas.Flush) is { } wrong) return wrong;
            PwgFile.Page(to, bitmap, stock.Dpi, labels.Count);
        }
        return null;
    }

    /// <summary>One label as an SVG drawing that carries its fonts.</summary>
    public Outcome<string> Svg(Label label, LabelStock? stock = null, string? template = null)
    {
        var on = stock ?? LabelStock.Page100x150;
        if (Broken([label], on, template) is { } broken) return broken;
        if (!templates.For(label.Kind, on, template).Succeeds(out var drawing, out var refusal)) return refusal;
        using var ink = new Ink();
        if (PainterOn(null, ink, on.Dpi, inset: false).Paint(drawing, Values.Of(label, options), default) is { } wrong) return wrong;
        ink.CutDown();
        return SvgFile.Write(drawing, on.Dpi, ink, canvas => PainterOn(canvas, ink, on.Dpi, inset: false).Paint(drawing, Values.Of(label, options), default));
    }

    Refusal? Broken(IReadOnlyList<Label> labels, LabelStock stock, string? template) => stock.Broken()
        ?? (labels.Count == 0 ? new(RefusalKind.Impossible, "label.none", "There is no label to print.") : templates.Lacking(template, [.. labels.Select(l => l.Kind).Distinct()]));

    // 64 MB a picture: a label of 100 × 150 mm at 800 dots to the inch, beyond any label printer.
    const int MostDots = 16_000_000;

    static Refusal? TooManyDots(double widthMm, double heightMm, int dpi)
    {
        var squareInches = widthMm * heightMm / (25.4 * 25.4);
        return squareInches * dpi * dpi <= MostDots ? null : Refusal.OfField("label.dpi", "dpi",
            $"{widthMm:0.#} × {heightMm:0.#} mm at {dpi} dpi are {squareInches * dpi * dpi / 1e6:0} million dots; dots are drawn up to {Math.Floor(Math.Sqrt(MostDots / squareInches)):0} dpi at this size. PDF and SVG have no such limit.");
    }

    static SKBitmap Blank(double widthMm, double heightMm, int dpi) =>
        new(new SKImageInfo((int)Math.Round(widthMm * dpi / 25.4), (int)Math.Round(heightMm * dpi / 25.4), SKColorType.Bgra8888, SKAlphaType.Opaque));

    Painter PainterOn(SKCanvas? canvas, Ink ink, int dpi, bool inset, int flowed = 0) =>
        new(canvas, ink, shelves, dpi / 25.4, inset ? VectorInset : 0) { FlowedPages = flowed };

    // Papers come from office printers.
    const int PaperDpi = 600;

    // Bars that touch in vector output are merged by some viewers; a fiftieth of a dot keeps them apart and prints the same.
    const float VectorInset = 0.02f;

    Refusal? TryTemplates()
    {
        using var ink = new Ink();
        foreach (var (kind, template) in templates.Drawings)
            foreach (var sample in Samples.Of(kind))
            {
                var values = Values.Of(sample, options).SetValue("page", new PageMark(1, 1, 1));
                if (PainterOn(null, ink, PaperDpi, inset: false).Paint(template, values, default) is { } wrong) return wrong;
            }
        return null;
    }
}
