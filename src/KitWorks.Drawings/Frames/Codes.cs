using System.Xml.Linq;
using KitWorks.Drawings.Paper;

namespace KitWorks.Drawings.Frames;

/// <summary>The codes written on the struts of a scene, where there is room for them.</summary>
sealed class Codes
{
    /// <summary>From well readable to the smallest that print still holds, in millimetres (1.6 mm is 4.5 points).</summary>
    static readonly double[] Sizes = [2.8, 2.5, 2.2, 1.9, 1.6];

    /// <summary>A code larger than the smallest takes no more than this share of its strut.</summary>
    const double MostOfStrut = 0.46;

    /// <summary>Between two codes, in millimetres.</summary>
    const double Apart = 0.2;

    /// <summary>The largest size is taken that this share of the codes has room for; the others come smaller.</summary>
    const double EnoughShare = 0.7;

    /// <summary>Where along the strut a code is tried, from the middle out, as shares of the room on either side.</summary>
    static readonly double[] Tries = [0, 0.2, -0.2, 0.4, -0.4, 0.6, -0.6, 0.8, -0.8, 1, -1];

    Codes(List<(DrawnStrut, double, Box)> placed, int wanted) => (Placed, Wanted) = (placed, wanted);

    /// <summary>The struts with codes, the size of each code and the room it takes.</summary>
    public List<(DrawnStrut Strut, double Size, Box Box)> Placed { get; }

    /// <summary>How many struts could have carried a code.</summary>
    public int Wanted { get; }

    public static Codes Place(Scene scene)
    {
        var (hard, soft) = (new Obstacles(), new Obstacles());
        foreach (var s in scene.Struts) (s.IsSubject ? hard : soft).AddLine(s.Strut.Id, s.From, s.To, scene.Pipe);
        foreach (var n in scene.Nodes) (n.Weight is Weight.Hidden ? soft : hard).AddDot(n.At, scene.Hub + 0.15);
        var most = Place(scene, hard, soft, [Sizes[^1]]);
        for (var first = 0; first < Sizes.Length - 1; first++)
        {
            if (Place(scene, hard, soft, [Sizes[first]]).Placed.Count >= most.Placed.Count * EnoughShare) return Place(scene, hard, soft, Sizes[first..]);
        }
        return most;
    }

    public XElement Draw()
    {
        var group = Svg.Group("codes", ("fill", Ink.Dark), ("text-anchor", "middle"));
        foreach (var (strut, size, box) in Placed)
        {
            var (w, h) = (box.HalfLength, box.HalfHeight);
            var degrees = Math.Atan2(box.Along.Y, box.Along.X) * 180 / Math.PI;
            var code = Svg.Element("g", ("transform", $"translate({Svg.N(box.Middle.X)} {Svg.N(box.Middle.Y)}) rotate({Svg.Plain(degrees)})"));
            var text = Svg.Element("text", ("y", Svg.N(size * 0.36)), ("font-size", Svg.N(size))).Saying(strut.Mark.Code);
            code.Add(
                Svg.Element("rect", ("x", Svg.N(-w)), ("y", Svg.N(-h)), ("width", Svg.N(2 * w)), ("height", Svg.N(2 * h)), ("rx", Svg.N(h * 0.55)),
                    ("fill", Ink.Paper), ("stroke", Ink.Dark), ("stroke-width", Svg.N(0.1))),
                text);
            group.Add(code);
        }
        return group;
    }

    static Codes Place(Scene scene, Obstacles hard, Obstacles soft, double[] sizes)
    {
        var codes = new Obstacles();
        var placed = new List<(DrawnStrut, double, Box)>();
        var wanted = scene.Struts.Where(s => s.IsSubject).ToList();
        var left = wanted;
        foreach (var size in sizes)
        {
            var still = new List<DrawnStrut>();
            foreach (var strut in left)
            {
                var free = BoxesOn(strut, size, scene).Where(b => hard.LeaveRoomFor(b, strut.Strut.Id) && codes.LeaveRoomFor(b, strut.Strut.Id)).ToList();
                if (free.Count == 0)
                {
                    still.Add(strut);
                    continue;
                }
                var box = free[Math.Max(0, free.FindIndex(b => soft.LeaveRoomFor(b, strut.Strut.Id)))];
                codes.AddBox(box.Grown(Apart));
                placed.Add((strut, size, box));
            }
            left = still;
        }
        return new(placed, wanted.Count);
    }

    /// <summary>The boxes to try on a strut, none where it is too short for one that leaves some of it to be seen.</summary>
    static Box[] BoxesOn(DrawnStrut strut, double size, Scene scene)
    {
        var (halfLength, halfHeight) = (TextWidth.Of(strut.Mark.Code, size) / 2 + size * 0.16, size * 0.52);
        var room = strut.Length / 2 - scene.Hub - 0.35 - halfLength;
        if (room < 0.25 || size > Sizes[^1] && halfLength > MostOfStrut * (strut.Length / 2 - scene.Hub)) return [];
        var along = (strut.To - strut.From).Unit;
        if (along.X < -1e-6 || Math.Abs(along.X) <= 1e-6 && along.Y > 0) along *= -1;
        var middle = strut.From.Towards(strut.To, 0.5);
        return [.. Tries.Select(t => new Box(middle + along * (t * Math.Max(0, room - 0.25)), halfLength, halfHeight, along))];
    }
}
