using System.Xml.Linq;
using KitWorks.Drawings.Paper;

namespace KitWorks.Drawings.Staking;

/// <summary>The base ring on paper: stakes with numbers, sides and checks with their lengths.</summary>
sealed class Ring(Stakes stakes, Units units, Func<Spot, Spot> toPaper)
{
    /// <summary>What numbers and figures outside the ring take, in millimetres.</summary>
    public const double Room = 6;

    const double NumberSize = 2.9, FigureSize = 2.2, StakeHalf = 0.9;

    /// <summary>Where along a check its figure is tried, from the far end in.</summary>
    static readonly double[] Tries = [0.82, 0.76, 0.88, 0.7, 0.64, 0.58, 0.5, 0.42];

    public IEnumerable<XElement> Draw()
    {
        yield return Floor();
        yield return Doors();
        yield return Checks();
        yield return Sides();
        yield return Numbers();
    }

    Spot At(int stake) => toPaper(stakes.At(stake));

    Spot Outward(int stake)
    {
        var along = (At(stakes.Next(stake)) - At((stake + stakes.Count - 2) % stakes.Count + 1)).Unit;
        return along.Turned;
    }

    XElement Floor()
    {
        var middle = toPaper(default);
        var floor = Svg.Group("floor");
        floor.Add(
            Svg.Element("polygon", ("points", string.Join(' ', stakes.All.Select(s => $"{Svg.N(At(s).X)},{Svg.N(At(s).Y)}"))), ("fill", "#F4F6F8"),
                ("stroke", Ink.Dark), ("stroke-width", Svg.N(0.45)), ("stroke-linejoin", "round")),
            Svg.Path(Svg.Segment(middle - new Spot(2, 0), middle + new Spot(2, 0)) + Svg.Segment(middle - new Spot(0, 2), middle + new Spot(0, 2)),
                ("stroke", Ink.Dark), ("stroke-width", Svg.N(0.2)), ("fill", "none")));
        return floor;
    }

    XElement Doors()
    {
        var group = Svg.Group("doors");
        foreach (var s in stakes.All.Where(stakes.IsOpen))
        {
            var (a, b) = (At(s), At(stakes.Next(s)));
            var named = a.Towards(b, 0.5) - (b - a).Unit.Turned * 2.4;
            group.Add(
                Svg.Line(a, b, ("stroke", "#F4F6F8"), ("stroke-width", Svg.N(0.6))),
                Svg.Line(a, b, ("stroke", Ink.Dark), ("stroke-width", Svg.N(0.25)), ("stroke-dasharray", $"{Svg.N(1.2)} {Svg.N(0.8)}")),
                Svg.Text(new(named.X, named.Y + FigureSize * 0.36), "door", FigureSize, ("text-anchor", "middle")));
        }
        return group;
    }

    XElement Checks()
    {
        var group = Svg.Group("checks");
        var taken = new Obstacles();
        for (var i = 0; i < stakes.Checks.Length; i++) taken.AddLine(i, At(stakes.Checks[i].From), At(stakes.Checks[i].To), 0.2);
        taken.AddDot(toPaper(default), 2.2);
        foreach (var s in stakes.All) taken.AddLine(-1, At(s), At(stakes.Next(s)), 0.5);
        for (var i = 0; i < stakes.Checks.Length; i++)
        {
            var check = stakes.Checks[i];
            var (a, b) = (At(check.From), At(check.To));
            group.Add(Svg.Line(a, b, ("stroke", check.IsWidth ? Ink.Soft : Ink.Line), ("stroke-width", Svg.N(check.IsWidth ? 0.3 : 0.18)),
                ("stroke-dasharray", check.IsWidth ? $"{Svg.N(2.4)} {Svg.N(1)}" : "none")));
        }
        for (var i = 0; i < stakes.Checks.Length; i++)
        {
            var check = stakes.Checks[i];
            if (Plate(check, i, taken) is { } plate) group.Add(plate);
        }
        return group;
    }

    XElement? Plate(Check check, int owner, Obstacles taken)
    {
        var text = Measure.Tape(stakes.Between(check.From, check.To), units);
        var (a, b) = (At(check.From), At(check.To));
        foreach (var share in Tries)
        {
            var box = Upright(a.Towards(b, share), b - a, TextWidth.Of(text, FigureSize) / 2 + 0.4, FigureSize * 0.5);
            if (!taken.LeaveRoomFor(box, owner)) continue;
            taken.AddBox(box.Grown(0.2));
            return Figure(box, text, check.IsWidth, background: "#F4F6F8");
        }
        return null;
    }

    XElement Sides()
    {
        var group = Svg.Group("sides");
        foreach (var s in stakes.All)
        {
            var (a, b) = (At(s), At(stakes.Next(s)));
            var text = Measure.Tape(stakes.Between(s, stakes.Next(s)), units);
            if (TextWidth.Of(text, FigureSize) + 2 * StakeHalf + 0.6 > a.DistanceTo(b)) continue;
            group.Add(Figure(Upright(a.Towards(b, 0.5) + (b - a).Unit.Turned * 2, b - a, 0, 0), text, strong: true, background: null));
        }
        return group;
    }

    XElement Numbers()
    {
        var group = Svg.Group("stakes", ("font-size", Svg.N(NumberSize)), ("font-weight", "bold"), ("text-anchor", "middle"));
        foreach (var s in stakes.All)
        {
            var (at, half) = (At(s), s == 1 || s == stakes.Second ? StakeHalf * 1.35 : StakeHalf);
            var number = at + Outward(s) * 3.6;
            group.Add(
                Svg.Element("rect", ("x", Svg.N(at.X - half)), ("y", Svg.N(at.Y - half)), ("width", Svg.N(2 * half)), ("height", Svg.N(2 * half)),
                    ("fill", s == 1 || s == stakes.Second ? Ink.Dark : Ink.Paper), ("stroke", Ink.Dark), ("stroke-width", Svg.N(0.3)), ("data-stake", s.ToString())),
                Svg.Element("text", ("x", Svg.N(number.X)), ("y", Svg.N(number.Y + NumberSize * 0.36))).Saying(s.ToString()));
        }
        return group;
    }

    static Box Upright(Spot at, Spot along, double halfLength, double halfHeight)
    {
        var unit = along.Unit;
        return new(at, halfLength, halfHeight, unit.X < -1e-6 || Math.Abs(unit.X) <= 1e-6 && unit.Y > 0 ? unit * -1 : unit);
    }

    static XElement Figure(Box box, string text, bool strong, string? background)
    {
        var degrees = Math.Atan2(box.Along.Y, box.Along.X) * 180 / Math.PI;
        var figure = Svg.Element("g", ("transform", $"translate({Svg.N(box.Middle.X)} {Svg.N(box.Middle.Y)}) rotate({Svg.Plain(degrees)})"));
        if (background is not null)
            figure.Add(Svg.Element("rect", ("x", Svg.N(-box.HalfLength)), ("y", Svg.N(-box.HalfHeight)), ("width", Svg.N(2 * box.HalfLength)), ("height", Svg.N(2 * box.HalfHeight)), ("fill", background)));
        figure.Add(Svg.Text(new(0, FigureSize * 0.36), text, FigureSize, ("text-anchor", "middle"), ("fill", Ink.Dark), ("font-weight", strong ? "bold" : "normal")));
        return figure;
    }
}
