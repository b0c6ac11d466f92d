using KitWorks.Geometry;
using KitWorks.Labels;

namespace KitWorks.Shop.Printing;

/// <summary>What labels are printed as.</summary>
public enum LabelFormat
{
    /// <summary>All labels, for any printer.</summary>
    Pdf,

    /// <summary>The first label as a picture of dots.</summary>
    Png,

    /// <summary>The first label as a drawing.</summary>
    Svg,

    /// <summary>All labels as PWG raster, for printers of labels.</summary>
    Raster,
}

/// <summary>How labels are printed.</summary>
public sealed record LabelPrint(LabelFormat Format)
{
    /// <summary>The name of a label stock; null for the one that labels of this sort are usually printed on.</summary>
    public string? Stock { get; init; }

    /// <summary>The name of a template, without its kind; null for the largest that fits.</summary>
    public string? Template { get; init; }

    /// <summary>The first free place of a half-used sheet, from 1.</summary>
    public int StartAt { get; init; } = 1;

    /// <summary>Dots to the inch of the printer.</summary>
    public int Dpi { get; init; } = 300;
}

/// <summary>The shop's label press, opened once. A template that is wrong or a folder of fonts that is missing stops the program at its start.</summary>
public sealed class OrderLabelPress(ShopSettings settings)
{
    const int KeptInMemory = 200;

    /// <summary>The press.</summary>
    public LabelPress Press { get; } = LabelPress.Open(new() { OwnTemplates = settings.LabelTemplates, OwnFonts = settings.LabelFonts }).Value;

    /// <summary>The sheets and rolls that labels can be printed on, the shop's own first.</summary>
    public IReadOnlyList<LabelStock> Stocks { get; } = StocksOf(settings.LabelStocks);

    /// <summary>The shop's own sheets and rolls, and those built in of other names.</summary>
    public static IReadOnlyList<LabelStock> StocksOf(IReadOnlyList<LabelStock> own) => [.. own, .. LabelStock.BuiltIn.Where(b => own.All(o => o.Name != b.Name))];

    /// <summary>Prints labels of any kind. The stream stands at its start and is the caller's to close; many labels lie in a file that goes with it.</summary>
    /// <param name="labels">The labels: one or more.</param>
    /// <param name="how">How.</param>
    /// <param name="usual">The stock that labels of this sort are usually printed on.</param>
    public Outcome<Stream> Print(IReadOnlyList<Label> labels, LabelPrint how, LabelStock usual)
    {
        if (Stocks.FirstOrDefault(s => s.Name == (how.Stock ?? usual.Name)) is not { } named)
            return Refusal.OfField("label.stock", "sheet", $"There is no label stock '{how.Stock}'; it is one of {string.Join(", ", Stocks.Select(s => s.Name))}.");
        var stock = named with { Dpi = how.Dpi };
        return how.Format switch
        {
            LabelFormat.Pdf => Written(labels.Count, to => Press.WritePdf(to, labels, stock, how.StartAt, how.Template)),
            LabelFormat.Raster => Written(labels.Count, to => Press.WriteRaster(to, labels, stock, how.Template)),
            LabelFormat.Png => Press.Png(labels[0], how.Dpi, stock, how.Template).Select(Stream (png) => new MemoryStream(png)),
            LabelFormat.Svg => Press.Svg(labels[0], stock, how.Template).Select(Stream (svg) => new MemoryStream(System.Text.Encoding.UTF8.GetBytes(svg))),
        };
    }

    static Outcome<Stream> Written(int labels, Func<Stream, Refusal?> write)
    {
        Stream stream = labels <= KeptInMemory
            ? new MemoryStream()
            : new FileStream(Path.GetTempFileName(), FileMode.Open, FileAccess.ReadWrite, FileShare.None, 1 << 16, FileOptions.DeleteOnClose | FileOptions.Asynchronous);
        try
        {
            if (write(stream) is { } refusal)
            {
                stream.Dispose();
                return refusal;
            }
            stream.Position = 0;
            return stream;
        }
        catch
        {
            stream.Dispose();
            throw;
        }
    }
}
