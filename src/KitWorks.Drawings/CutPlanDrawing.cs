using System.Xml.Linq;
using KitWorks.Drawings.Cutting;
using KitWorks.Drawings.Paper;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Cutting;

namespace KitWorks.Drawings;

/// <summary>Draws a cut plan: a bar for each pattern, to scale, with its pieces in their tags' colours.</summary>
public static class CutPlanDrawing
{
    const double Margin = 6, TitleSize = 4.2, RowHeight = 14.5, CountRoom = 13;

    /// <summary>The drawing of a cut plan, an SVG document.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="strutTypes">The strut types that its pieces' codes name; a piece of another code is left white.</param>
    /// <param name="units">What lengths are written in.</param>
    /// <param name="width">The width on paper, 60 mm to 3 m; null for 180 mm.</param>
    /// <param name="title">The headline; null for "Cut plan".</param>
    public static Outcome<string> Draw(
        CutPlan plan, IReadOnlyList<StrutType>? strutTypes = null, Units units = Units.Metric, Length? width = null, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (width is { } asked && SheetWidth.Fault(asked) is { } refusal) return refusal;
        var sheetWidth = width?.Millimetres ?? 180;
        var (headline, summary) = (title ?? "Cut plan", Summary(plan, units));
        var top = Margin + TitleSize + 8;
        var height = top + plan.Patterns.Length * RowHeight + Margin - 3;

        var drawing = Svg.Group("drawing", ("font-family", Ink.Font), ("fill", Ink.Dark));
        drawing.Add(
            Svg.Text(new(Margin, Margin + TitleSize * 0.8), headline, TitleSize, ("font-weight", "bold")),
            Svg.Text(new(Margin, Margin + TitleSize + 3.4), summary, Math.Min(2.6, 2.6 * (sheetWidth - 2 * Margin) / TextWidth.Of(summary, 2.6)), ("fill", Ink.Soft)));
        var longest = plan.Patterns.Select(p => p.StockLength.Millimetres).DefaultIfEmpty(1).Max();
        var scale = (sheetWidth - 2 * Margin - CountRoom) / longest;
        for (var i = 0; i < plan.Patterns.Length; i++)
            drawing.Add(Row(plan.Patterns[i], new(Margin, top + i * RowHeight), scale, strutTypes, units));
        var sheet = Svg.Sheet(sheetWidth, height, headline, summary);
        sheet.Add(drawing);
        return Svg.Write(sheet);
    }

    static XElement Row(CutPattern pattern, Spot at, double scale, IReadOnlyList<StrutType>? types, Units units)
    {
        var row = Svg.Group("pattern", ("data-count", pattern.Count.ToString()));
        var bar = new PatternBar(pattern, at + new Spot(CountRoom, 0), scale, types, units);
        row.Add(Svg.Text(new(at.X, at.Y + PatternBar.Height * 0.66), $"{pattern.Count} ×", 3.6, ("font-weight", "bold")));
        row.Add(bar.Draw());
        return row;
    }

    static string Summary(CutPlan plan, Units units)
    {
        var stock = plan.StockLengths.Select(s => $"{s.Count} × {Measure.Part(s.Length.Millimetres, units)} {s.Sku}");
        var remnants = plan.Patterns.Where(p => p.Sku is null).Sum(p => p.Count);
        var all = remnants == 0 ? stock : stock.Append($"{remnants} × remnant");
        return $"{string.Join(", ", all)} · waste {Svg.Plain(Math.Round(plan.WasteRatio * 100, 1))} %";
    }
}
