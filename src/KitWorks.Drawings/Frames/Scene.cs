using System.Collections.Immutable;
using KitWorks.Drawings.Paper;
using KitWorks.Geometry;

namespace KitWorks.Drawings.Frames;

/// <summary>How strongly a part is drawn, in the order of drawing.</summary>
enum Weight
{
    /// <summary>On the far side of a whole frame, or of what already stands.</summary>
    Hidden,

    /// <summary>New in the tier, on the far side.</summary>
    Behind,

    /// <summary>What already stands, on the near side.</summary>
    Standing,

    /// <summary>What the picture is about.</summary>
    Strong,
}

/// <summary>A strut as it is drawn, with its ends on paper.</summary>
readonly record struct DrawnStrut(Strut Strut, Mark Mark, Weight Weight, Spot From, Spot To)
{
    public double Length => From.DistanceTo(To);

    /// <summary>Whether the picture is about it.</summary>
    public bool IsSubject => Weight is Weight.Strong or Weight.Behind;
}

/// <summary>A node as it is drawn.</summary>
readonly record struct DrawnNode(Node Node, Weight Weight, Spot At);

/// <summary>A door or a vent as it is drawn.</summary>
/// <param name="Name">What is written in it.</param>
/// <param name="Edge">Its corners on paper.</param>
/// <param name="IsNear">Whether it is on the near side.</param>
/// <param name="Doubled">The struts that lie double around it, by id.</param>
readonly record struct DrawnOpening(string Name, Spot[] Edge, bool IsNear, ImmutableArray<int> Doubled)
{
    public Spot Middle => Edge.Aggregate(default(Spot), (sum, s) => sum + s) * (1.0 / Edge.Length);
}

/// <summary>What of a frame is drawn, and where on paper.</summary>
sealed class Scene
{
    /// <summary>A strut is never drawn thinner, in millimetres.</summary>
    const double ThinnestPipe = 0.22;

    readonly HashSet<int> doubled;

    Scene(DrawnStrut[] struts, DrawnNode[] nodes, (Spot[] Corners, double Light)[] panels, DrawnOpening[] openings, bool isTier)
    {
        (Struts, Nodes, Panels, Openings, IsTier) = (struts, nodes, panels, openings, isTier);
        doubled = [.. openings.SelectMany(o => o.Doubled)];
        var lengths = struts.Where(s => s.Weight == Weight.Strong).Select(s => s.Length).Order().ToArray();
        var typical = lengths.Length == 0 ? 10 : lengths[lengths.Length / 2];
        Pipe = Math.Clamp(typical * 0.085, ThinnestPipe, 1.5);
        Hub = Math.Clamp(typical * 0.08, 0.25, 1.35);
    }

    public DrawnStrut[] Struts { get; }

    public DrawnNode[] Nodes { get; }

    /// <summary>Panels seen from outside, with how much light falls on each, 0 to 1.</summary>
    public (Spot[] Corners, double Light)[] Panels { get; }

    /// <summary>Openings that are there to be seen.</summary>
    public DrawnOpening[] Openings { get; }

    /// <summary>Whether a second strut lies beside it.</summary>
    public bool IsDoubled(DrawnStrut strut) => doubled.Contains(strut.Strut.Id);

    /// <summary>Whether it shows one tier being built.</summary>
    public bool IsTier { get; }

    /// <summary>The width of a strut on paper.</summary>
    public double Pipe { get; }

    /// <summary>The radius of a hub on paper.</summary>
    public double Hub { get; }

    public static Scene Of(Frame frame, Marks marks, Projection projection, View view, int? tier, ImmutableArray<FramedOpening> framed, Func<Spot, Spot> toPaper)
    {
        var struts = frame.Struts
            .Where(s => tier is null || s.Tier <= tier)
            .Select(s => new DrawnStrut(s, marks.Of(s), WeightOf(s.Tier, projection.StrutNear[s.Id], tier), toPaper(projection[s.From]), toPaper(projection[s.To])))
            .ToArray();
        var nodes = frame.Nodes
            .Where(n => tier is null || n.Tier <= tier)
            .Select(n => new DrawnNode(n, WeightOf(n.Tier, projection.NodeNear[n.Id], tier), toPaper(projection[n.Id])))
            .ToArray();
        var light = Projection.Towards(view) + new Point3(-0.35, -0.2, 0.55);
        light *= 1 / light.Norm;
        var panels = frame.Panels
            .Where((p, i) => projection.Faces(i) && (tier is null || PanelTier(frame, p) <= tier))
            .Select(p => (new[] { p.A, p.B, p.C }.Select(n => toPaper(projection[n])).ToArray(),
                view == View.Spread ? 1 : Math.Clamp(Projection.Normal(frame, p).Dot(light), 0, 1)))
            .ToArray();
        var openings = framed
            .Where(o => tier is null || o.Edge.Max(n => frame.Nodes[n].Tier) <= tier)
            .Select(o => new DrawnOpening(o.Opening is Door ? "door" : "vent", [.. o.Edge.Select(n => toPaper(projection[n]))], o.Doubled.All(s => projection.StrutNear[s]), o.Doubled))
            .ToArray();
        return new(struts, nodes, panels, openings, tier is not null);
    }

    static int PanelTier(Frame frame, Panel p) => Math.Max(frame.Nodes[p.A].Tier, Math.Max(frame.Nodes[p.B].Tier, frame.Nodes[p.C].Tier));

    static Weight WeightOf(int partTier, bool near, int? tier) => (tier is null || partTier == tier, near) switch
    {
        (true, true) => Weight.Strong,
        (true, false) => tier is null ? Weight.Hidden : Weight.Behind,
        (false, true) => Weight.Standing,
        (false, false) => Weight.Hidden,
    };
}
