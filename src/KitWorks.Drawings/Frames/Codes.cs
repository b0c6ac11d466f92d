using System.Xml.Linq;
using KitWorks.Drawings.Paper;

namespace KitWorks.Drawings.Frames;

/// <summary>The codes written on the struts of a scene, where there is room for them.</summary>
sealed class Codes
{
    /// <summary>From well readable to the smallest that print still holds, in millimetres (1.6 mm is 4.5 points).</summary>
    static readonly double[] Sizes = [2.8, 2.5, 2.2, 1.9, 1.6];

    /// <summary>A larger size is taken when it loses no more than this share of the codes that the smallest has room for.</summary>
    const double WorthLosing = 0.04;

    /// <summary>Where along the strut a code is tried, from the middle out, as shares of the room on either side.</summary>
    static readonly double[] Tries = [0, 0.2, -0.2, 0.4, -0.4, 0.6, -0.6, 0.8, -0.8, 1, -1];

    Codes(double size, List<(DrawnStrut, Box)> placed, int wanted) => (Size, Placed, Wanted) = (size, placed, wanted);

    public double Size { get; }

    public List<(DrawnStrut Strut, Box Box)> Placed { get; }

    /// <summary>How many struts could have carried a code.</summary>
    public int Wanted { get; }

    public static Codes Place(Scene scene)
    {
        var smallest = Place(scene, Sizes[^1]);
        foreach (var size in Sizes.SkipLast(1))
        {
            var larger = Place(scene, size);
            if (larger.Placed.Count >= smallest.Placed.Count * (1 - WorthLosing)) return larger;
        }
        return smallest;
    }

    public XElement Draw()
    {
        var group = Svg.Group("codes", ("font-size", Svg.N(Size)), ("fill", Ink.Dark), ("text-anchor", "middle"));
        foreach (var (strut, box) in Placed)
        {
            var (w, h) = (box.HalfLength, box.HalfHeight);
            var degrees = Math.Atan2(box.Along.Y, box.Along.X) * 180 / Math.PI;
            var code = Svg.Element("g", ("transform", $"translate({Svg.N(box.Middle.X)} {Svg.N(box.Middle.Y)}) rotate({Svg.Plain(degrees)})"));
            var text = Svg.Element("text", ("y", Svg.N(Size * 0.36)));
            text.Add(strut.Mark.Code);
            code.Add(
                Svg.Element("rect", ("x", Svg.N(-w)), ("y", Svg.N(-h)), ("width", Svg.N(2 * w)), ("height", Svg.N(2 * h)), ("rx", Svg.N(h * 0.55)),
                    ("fill", Ink.Paper), ("stroke", Ink.Dark), ("stroke-width", Svg.N(0.1))),
                text);
            group.Add(code);
        }
        return group;
    }

    static Codes Place(Scene scene, double size)
    {
        var (hard, soft) = (new Obstacles(), new Obstacles());
        foreach (var s in scene.Struts) (s.IsSubject ? hard : soft).AddLine(s.Strut.Id, s.From, s.To, scene.Pipe);
        foreach (var n in scene.Nodes) (n.Weight is Weight.Hidden ? soft : hard).AddDot(n.At, scene.Hub + 0.15);
        var placed = new List<(DrawnStrut, Box)>();
        var wanted = scene.Struts.Where(s => s.IsSubject).ToList();
        foreach (var strut in wanted)
        {
            if (BoxesOn(strut, size, scene) is not { } boxes) continue;
            var free = boxes.Where(b => hard.LeaveRoomFor(b, strut.Strut.Id)).ToList();
            if (free.Count == 0) continue;
            var best = free.FindIndex(b => soft.LeaveRoomFor(b, strut.Strut.Id));
            var box = free[Math.Max(0, best)];
            hard.AddBox(box);
            placed.Add((strut, box));
        }
        return new(size, placed, wanted.Count);
    }

    /// <summary>The boxes to try on a strut, or null where it is too short for one that leaves some of it to be seen.</summary>
    static Box[]? BoxesOn(DrawnStrut strut, double size, Scene scene)
    {
        var (halfLength, halfHeight) = (TextWidth.Of(strut.Mark.Code, size) / 2 + size * 0.16, size * 0.52);
        var room = strut.Length / 2 - scene.Hub - 0.35 - halfLength;
        if (room < 0.25) return null;
        var along = (strut.To - strut.From).Unit;
        if (along.X < -1e-6 || Math.Abs(along.X) <= 1e-6 && along.Y > 0) along *= -1;
        var middle = strut.From.Towards(strut.To, 0.5);
        return [.. Tries.Select(t => new Box(middle + along * (t * Math.Max(0, room - 0.25)), halfLength, halfHeight, along))];
    }
}
