using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Labels;

/// <summary>What labels are printed on: a page with one label or a grid of them, in millimetres.</summary>
/// <param name="Name">The name it is asked for by.</param>
/// <param name="PageWidthMm">The page's width.</param>
/// <param name="PageHeightMm">The page's height.</param>
public sealed record LabelStock(string Name, double PageWidthMm, double PageHeightMm)
{
    const double Inch = 25.4;

    // What sheets are sold by is rounded to a tenth.
    const double Slack = 0.15;

    readonly double? labelWidthMm, labelHeightMm;

    /// <summary>Rows of labels on a page: 1 or more.</summary>
    public int Rows { get; init; } = 1;

    /// <summary>Columns of labels on a page: 1 or more.</summary>
    public int Columns { get; init; } = 1;

    /// <summary>From the page's left edge to the first column; the right margin is the same where the labels' width is not given.</summary>
    public double LeftMarginMm { get; init; }

    /// <summary>From the page's top edge to the first row; the bottom margin is the same where the labels' height is not given.</summary>
    public double TopMarginMm { get; init; }

    /// <summary>Between columns.</summary>
    public double ColumnGapMm { get; init; }

    /// <summary>Between rows.</summary>
    public double RowGapMm { get; init; }

    /// <summary>The printer's dots to the inch, to which bars are snapped.</summary>
    public int Dpi { get; init; } = 300;

    /// <summary>How many labels a page takes.</summary>
    public int PerPage => Rows * Columns;

    /// <summary>The width of one label; what margins and gaps leave where it is not given.</summary>
    public double LabelWidthMm
    {
        get => labelWidthMm ?? (PageWidthMm - 2 * LeftMarginMm - (Columns - 1) * ColumnGapMm) / Columns;
        init => labelWidthMm = value;
    }

    /// <summary>The height of one label; what margins and gaps leave where it is not given.</summary>
    public double LabelHeightMm
    {
        get => labelHeightMm ?? (PageHeightMm - 2 * TopMarginMm - (Rows - 1) * RowGapMm) / Rows;
        init => labelHeightMm = value;
    }

    /// <summary>One label a page, 100 × 150 mm.</summary>
    public static LabelStock Page100x150 { get; } = new("100x150", 100, 150);

    /// <summary>One label a page, 4 × 6 in.</summary>
    public static LabelStock Page4x6 { get; } = new("4x6", 4 * Inch, 6 * Inch);

    /// <summary>An A4 sheet of eight, 99.1 × 67.7 mm each with no gap between rows: the shape that such sheets are mostly sold in; common practice, no source.</summary>
    public static LabelStock A4Sheet { get; } = new("a4", 210, 297)
    { Rows = 4, Columns = 2, LeftMarginMm = 4.65, TopMarginMm = 13.1, ColumnGapMm = 2.5 };

    /// <summary>A Letter sheet of eight.</summary>
    public static LabelStock LetterSheet { get; } = new("letter", 8.5 * Inch, 11 * Inch)
    { Rows = 4, Columns = 2, LeftMarginMm = 6, TopMarginMm = 8, ColumnGapMm = 2, RowGapMm = 1 };

    /// <summary>A roll of labels 100 × 50 mm. The feed between labels is the printer's business.</summary>
    public static LabelStock Roll100x50 { get; } = new("roll-100x50", 100, 50);

    /// <summary>A roll of labels 57 × 32 mm.</summary>
    public static LabelStock Roll57x32 { get; } = new("roll-57x32", 57, 32);

    /// <summary>The stocks that need no setting.</summary>
    public static ImmutableArray<LabelStock> BuiltIn { get; } = [Page100x150, Page4x6, A4Sheet, LetterSheet, Roll100x50, Roll57x32];

    /// <summary>The built-in stock of a name, or null.</summary>
    public static LabelStock? Named(string name) => BuiltIn.FirstOrDefault(s => s.Name == name);

    /// <summary>Where the top left corner of the label at a place is, places counted along rows from 0.</summary>
    public (double XMm, double YMm) Corner(int place) =>
        (LeftMarginMm + place % Columns * (LabelWidthMm + ColumnGapMm), TopMarginMm + place / Columns * (LabelHeightMm + RowGapMm));

    /// <summary>What is wrong with the measures, or null.</summary>
    public Refusal? Broken() => (Rows, Columns, Dpi) switch
    {
        ( < 1 or > 100, _, _) => Wrong("rows", $"A stock has 1 to 100 rows; this has {Rows}."),
        (_, < 1 or > 100, _) => Wrong("columns", $"A stock has 1 to 100 columns; this has {Columns}."),
        (_, _, < 100 or > 2400) => Wrong("dpi", $"A printer has 100 to 2400 dots to the inch; this has {Dpi}."),
        _ when !(PageWidthMm is > 0 and <= 2000 && PageHeightMm is > 0 and <= 2000) => Wrong("page", $"A page is up to 2000 mm wide and high; this is {PageWidthMm} × {PageHeightMm}."),
        _ when !(LeftMarginMm >= 0 && TopMarginMm >= 0 && ColumnGapMm >= 0 && RowGapMm >= 0) => Wrong("margins", "Margins and gaps are 0 mm or more."),
        _ when LeftMarginMm + Columns * LabelWidthMm + (Columns - 1) * ColumnGapMm > PageWidthMm + Slack => Wrong("columns",
            $"{Columns} columns of {LabelWidthMm:0.##} mm, the gaps and the left margin take {LeftMarginMm + Columns * LabelWidthMm + (Columns - 1) * ColumnGapMm:0.##} mm; the page is {PageWidthMm:0.##} mm wide."),
        _ when TopMarginMm + Rows * LabelHeightMm + (Rows - 1) * RowGapMm > PageHeightMm + Slack => Wrong("rows",
            $"{Rows} rows of {LabelHeightMm:0.##} mm, the gaps and the top margin take {TopMarginMm + Rows * LabelHeightMm + (Rows - 1) * RowGapMm:0.##} mm; the page is {PageHeightMm:0.##} mm high."),
        _ when !(LabelWidthMm > 0 && LabelHeightMm > 0) => Wrong("margins", "Margins and gaps leave no room for a label."),
        _ => null,
    };

    static Refusal Wrong(string field, string detail) => Refusal.OfField("label.stock", field, detail);
}
