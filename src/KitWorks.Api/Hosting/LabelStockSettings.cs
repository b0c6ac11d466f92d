using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using KitWorks.Labels;

namespace KitWorks.Api.Hosting;

/// <summary>Reads the shop's own sheets and rolls of labels from the settings, in millimetres: <c>Labels:Stocks:0:Name</c>, <c>Width</c>, <c>Height</c>, and for a sheet <c>Page</c>, <c>Columns</c>, <c>Rows</c>, <c>Left</c>, <c>Top</c>, <c>GapX</c>, <c>GapY</c>.</summary>
static partial class LabelStockSettings
{
    [GeneratedRegex("^[a-z0-9][a-z0-9-]{0,39}$")]
    private static partial Regex GoodName();

    [GeneratedRegex("^([0-9]+(?:[.][0-9]+)?) ?[x×] ?([0-9]+(?:[.][0-9]+)?)$")]
    private static partial Regex Measures();

    public static ImmutableArray<LabelStock> Of(IConfiguration configuration)
    {
        var stocks = configuration.GetSection("Labels:Stocks").GetChildren().Select(One).ToImmutableArray();
        return stocks.GroupBy(s => s.Name).FirstOrDefault(g => g.Count() > 1) is { Key: var twice }
            ? throw new SettingException($"Labels:Stocks holds two of the name '{twice}'; each needs a name of its own.")
            : stocks;
    }

    static LabelStock One(IConfigurationSection section)
    {
        var name = section["Name"] ?? "";
        if (!GoodName().IsMatch(name)) throw new SettingException($"{section.Path}:Name is '{name}'; it is up to 40 small letters, figures and dashes, such as a4-21.");
        var (width, height, columns, rows) = (Mm(section, "Width", null), Mm(section, "Height", null), Count(section, "Columns"), Count(section, "Rows"));
        if (columns * rows > 1 && section["Page"] is null) throw new SettingException($"{section.Path}:Page is missing; {columns} × {rows} labels lie on a page: A4, Letter, or millimetres such as 210x297.");
        var (pageWidth, pageHeight) = Page(section, (width, height));
        var stock = new LabelStock(name, pageWidth, pageHeight)
        {
            Columns = columns, Rows = rows, LabelWidthMm = width, LabelHeightMm = height,
            LeftMarginMm = Mm(section, "Left", 0), TopMarginMm = Mm(section, "Top", 0), ColumnGapMm = Mm(section, "GapX", 0), RowGapMm = Mm(section, "GapY", 0),
        };
        return stock.Broken() is { } broken ? throw new SettingException($"{section.Path} ({name}): {broken.Detail}") : stock;
    }

    static (double Width, double Height) Page(IConfigurationSection section, (double, double) otherwise) => section["Page"] switch
    {
        null => otherwise,
        { } word when word.Equals("A4", StringComparison.OrdinalIgnoreCase) => (210, 297),
        { } word when word.Equals("Letter", StringComparison.OrdinalIgnoreCase) => (8.5 * 25.4, 11 * 25.4),
        { } word when Measures().Match(word) is { Success: true } match => (Number(match.Groups[1].Value)!.Value, Number(match.Groups[2].Value)!.Value),
        var other => throw new SettingException($"{section.Path}:Page is '{other}'; it is A4, Letter, or millimetres such as 210x297."),
    };

    static double Mm(IConfigurationSection section, string key, double? otherwise) =>
        section[key] is not { } text
            ? otherwise ?? throw new SettingException($"{section.Path}:{key} is missing; it is one label's {key.ToLowerInvariant()} in millimetres, such as 63.5.")
        : Number(text) is >= 0 and <= 2000 and var mm && (mm > 0 || otherwise is not null) ? mm
        : throw new SettingException($"{section.Path}:{key} is '{text}'; it is millimetres, such as 63.5.");

    static int Count(IConfigurationSection section, string key) =>
        section[key] is not { } text ? 1
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is >= 1 and <= 100 ? count
        : throw new SettingException($"{section.Path}:{key} is '{text}'; it is a whole number from 1 to 100.");

    static double? Number(string text) => double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;
}
