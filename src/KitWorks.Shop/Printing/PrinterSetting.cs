namespace KitWorks.Shop.Printing;

/// <summary>In what form a printer is sent its documents.</summary>
public enum DocumentForm
{
    /// <summary>PDF where the printer says that it takes it, otherwise raster.</summary>
    Auto,

    /// <summary>PDF, whatever the printer says.</summary>
    Pdf,

    /// <summary>PWG raster in the printer's own dots; labels only.</summary>
    Raster,
}

/// <summary>A printer of the shop.</summary>
/// <param name="Name">What people call it.</param>
/// <param name="Uri">Where it is: <c>ipp://host/ipp/print</c> or <c>ipps://…</c>.</param>
public sealed record PrinterSetting(string Name, Uri Uri)
{
    /// <summary>In what form it is sent documents.</summary>
    public DocumentForm Form { get; init; } = DocumentForm.Auto;

    /// <summary>The label stock that lies in it.</summary>
    public Labels.LabelStock Labels { get; init; } = KitWorks.Labels.LabelStock.Page100x150;

    /// <summary>The paper that lies in it.</summary>
    public Labels.PaperSize Paper { get; init; } = KitWorks.Labels.PaperSize.A4;
}

/// <summary>How patient the shop is with its printers.</summary>
public sealed record PrintingPace
{
    /// <summary>How often jobs are looked after. Waits double from this up to sixty times it.</summary>
    public TimeSpan Beat { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>How long a printer may take to answer a question.</summary>
    public TimeSpan ToAnswer { get; init; } = TimeSpan.FromSeconds(4);

    /// <summary>How long a printer may take to take a document.</summary>
    public TimeSpan ToTake { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>How long a job belongs to the process that is busy with it; after that, that process is taken to have crashed.</summary>
    public TimeSpan Lease => 2 * ToTake + 4 * ToAnswer;

    /// <summary>The wait after so many tries.</summary>
    public TimeSpan Wait(int tries) => Beat * Math.Min(60, 1 << Math.Clamp(tries, 0, 6));
}
