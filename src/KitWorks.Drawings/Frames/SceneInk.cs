using System.Text;
using System.Xml.Linq;
using KitWorks.Drawings.Paper;

namespace KitWorks.Drawings.Frames;

/// <summary>
/// Puts a scene on paper, from far to near: panels, what is hidden, what stands, what the picture is about, hubs. Within one
/// such layer of a convex shell no strut crosses another, so a layer is drawn type by type.
/// </summary>
static class SceneInk
{
    /// <summary>Panels come in this many shades of light.</summary>
    const int Shades = 8;

    public static IEnumerable<XElement> Draw(Scene scene)
    {
        yield return Panels(scene);
        yield return Thin(scene, Weight.Hidden, 0.42, Ink.Pale);
        yield return Pipes(scene, Weight.Behind, scene.Pipe * 0.7);
        yield return Thin(scene, Weight.Standing, 0.6, Ink.Line);
        yield return Openings(scene);
        yield return Pipes(scene, Weight.Strong, scene.Pipe);
        yield return Hubs(scene);
    }

    static XElement Panels(Scene scene)
    {
        var group = Svg.Group("panels", ("stroke", "none"));
        foreach (var shade in scene.Panels.GroupBy(p => (int)Math.Round(p.Light * Shades)).OrderBy(g => g.Key))
        {
            var d = new StringBuilder();
            foreach (var (c, _) in shade)
                d.Append($"M{Svg.N(c[0].X)} {Svg.N(c[0].Y)}L{Svg.N(c[1].X)} {Svg.N(c[1].Y)}L{Svg.N(c[2].X)} {Svg.N(c[2].Y)}Z");
            group.Add(Svg.Path(d.ToString(), ("fill", Ink.Mix("#D5DEE6", "#FBFCFD", (double)shade.Key / Shades))));
        }
        return group;
    }

    /// <summary>Struts in the background: thin, in their tag's colour made pale.</summary>
    static XElement Thin(Scene scene, Weight weight, double width, string background)
    {
        var group = Svg.Group(weight == Weight.Hidden ? "hidden" : "standing", ("fill", "none"), ("stroke-width", Svg.N(Math.Max(0.15, scene.Pipe * width))));
        foreach (var type in OfWeight(scene, weight))
        {
            var struts = Svg.Group("type", ("stroke", Ink.Mix(type.Key.Tag.Hex, background, 0.72)));
            foreach (var s in type) struts.Add(Strut(s));
            group.Add(struts);
        }
        return group;
    }

    static XElement Pipes(Scene scene, Weight weight, double width)
    {
        var group = Svg.Group(weight == Weight.Strong ? "strong" : "behind", ("fill", "none"));
        var rim = new StringBuilder();
        foreach (var s in scene.Struts.Where(s => s.Weight == weight)) rim.Append(Svg.Segment(s.From, s.To));
        if (rim.Length == 0) return group;
        group.Add(Svg.Path(rim.ToString(), ("stroke", Ink.Dark), ("stroke-width", Svg.N(width))));
        foreach (var type in OfWeight(scene, weight))
        {
            var struts = Svg.Group("type", ("stroke", type.Key.Tag.Hex), ("stroke-width", Pipe.Core(width)));
            foreach (var s in type) struts.Add(Strut(s));
            group.Add(struts, Pipe.Pattern(string.Concat(type.Select(s => Svg.Segment(s.From, s.To))), type.Key.Pattern, type.Key.Tag.Hex, width));
            if (type.Key.Tag.Bands < 2 || width < Pipe.ThinnestPatterned) continue;
            var bands = type.Where(s => s.Length > 2 * scene.Hub + width * (type.Key.Tag.Bands + 4));
            group.Add(Svg.Path(string.Concat(bands.Select(s => Pipe.Bands(s.From, s.To, type.Key.Tag.Bands, scene.Hub + width * 0.9, width))),
                ("stroke", Ink.Dark), ("stroke-width", Svg.N(width * 0.3))));
        }
        return group;
    }

    /// <summary>Openings: outlined, named, and beside each strut that lies double its second.</summary>
    static XElement Openings(Scene scene)
    {
        var group = Svg.Group("openings", ("fill", "none"), ("stroke-linejoin", "round"));
        foreach (var opening in scene.Openings)
        {
            var (middle, ink) = (opening.Middle, opening.IsNear ? Ink.Dark : Ink.Line);
            string Inside(double mm) => string.Join(' ', opening.Edge.Select(s => s + (middle - s).Unit * mm).Select(s => $"{Svg.N(s.X)},{Svg.N(s.Y)}"));
            group.Add(Svg.Element("polygon", ("points", Inside(scene.Pipe * 2.2)), ("stroke", ink), ("stroke-width", Svg.N(0.25)), ("stroke-dasharray", $"{Svg.N(1.2)} {Svg.N(0.8)}"), ("data-opening", opening.Name)));
            foreach (var s in scene.Struts.Where(s => opening.Doubled.Contains(s.Strut.Id)))
            {
                var across = (s.To - s.From).Unit.Turned * (scene.Pipe * 1.15);
                var beside = (s.From + across).DistanceTo(middle) < (s.From - across).DistanceTo(middle) ? across : across * -1;
                group.Add(Svg.Line(s.From.Towards(s.To, 0.12) + beside, s.From.Towards(s.To, 0.88) + beside, ("stroke", ink), ("stroke-width", Svg.N(Math.Max(0.2, scene.Pipe * 0.55)))));
            }
            if (opening.IsNear) group.Add(Svg.Text(new(middle.X, middle.Y + 0.8), opening.Name, 2.4, ("fill", Ink.Dark), ("text-anchor", "middle"), ("font-weight", "bold")));
        }
        return group;
    }

    static XElement Hubs(Scene scene)
    {
        var group = Svg.Group("hubs");
        foreach (var n in scene.Nodes.OrderBy(n => n.Weight))
        {
            var hub = n.Weight is Weight.Hidden
                ? Svg.Element("circle", ("cx", Svg.N(n.At.X)), ("cy", Svg.N(n.At.Y)), ("r", Svg.N(scene.Hub * 0.4)), ("fill", Ink.Pale))
                : HubSign.Draw(n.At, n.Node.Degree, scene.Hub * (n.Weight == Weight.Strong ? 1 : 0.75), pale: n.Weight == Weight.Standing);
            hub.SetAttributeValue("data-hub", n.Node.Id.ToString());
            group.Add(hub);
        }
        return group;
    }

    static XElement Strut(DrawnStrut s) => Svg.Line(s.From, s.To, ("data-strut", s.Strut.Id.ToString()), ("data-code", s.Mark.Code));

    static IEnumerable<IGrouping<Mark, DrawnStrut>> OfWeight(Scene scene, Weight weight) =>
        scene.Struts.Where(s => s.Weight == weight).GroupBy(s => s.Mark).OrderBy(g => g.Key.LengthMm).ThenBy(g => g.Key.Code, StringComparer.Ordinal);
}
