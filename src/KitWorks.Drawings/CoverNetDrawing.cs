using KitWorks.Drawings.Covers;
using KitWorks.Drawings.Frames;
using KitWorks.Drawings.Paper;
using KitWorks.Geometry;

namespace KitWorks.Drawings;

/// <summary>Draws the panels of a cover for whoever cuts them: each kind to one scale, where to cut, and which strut each side lies on.</summary>
public static class CoverNetDrawing
{
    const double Margin = 6, TitleSize = 4.2, Gap = 4, NoteSize = 2.4;

    /// <summary>The drawing of a cover's panels, an SVG document.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="seamAllowance">How far the cut runs outside the sides.</param>
    /// <param name="units">What lengths are written in.</param>
    /// <param name="width">The width on paper, 60 mm to 3 m; null for 180 mm.</param>
    /// <param name="title">The headline; null for the shelter's own name.</param>
    public static Outcome<string> Draw(Frame frame, Length seamAllowance, Units units = Units.Metric, Length? width = null, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(frame);
        if (width is { } asked && SheetWidth.Fault(asked) is { } refusal) return refusal;
        var sheetWidth = width?.Millimetres ?? 180;
        var inner = sheetWidth - 2 * Margin;
        var nets = CoverNet.Of(frame, seamAllowance);
        var marks = Marks.For(frame, null);

        var columns = Math.Max(1, (int)Math.Min(Math.Ceiling(Math.Sqrt(nets.Length)), (inner + Gap) / (NetShape.LeastWidth + Gap)));
        var column = (inner - (columns - 1) * Gap) / columns;
        var scale = (column - 2 * NetShape.Room) / nets.Max(n => n.CutSidesMm[^1]);
        NetShape[] shapes = [.. nets.Select(n => new NetShape(n, scale, [.. frame.PanelKinds[n.Kind].Families.Select(f => marks.All[f])], units))];

        var headline = $"{title ?? ShelterName.Of(frame.Shelter)} · Cover panels";
        var note = $"One layer. Cut along the outer line, {Measure.Part(seamAllowance.Millimetres, units)} outside the struts' centre lines, which the coloured lines are; figures are cut sides. Where a panel's three sides differ, some places need its mirror image: turn it over, or, of cloth with a right side, cut those mirrored. Hubs stand proud of the corners: try one panel before cutting all.";
        var notes = TextWidth.Wrap(note, NoteSize, inner).ToList();
        var drawing = Svg.Group("drawing", ("font-family", Ink.Font), ("fill", Ink.Dark));
        drawing.Add(Svg.Text(new(Margin, Margin + TitleSize * 0.8), headline, Math.Min(TitleSize, TitleSize * inner / TextWidth.Of(headline, TitleSize * 1.06)), ("font-weight", "bold")));
        for (var i = 0; i < notes.Count; i++) drawing.Add(Svg.Text(new(Margin, Margin + TitleSize + 3.2 + i * 3.4), notes[i], NoteSize, ("fill", Ink.Soft)));

        var top = Margin + TitleSize + 3.2 + notes.Count * 3.4 + 1;
        foreach (var row in shapes.Chunk(columns))
        {
            var height = row.Max(s => s.Height);
            for (var i = 0; i < row.Length; i++) drawing.Add(row[i].Draw(new(Margin + i * (column + Gap) + column / 2, top + height)));
            top += height + Gap;
        }
        var sheet = Svg.Sheet(sheetWidth, top - Gap + Margin, headline, note);
        sheet.Add(drawing);
        return Svg.Write(sheet);
    }
}
