using System.Xml.Linq;
using KitWorks.Drawings.Paper;

namespace KitWorks.Drawings.Frames;

/// <summary>The key under a picture: strut types and hubs in columns, then notes.</summary>
sealed class Legend
{
    const double LargestSize = 2.4, Row = 4, ColumnGap = 5, HubGap = 6;

    readonly List<(Mark Mark, string Name, string Length, string Count)> struts;
    readonly List<(int Degree, string Name, string Count)> hubs;
    readonly List<string> notes;
    readonly string lengthHeading;
    readonly double size, swatch, pad, code, name, length, count;
    readonly int columns, rows;
    readonly double width;

    public Legend(Scene scene, Marks marks, Units units, double width, IEnumerable<string> notes)
    {
        lengthHeading = marks.AreCutLengths ? "Cut length" : "Spacing";
        var shown = scene.Struts.Where(s => Counted(s.Weight, scene)).GroupBy(s => s.Mark).ToDictionary(g => g.Key, g => g.Sum(s => scene.IsDoubled(s) ? 2 : 1));
        struts = [.. marks.All.Where(shown.ContainsKey).Select(m => (m, NameOf(m), Measure.Part(m.LengthMm, units), "× " + shown[m]))];
        hubs = [.. scene.Nodes.Where(n => Counted(n.Weight, scene)).CountBy(n => n.Node.Degree).OrderByDescending(h => h.Key)
            .Select(h => (h.Key, $"hub, {h.Key} struts", "× " + h.Value))];
        this.width = width;
        (size, swatch, pad) = (LargestSize, 8, 1.7);
        code = Widest(struts.Select(s => s.Mark.Code));
        name = Widest(struts.Select(s => s.Name));
        length = Widest(struts.Select(s => s.Length).Append(lengthHeading));
        count = Widest(struts.Select(s => s.Count));
        var shrink = Math.Min(1, width / StrutColumn);
        (size, swatch, pad) = (size * shrink, swatch * shrink, pad * shrink);
        (code, name, length, count) = (code * shrink, name * shrink, length * shrink, count * shrink);
        this.notes = [.. notes.SelectMany(n => TextWidth.Wrap(n, LargestSize, width))];
        columns = Math.Max(1, (int)Math.Floor((width + ColumnGap) / (StrutColumn + ColumnGap)));
        columns = Math.Min(columns, Math.Max(1, (int)Math.Ceiling(struts.Count / 3.0)));
        rows = (struts.Count + columns - 1) / columns;
    }

    public double Height => NotesTop + notes.Count * (Row - 0.6);

    double StrutColumn => swatch + code + name + length + count + 4 * pad;

    double HubsTop => (1 + rows) * Row + (rows > 0 ? 1.5 : 0);

    double NotesTop => HubsTop + HubLines().Count() * Row + (notes.Count > 0 ? 1 : 0);

    public XElement Draw(Spot at)
    {
        var group = Svg.Group("legend", ("fill", Ink.Dark));
        for (var column = 0; column < columns; column++)
        {
            var x = at.X + column * (StrutColumn + ColumnGap);
            var end = x + StrutColumn;
            group.Add(
                Heading(new(x, at.Y + Row * 0.6), "Strut"),
                Heading(new(end - count - pad, at.Y + Row * 0.6), lengthHeading, fromRight: true),
                Svg.Line(new(x, at.Y + Row * 0.9), new(end, at.Y + Row * 0.9), ("stroke", Ink.Pale), ("stroke-width", Svg.N(0.15))));
            for (var row = 0; row < rows && column * rows + row < struts.Count; row++)
                group.Add(StrutRow(new(x, at.Y + (row + 1.75) * Row), end, struts[column * rows + row]));
        }
        var y = at.Y + HubsTop;
        foreach (var line in HubLines())
        {
            var x = at.X;
            foreach (var hub in line)
            {
                group.Add(HubEntry(new(x, y + Row * 0.7), hub));
                x += HubWidth(hub) + HubGap;
            }
            y += Row;
        }
        y = at.Y + NotesTop;
        for (var i = 0; i < notes.Count; i++)
            group.Add(Svg.Text(new(at.X, y + (i + 0.7) * (Row - 0.6)), notes[i], LargestSize, ("fill", Ink.Soft)));
        return group;
    }

    XElement StrutRow(Spot at, double end, (Mark Mark, string Name, string Length, string Count) row)
    {
        var x = at.X + swatch + pad;
        var entry = Svg.Group("entry", ("data-code", row.Mark.Code), ("data-count", row.Count[2..]));
        entry.Add(
            Pipe.Swatch(at - new Spot(0, size * 0.35), swatch, 1.3, row.Mark.Tag, row.Mark.Pattern),
            Svg.Text(new(x, at.Y), row.Mark.Code, size, ("font-weight", "bold")),
            Svg.Text(new(x + code + pad, at.Y), row.Name, size, ("fill", Ink.Soft)),
            Svg.Text(new(end - count - pad, at.Y), row.Length, size, ("text-anchor", "end")),
            Svg.Text(new(end, at.Y), row.Count, size, ("text-anchor", "end")));
        return entry;
    }

    XElement HubEntry(Spot at, (int Degree, string Name, string Count) hub)
    {
        var entry = Svg.Group("entry", ("data-degree", hub.Degree.ToString()), ("data-count", hub.Count[2..]));
        var words = Svg.Text(new(at.X + 3.4, at.Y), hub.Name + " ", size, ("fill", Ink.Soft));
        words.Add(Svg.Element("tspan", ("fill", Ink.Dark)).Saying(hub.Count));
        entry.Add(HubSign.Draw(at + new Spot(1.2, -size * 0.35), hub.Degree, 1.05, pale: false), words);
        return entry;
    }

    double HubWidth((int Degree, string Name, string Count) hub) => 4.4 + TextWidth.Of(hub.Name + hub.Count, size);

    /// <summary>The hubs, as many to a line as fit.</summary>
    IEnumerable<List<(int Degree, string Name, string Count)>> HubLines()
    {
        var line = new List<(int Degree, string Name, string Count)>();
        foreach (var hub in hubs)
        {
            if (line.Count > 0 && line.Sum(h => HubWidth(h) + HubGap) + HubWidth(hub) > width)
            {
                yield return line;
                line = [];
            }
            line.Add(hub);
        }
        if (line.Count > 0) yield return line;
    }

    XElement Heading(Spot at, string text, bool fromRight = false) =>
        Svg.Text(at, text, size * 0.88, ("fill", Ink.Soft), ("text-anchor", fromRight ? "end" : "start"));

    static bool Counted(Weight weight, Scene scene) => weight is Weight.Strong or Weight.Behind || !scene.IsTier;

    static string NameOf(Mark mark) => mark.Tag.Bands == 1 ? mark.Tag.Colour : $"{mark.Tag.Colour}, {mark.Tag.Bands} bands";

    static double Widest(IEnumerable<string> texts) => texts.Select(t => TextWidth.Of(t, LargestSize)).DefaultIfEmpty(0).Max();
}
