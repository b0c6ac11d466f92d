using System.Xml.Linq;
using KitWorks.Drawings.Paper;

namespace KitWorks.Drawings.Frames;

/// <summary>The key under a picture: strut types and hubs in columns, then notes.</summary>
sealed class Legend
{
    const double Size = 2.4, Row = 4, Swatch = 8, Pad = 2.2, ColumnGap = 6;

    readonly List<(Mark Mark, string Name, string Length, string Count)> struts;
    readonly List<(int Degree, string Name, string Count)> hubs;
    readonly List<string> notes;
    readonly string lengthHeading;
    readonly double code, name, length, count, hubName, hubCount;
    readonly int columns, rows;
    readonly double width;

    public Legend(Scene scene, Marks marks, Units units, double width, IEnumerable<string> notes)
    {
        lengthHeading = marks.AreCutLengths ? "Cut length" : "Spacing";
        var shown = scene.Struts.Where(s => Counted(s.Weight, scene)).CountBy(s => s.Mark).ToDictionary();
        struts = [.. marks.All.Where(shown.ContainsKey).Select(m => (m, NameOf(m), Measure.Part(m.LengthMm, units), "× " + shown[m]))];
        hubs = [.. scene.Nodes.Where(n => Counted(n.Weight, scene)).CountBy(n => n.Node.Degree).OrderByDescending(h => h.Key)
            .Select(h => (h.Key, $"hub, {h.Key} struts", "× " + h.Value))];
        this.width = width;
        code = Widest(struts.Select(s => s.Mark.Code));
        name = Widest(struts.Select(s => s.Name));
        length = Widest(struts.Select(s => s.Length).Append(lengthHeading));
        count = Widest(struts.Select(s => s.Count));
        hubName = Widest(hubs.Select(h => h.Name));
        hubCount = Widest(hubs.Select(h => h.Count));
        this.notes = [.. notes.SelectMany(n => Wrap(n, width))];
        var forStruts = width - (HubColumn + ColumnGap);
        columns = Math.Max(1, (int)Math.Floor((forStruts + ColumnGap) / (StrutColumn + ColumnGap)));
        columns = Math.Min(columns, Math.Max(1, (int)Math.Ceiling(struts.Count / 3.0)));
        rows = (struts.Count + columns - 1) / columns;
    }

    public double Height => (1 + Math.Max(rows, hubs.Count)) * Row + (notes.Count > 0 ? 1.5 + notes.Count * (Row - 0.6) : 0);

    double StrutColumn => Swatch + code + name + length + count + 4 * Pad;

    double HubColumn => 3 + Pad + hubName + Pad + hubCount;

    public XElement Draw(Spot at)
    {
        var group = Svg.Group("legend", ("fill", Ink.Dark));
        for (var column = 0; column < columns; column++)
        {
            var x = at.X + column * (StrutColumn + ColumnGap);
            var end = x + StrutColumn;
            group.Add(
                Heading(new(x, at.Y + Row * 0.6), "Strut"),
                Heading(new(end - count - Pad, at.Y + Row * 0.6), lengthHeading, fromRight: true),
                Svg.Line(new(x, at.Y + Row * 0.9), new(end, at.Y + Row * 0.9), ("stroke", Ink.Pale), ("stroke-width", Svg.N(0.15))));
            for (var row = 0; row < rows && column * rows + row < struts.Count; row++)
                group.Add(StrutRow(new(x, at.Y + (row + 1.75) * Row), end, struts[column * rows + row]));
        }
        var left = at.X + width - HubColumn;
        group.Add(
            Heading(new(left, at.Y + Row * 0.6), "Hub"),
            Svg.Line(new(left, at.Y + Row * 0.9), new(at.X + width, at.Y + Row * 0.9), ("stroke", Ink.Pale), ("stroke-width", Svg.N(0.15))));
        for (var i = 0; i < hubs.Count; i++) group.Add(HubRow(new(left, at.Y + (i + 1.75) * Row), at.X + width, hubs[i]));
        var y = at.Y + (1 + Math.Max(rows, hubs.Count)) * Row + 1.5;
        for (var i = 0; i < notes.Count; i++)
            group.Add(Svg.Text(new(at.X, y + (i + 0.7) * (Row - 0.6)), notes[i], Size, ("fill", Ink.Soft)));
        return group;
    }

    XElement StrutRow(Spot at, double end, (Mark Mark, string Name, string Length, string Count) row)
    {
        var x = at.X + Swatch + Pad;
        var entry = Svg.Group("entry", ("data-code", row.Mark.Code), ("data-count", row.Count[2..]));
        entry.Add(
            Pipe.Swatch(at - new Spot(0, Size * 0.35), Swatch, 1.3, row.Mark.Tag, row.Mark.Pattern),
            Svg.Text(new(x, at.Y), row.Mark.Code, Size, ("font-weight", "bold")),
            Svg.Text(new(x + code + Pad, at.Y), row.Name, Size, ("fill", Ink.Soft)),
            Svg.Text(new(end - count - Pad, at.Y), row.Length, Size, ("text-anchor", "end")),
            Svg.Text(new(end, at.Y), row.Count, Size, ("text-anchor", "end")));
        return entry;
    }

    static XElement HubRow(Spot at, double end, (int Degree, string Name, string Count) row)
    {
        var entry = Svg.Group("entry", ("data-degree", row.Degree.ToString()), ("data-count", row.Count[2..]));
        entry.Add(
            HubSign.Draw(at + new Spot(1.2, -Size * 0.35), row.Degree, 1.05, pale: false),
            Svg.Text(new(at.X + 3 + Pad, at.Y), row.Name, Size, ("fill", Ink.Soft)),
            Svg.Text(new(end, at.Y), row.Count, Size, ("text-anchor", "end")));
        return entry;
    }

    static XElement Heading(Spot at, string text, bool fromRight = false) =>
        Svg.Text(at, text, Size * 0.88, ("fill", Ink.Soft), ("text-anchor", fromRight ? "end" : "start"));

    static bool Counted(Weight weight, Scene scene) => weight is Weight.Strong or Weight.Behind || !scene.IsTier;

    static string NameOf(Mark mark) => mark.Tag.Bands == 1 ? mark.Tag.Colour : $"{mark.Tag.Colour}, {mark.Tag.Bands} bands";

    static double Widest(IEnumerable<string> texts) => texts.Select(t => TextWidth.Of(t, Size)).DefaultIfEmpty(0).Max();

    static IEnumerable<string> Wrap(string text, double width)
    {
        var line = "";
        foreach (var word in text.Split(' '))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && TextWidth.Of(longer, Size) > width)
            {
                yield return line;
                longer = word;
            }
            line = longer;
        }
        yield return line;
    }
}
