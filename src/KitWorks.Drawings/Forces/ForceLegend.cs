using System.Globalization;
using System.Xml.Linq;
using KitWorks.Drawings.Paper;
using KitWorks.Statics;

namespace KitWorks.Drawings.Forces;

/// <summary>The key under a picture of forces: a scale of widths for each colour, the largest forces, and what the picture is not.</summary>
sealed class ForceLegend
{
    const double Size = 2.4, Row = 4, Swatch = 16, Column = 44;

    readonly ForceScene scene;
    readonly double[] steps;
    readonly List<string> notes;

    public ForceLegend(ForceScene scene, double width)
    {
        this.scene = scene;
        steps = scene.LargestN > 0 ? [scene.LargestN, .. RoundBelow(scene.LargestN)] : [];
        Summary = scene.LargestN > 0
            ? string.Join("; ", new[] { Words("Largest compression", scene.Pressed), Words("largest tension", scene.Pulled) }.Where(w => w is not null))
            : "No strut bears a force";
        var words = new List<string> { Summary + "." };
        if (scene.Loaded > 0) words.Add($"A ring marks {(scene.Loaded == 1 ? "the loaded hub" : $"each of the {scene.Loaded} loaded hubs")}.");
        if (scene.HasOpenings) words.Add("Dashed struts are taken out.");
        if (scene.HasFarSide) words.Add("Pale struts are on the far side.");
        notes = [.. TextWidth.Wrap(string.Join(' ', words), Size, width), .. TextWidth.Wrap(Truss.Caution, Size, width)];
    }

    /// <summary>The largest forces, in words.</summary>
    public string Summary { get; }

    public double Height => (steps.Length > 0 ? (steps.Length + 1) * Row + 1 : 0) + notes.Count * (Row - 0.6);

    public XElement Draw(Spot at)
    {
        var group = Svg.Group("legend", ("fill", Ink.Dark));
        var y = at.Y;
        if (steps.Length > 0)
        {
            group.Add(Svg.Text(new(at.X, y + Row * 0.6), "Compression", Size, ("font-weight", "bold")), Svg.Text(new(at.X + Column, y + Row * 0.6), "Tension", Size, ("font-weight", "bold")));
            foreach (var step in steps)
            {
                y += Row;
                group.Add(Entry(new(at.X, y), -step), Entry(new(at.X + Column, y), step));
            }
            y += Row + 1;
        }
        for (var i = 0; i < notes.Count; i++) group.Add(Svg.Text(new(at.X, y + (i + 0.7) * (Row - 0.6)), notes[i], Size, ("fill", Ink.Soft)));
        return group;
    }

    XElement Entry(Spot at, double force)
    {
        var entry = Svg.Group("entry", ("data-scale", Math.Round(force, 3).ToString(CultureInfo.InvariantCulture)));
        foreach (var part in scene.Bar(at + new Spot(0, Row * 0.45), at + new Spot(Swatch, Row * 0.45), force)) entry.Add(part);
        entry.Add(Svg.Text(at + new Spot(Swatch + 2, Row * 0.65), Newtons(Math.Abs(force)), Size));
        return entry;
    }

    /// <summary>Two round forces below the largest, such as 500 and 200 of 812.</summary>
    static double[] RoundBelow(double largest)
    {
        var ten = Math.Pow(10, Math.Floor(Math.Log10(largest)));
        double[] round = [5 * ten, 2 * ten, ten, ten / 2, ten / 5];
        return [.. round.Where(r => r < largest * 0.85).Take(2)];
    }

    static string? Words(string what, (int Strut, double ForceN) most) => most.ForceN > 0 ? $"{what} {Newtons(most.ForceN)}, in strut {most.Strut}" : null;

    static string Newtons(double force) => force switch
    {
        >= 100_000 => (force / 1000).ToString("#,0", CultureInfo.InvariantCulture) + " kN",
        >= 100 => force.ToString("#,0", CultureInfo.InvariantCulture) + " N",
        >= 0.01 => force.ToString("0.##", CultureInfo.InvariantCulture) + " N",
        _ => force.ToString("0.#e0", CultureInfo.InvariantCulture) + " N",
    };
}
