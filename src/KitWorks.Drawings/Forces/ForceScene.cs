using System.Globalization;
using System.Text;
using System.Xml.Linq;
using KitWorks.Drawings.Frames;
using KitWorks.Drawings.Paper;
using KitWorks.Geometry;
using KitWorks.Statics;
using KitWorks.Statics.Loads;

namespace KitWorks.Drawings.Forces;

/// <summary>
/// A frame's struts with their forces on paper. Colours: M. Okabe and K. Ito, Color Universal Design (2008), from memory; blue and orange differ
/// for people with any colour vision, and in black and white by their lightness and by the dark rim that only tension has.
/// </summary>
sealed class ForceScene
{
    public const string Compression = "#0072B2", Tension = "#E69F00", Opening = "#93A0AC";

    /// <summary>The widths of the smallest and the largest force, in millimetres of paper.</summary>
    const double Thinnest = 0.18, Widest = 2.2;

    /// <summary>A force below this share of the largest is drawn as none.</summary>
    const double Nothing = 1e-6;

    readonly List<(Strut Strut, double? ForceN, bool Near, Spot From, Spot To)> struts;
    readonly List<Spot> loaded;
    readonly List<Spot[]> panels;
    readonly double widest;

    public ForceScene(Frame frame, IReadOnlyList<MemberForce> members, IReadOnlyList<NodeLoad> loads, Projection projection, View view, Func<Spot, Spot> toPaper)
    {
        var forces = members.ToDictionary(m => m.Strut, m => m.ForceN);
        struts = [.. frame.Struts.Select(s => (s, forces.TryGetValue(s.Id, out var f) ? f : (double?)null, projection.StrutNear[s.Id] || view == View.Spread, toPaper(projection[s.From]), toPaper(projection[s.To])))];
        LargestN = forces.Values.Select(Math.Abs).DefaultIfEmpty(0).Max();
        Pressed = struts.Where(s => s.ForceN < 0).Select(s => (s.Strut.Id, -s.ForceN!.Value)).OrderByDescending(s => s.Item2).ThenBy(s => s.Id).FirstOrDefault();
        Pulled = struts.Where(s => s.ForceN > 0).Select(s => (s.Strut.Id, s.ForceN!.Value)).OrderByDescending(s => s.Item2).ThenBy(s => s.Id).FirstOrDefault();
        HasFarSide = struts.Any(s => !s.Near);
        HasOpenings = struts.Any(s => s.ForceN is null);
        loaded = [.. loads.Where(l => (l.XN, l.YN, l.ZN) != (0, 0, 0)).Select(l => l.Node).Distinct().Select(n => toPaper(projection[n]))];
        panels = [.. frame.Panels.Where((_, i) => projection.Faces(i)).Select(p => new[] { p.A, p.B, p.C }.Select(n => toPaper(projection[n])).ToArray())];
        var typical = struts.Where(s => s.Near).Select(s => s.From.DistanceTo(s.To)).Order().ToArray() is { Length: > 0 } lengths ? lengths[lengths.Length / 2] : 10;
        widest = Math.Clamp(typical * 0.16, Thinnest * 3, Widest);
    }

    /// <summary>The largest force, in newtons.</summary>
    public double LargestN { get; }

    /// <summary>The strut pressed most, and by how much; 0 where none is.</summary>
    public (int Strut, double ForceN) Pressed { get; }

    /// <summary>The strut pulled most, and by how much; 0 where none is.</summary>
    public (int Strut, double ForceN) Pulled { get; }

    public bool HasFarSide { get; }

    public bool HasOpenings { get; }

    /// <summary>How many hubs are marked as loaded.</summary>
    public int Loaded => loaded.Count;

    /// <summary>The width of a force on paper: in proportion, but never too thin to be seen.</summary>
    public double WidthOf(double forceN) => LargestN > 0 ? Math.Max(Thinnest, widest * Math.Abs(forceN) / LargestN) : Thinnest;

    public IEnumerable<XElement> Draw()
    {
        yield return Panels();
        yield return Struts(near: false);
        yield return Struts(near: true);
        var hubs = Svg.Group("loaded", ("fill", "none"), ("stroke", Ink.Dark), ("stroke-width", Svg.N(0.35)));
        foreach (var at in loaded) hubs.Add(Svg.Element("circle", ("cx", Svg.N(at.X)), ("cy", Svg.N(at.Y)), ("r", Svg.N(LoadedRadius))));
        yield return hubs;
    }

    public double LoadedRadius => Math.Max(0.8, widest * 0.8);

    XElement Panels()
    {
        var d = new StringBuilder();
        foreach (var c in panels) d.Append(CultureInfo.InvariantCulture, $"M{Svg.N(c[0].X)} {Svg.N(c[0].Y)}L{Svg.N(c[1].X)} {Svg.N(c[1].Y)}L{Svg.N(c[2].X)} {Svg.N(c[2].Y)}Z");
        return Svg.Path(d.ToString(), ("fill", "#F4F6F8"), ("stroke", "none"));
    }

    /// <summary>Wide struts first, so that they hide no thin one.</summary>
    XElement Struts(bool near)
    {
        var group = Svg.Group(near ? "forces" : "far", ("stroke-linecap", "round"));
        if (!near) group.SetAttributeValue("opacity", "0.3");
        foreach (var s in struts.Where(s => s.Near == near).OrderByDescending(s => Math.Abs(s.ForceN ?? 0)).ThenBy(s => s.Strut.Id))
        {
            if (s.ForceN is not { } force)
            {
                group.Add(Svg.Line(s.From, s.To, ("data-strut", s.Strut.Id.ToString(CultureInfo.InvariantCulture)), ("data-opening", "true"),
                    ("stroke", Opening), ("stroke-width", Svg.N(0.25)), ("stroke-dasharray", $"{Svg.N(1)} {Svg.N(1)}")));
                continue;
            }
            foreach (var part in Bar(s.From, s.To, force)) group.Add(part);
            ((XElement)group.LastNode!).SetAttributeValue("data-strut", s.Strut.Id.ToString(CultureInfo.InvariantCulture));
            ((XElement)group.LastNode!).SetAttributeValue("data-force", Math.Round(force, 3).ToString(CultureInfo.InvariantCulture));
        }
        return group;
    }

    /// <summary>A strut with its force: tension has a dark rim where it is wide enough for one.</summary>
    public IEnumerable<XElement> Bar(Spot from, Spot to, double force)
    {
        var width = WidthOf(force);
        if (Math.Abs(force) <= Nothing * LargestN)
        {
            yield return Svg.Line(from, to, ("stroke", Ink.Pale), ("stroke-width", Svg.N(Thinnest)));
            yield break;
        }
        var rim = force > 0 && width > 0.5 ? 0.12 : 0;
        if (rim > 0) yield return Svg.Line(from, to, ("stroke", Ink.Dark), ("stroke-width", Svg.N(width)));
        yield return Svg.Line(from, to, ("stroke", force < 0 ? Compression : Tension), ("stroke-width", Svg.N(width - 2 * rim)));
    }
}
