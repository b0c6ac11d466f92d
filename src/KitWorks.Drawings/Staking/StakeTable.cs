using System.Xml.Linq;
using KitWorks.Drawings.Paper;

namespace KitWorks.Drawings.Staking;

/// <summary>Every stake in figures: two tape lengths that place it, its way from the middle, and the side to the next.</summary>
sealed class StakeTable
{
    const double LargestSize = 3.2, Row = 4.8, LargestPad = 3.4, ColumnGap = 6;

    readonly List<string[]> rows;
    readonly double size, pad;
    readonly double[] widths;
    readonly int columns, perColumn;

    public StakeTable(Stakes stakes, Units units, bool withHeights, double width)
    {
        string Tape(double mm) => Measure.Tape(mm, units);
        string[] heading = ["Stake", "From 1", $"From {stakes.Second}", "Middle", "To next", "x", "y", .. withHeights ? ["Height"] : Array.Empty<string>()];
        rows =
        [
            heading,
            .. stakes.All.Select(s => (string[])
            [
                s.ToString(), s == 1 ? "-" : Tape(stakes.Between(1, s)), s == stakes.Second ? "-" : Tape(stakes.Between(stakes.Second, s)),
                Tape(stakes.FromMiddle(s)), Tape(stakes.Between(s, stakes.Next(s))), Tape(stakes.At(s).X), Tape(stakes.At(s).Y),
                .. withHeights ? [Tape(stakes.HeightOf(s))] : Array.Empty<string>(),
            ]),
        ];
        // Bold letters are a tenth wider.
        double[] largest = [.. Enumerable.Range(0, heading.Length).Select(c => rows.Max(r => TextWidth.Of(r[c], LargestSize) * (r == heading || c == 0 ? 1.1 : 1)) + LargestPad)];
        var shrink = Math.Min(1, width / largest.Sum());
        (size, pad, widths) = (LargestSize * shrink, LargestPad * shrink, [.. largest.Select(w => w * shrink)]);
        columns = Math.Max(1, (int)((width + ColumnGap) / (widths.Sum() + ColumnGap)));
        columns = Math.Min(columns, Math.Max(1, stakes.Count / 5));
        perColumn = (stakes.Count + columns - 1) / columns;
    }

    public double Height => (perColumn + 1.3) * Row;

    public XElement Draw(Spot at)
    {
        var table = Svg.Group("table", ("font-size", Svg.N(size)), ("text-anchor", "end"));
        for (var column = 0; column < columns; column++)
        {
            var x = at.X + column * (widths.Sum() + ColumnGap);
            table.Add(
                Line(new(x, at.Y + Row * 0.7), rows[0], isHeading: true),
                Svg.Line(new(x, at.Y + Row), new(x + widths.Sum(), at.Y + Row), ("stroke", Ink.Pale), ("stroke-width", Svg.N(0.15))));
            for (var i = 0; i < perColumn && column * perColumn + i + 1 < rows.Count; i++)
            {
                var row = column * perColumn + i + 1;
                if (i % 2 == 1) table.Add(Svg.Element("rect", ("x", Svg.N(x)), ("y", Svg.N(at.Y + (i + 1.15) * Row)), ("width", Svg.N(widths.Sum())), ("height", Svg.N(Row)), ("fill", Ink.Faint)));
                table.Add(Line(new(x, at.Y + (i + 1.88) * Row), rows[row]));
            }
        }
        return table;
    }

    XElement Line(Spot at, string[] cells, bool isHeading = false)
    {
        var line = Svg.Group("row", ("fill", Ink.Dark));
        var x = at.X - pad * 0.4;
        for (var i = 0; i < cells.Length; i++)
        {
            x += widths[i];
            var cell = Svg.Element("text", ("x", Svg.N(x)), ("y", Svg.N(at.Y))).Saying(cells[i]);
            if (i == 0 || isHeading) cell.SetAttributeValue("font-weight", "bold");
            line.Add(cell);
        }
        return line;
    }
}
