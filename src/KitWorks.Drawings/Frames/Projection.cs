using KitWorks.Drawings.Paper;
using KitWorks.Geometry;

namespace KitWorks.Drawings.Frames;

/// <summary>A frame seen from one side: where its nodes fall in the picture, in millimetres of the frame, v up.</summary>
sealed class Projection
{
    /// <summary>A panel at less than this cosine to the line of sight counts as seen from behind.</summary>
    const double EdgeOn = 0.001;

    readonly Spot[] places;
    readonly bool[] facing;

    Projection(Spot[] places, bool[] facing, bool[] strutNear, bool[] nodeNear) =>
        (this.places, this.facing, this.StrutNear, this.NodeNear) = (places, facing, strutNear, nodeNear);

    /// <summary>Whether a strut belongs to a panel that is seen from outside, by strut id.</summary>
    public bool[] StrutNear { get; }

    /// <summary>Whether a node has such a strut, by node id.</summary>
    public bool[] NodeNear { get; }

    public Spot this[int node] => places[node];

    public bool Faces(int panel) => facing[panel];

    /// <summary>The direction to the viewer.</summary>
    public static Point3 Towards(View view) => view switch
    {
        View.Plan or View.Spread => new(0, 0, 1),
        View.Side => new(0, -1, 0),
        View.End => new(1, 0, 0),
        View.Isometric => new Point3(1, -1, 1) * (1 / Math.Sqrt(3)),
    };

    public static Projection Of(Frame frame, View view)
    {
        var towards = Towards(view);
        var places = frame.Nodes.Select(Placing(frame, view)).ToArray();
        var facing = frame.Panels.Select(p => view == View.Spread || Normal(frame, p).Dot(towards) > EdgeOn).ToArray();
        var sides = new HashSet<(int, int)>();
        for (var i = 0; i < facing.Length; i++)
        {
            if (!facing[i]) continue;
            var p = frame.Panels[i];
            sides.UnionWith([Side(p.A, p.B), Side(p.B, p.C), Side(p.C, p.A)]);
        }
        var strutNear = frame.Struts.Select(s => sides.Contains(Side(s.From, s.To))).ToArray();
        var nodeNear = new bool[frame.Nodes.Length];
        foreach (var s in frame.Struts.Where(s => strutNear[s.Id])) nodeNear[s.From] = nodeNear[s.To] = true;
        return new(places, facing, strutNear, nodeNear);
    }

    /// <summary>A panel's outward unit normal; zero for a panel without area.</summary>
    public static Point3 Normal(Frame frame, Panel panel)
    {
        var a = frame.Nodes[panel.A].Position;
        var normal = (frame.Nodes[panel.B].Position - a).Cross(frame.Nodes[panel.C].Position - a);
        return normal.Norm > 0 ? normal * (1 / normal.Norm) : normal;
    }

    static (int, int) Side(int a, int b) => a < b ? (a, b) : (b, a);

    static Func<Node, Spot> Placing(Frame frame, View view) => view switch
    {
        View.Plan => n => new(n.Position.X, n.Position.Y),
        View.Side => n => new(n.Position.X, n.Position.Z),
        View.End => n => new(n.Position.Y, n.Position.Z),
        View.Isometric => n => new(
            (n.Position.X + n.Position.Y) / Math.Sqrt(2),
            (2 * n.Position.Z - n.Position.X + n.Position.Y) / Math.Sqrt(6)),
        View.Spread => Spread(frame),
    };

    /// <summary>
    /// The shell is taken as a sphere swept along a ridge (of no length, for a dome). A node keeps its direction from the ridge
    /// in plan and is put as far out as the way down the shell is long.
    /// </summary>
    static Func<Node, Spot> Spread(Frame frame)
    {
        var size = frame.Dimensions;
        var radius = frame.RadiusMm ?? size.WidthMm / 2;
        var ridge = frame.RadiusMm is null ? Math.Max(0, (size.LengthMm - size.WidthMm) / 2) : 0;
        var centre = frame.RadiusMm is null ? 0 : frame.Nodes.Max(n => n.Position.Z) - radius;
        return n =>
        {
            var foot = new Spot(Math.Clamp(n.Position.X, -ridge, ridge), 0);
            var out_ = new Spot(n.Position.X, n.Position.Y) - foot;
            return out_.Length < radius * 1e-9 ? foot : foot + out_.Unit * (radius * Math.Atan2(out_.Length, n.Position.Z - centre));
        };
    }
}
