using System.Xml.Linq;
using KitWorks.Drawings.Frames;
using KitWorks.Drawings.Paper;
using KitWorks.Geometry;

namespace KitWorks.Drawings.Covers;

/// <summary>One kind of panel on paper, its longest side at the bottom.</summary>
sealed class NetShape
{
    /// <summary>What figures outside the cut take, and the narrowest column that they can be read in, in millimetres.</summary>
    public const double Room = 5, LeastWidth = 53;

    const double FigureSize = 2.2, CodeSize = 2.1, NameSize = 2.9;

    readonly CoverNet net;
    readonly Mark[] marks;
    readonly Units units;
    readonly Spot[] cut, seam; // the corners opposite to the shortest, the middle and the longest side, from the foot of the middle
    readonly Spot middle;

    /// <summary>Lays a panel out.</summary>
    /// <param name="net">The panel.</param>
    /// <param name="scale">Paper over panel.</param>
    /// <param name="marks">Those of its sides.</param>
    /// <param name="units">What figures are written in.</param>
    public NetShape(CoverNet net, double scale, Mark[] marks, Units units)
    {
        (this.net, this.marks, this.units) = (net, marks, units);
        double a = net.CutSidesMm[0] * scale, b = net.CutSidesMm[1] * scale, c = net.CutSidesMm[2] * scale;
        var corner = net.AnglesDegrees[0] * Math.PI / 180;
        cut = [new(-c / 2, 0), new(c / 2, 0), new(b * Math.Cos(corner) - c / 2, -b * Math.Sin(corner))];
        middle = (cut[0] * a + cut[1] * b + cut[2] * c) * (1 / (a + b + c));
        seam = [.. cut.Select(p => middle.Towards(p, net.SidesMm[0] / net.CutSidesMm[0]))];
    }

    /// <summary>From above the upper corner to below the figures of the lower side.</summary>
    public double Height => -cut[2].Y + 2 * Room;

    /// <summary>The panel with its lower side's middle above the bottom of its room.</summary>
    public XElement Draw(Spot bottom)
    {
        var foot = bottom - new Spot(0, Room);
        Spot At(Spot p) => foot + p;
        var group = Svg.Group("net", ("data-code", $"P{net.Kind + 1}"));
        group.Add(Svg.Element("polygon", ("points", string.Join(' ', cut.Select(p => $"{Svg.N(At(p).X)},{Svg.N(At(p).Y)}"))),
            ("fill", "#F4F6F8"), ("stroke", Ink.Dark), ("stroke-width", Svg.N(0.3)), ("stroke-linejoin", "round")));
        for (var side = 0; side < 3; side++)
        {
            var (p, q) = (seam[(side + 1) % 3], seam[(side + 2) % 3]);
            group.Add(Svg.Line(At(p), At(q), ("stroke", marks[side].Tag.Hex), ("stroke-width", Svg.N(0.7)), ("stroke-linecap", "round")));
            group.Add(Beside(At(cut[(side + 1) % 3]), At(cut[(side + 2) % 3]), -2, Measure.Part(net.CutSidesMm[side], units), FigureSize, Ink.Dark));
            group.Add(Beside(At(p), At(q), 2.2, marks[side].Code, CodeSize, Ink.Soft));
            var into = middle - seam[side];
            group.Add(Svg.Text(At(seam[side] + into.Unit * Math.Min(into.Length * 0.45, 8)) + new Spot(0, FigureSize * 0.36), $"{Svg.Plain(Math.Round(net.AnglesDegrees[side], 1))}°",
                FigureSize, ("text-anchor", "middle"), ("fill", Ink.Soft)));
        }
        group.Add(Svg.Text(At(middle) + new Spot(0, NameSize * 0.36), $"P{net.Kind + 1} × {net.Count}", NameSize, ("text-anchor", "middle"), ("font-weight", "bold")));
        return group;
    }

    // Along a side, so many millimetres inside of it; upright.
    static XElement Beside(Spot from, Spot to, double inside, string text, double size, string ink)
    {
        // Corners run clockwise seen with y down, so that inside is on the left hand.
        var along = (to - from).Unit;
        var at = from.Towards(to, 0.5) - along.Turned * inside;
        var upright = along.X < -1e-9 ? along * -1 : along;
        var figure = Svg.Element("g", ("transform", $"translate({Svg.N(at.X)} {Svg.N(at.Y)}) rotate({Svg.Plain(Math.Atan2(upright.Y, upright.X) * 180 / Math.PI)})"));
        figure.Add(Svg.Text(new(0, size * 0.36), text, size, ("text-anchor", "middle"), ("fill", ink)));
        return figure;
    }
}
