using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Statics;

/// <summary>How the base hubs of a shelter stand on the ground.</summary>
public enum BaseSupport
{
    /// <summary>Staked: each base hub is held in all three directions.</summary>
    Pinned,

    /// <summary>
    /// Set down: each base hub is held up but free to slide, so that the base ring takes the thrust. Loads that push the whole shelter sideways or turn it
    /// are met by friction, spread over the base hubs as a uniform push and a push in proportion to the distance from their middle.
    /// </summary>
    Sliding,
}

/// <summary>A straight bar between two nodes, hinged at both ends.</summary>
/// <param name="Strut">The number that results name it by: a frame's strut id.</param>
/// <param name="From">A node.</param>
/// <param name="To">Another node.</param>
public readonly record struct Member(int Strut, int From, int To);

/// <summary>A node that is held, and in which directions.</summary>
/// <param name="Node">The node.</param>
/// <param name="X">Whether it is held along x.</param>
/// <param name="Y">Whether it is held along y.</param>
/// <param name="Z">Whether it is held along z.</param>
public readonly record struct Support(int Node, bool X, bool Y, bool Z);

/// <summary>
/// Nodes, the members between them and what holds them: what a solver needs of a frame. Coordinates are millimetres, z up.
/// </summary>
/// <remarks>
/// A node that no member reaches (all its struts were taken out) is not part of the structure: it bears no load and cannot be loose.
/// </remarks>
public sealed partial class TrussModel
{
    const string Code = "statics.structure-invalid";

    readonly bool[] reached;

    TrussModel(ImmutableArray<Point3> nodes, ImmutableArray<Member> members, ImmutableArray<Support> supports)
    {
        (Nodes, Members, Supports, reached) = (nodes, members, supports, new bool[nodes.Length]);
        foreach (var end in members.SelectMany(m => new[] { m.From, m.To }).Where(IsNode)) reached[end] = true;
        SpanMm = Span();
        StoodSupports = [.. supports.Index().Where(s => IsNode(s.Item.Node) && reached[s.Item.Node]).Select(s => s.Index)];
        Stood = [.. StoodSupports.Select(s => supports[s].Node)];
    }

    /// <summary>Where the nodes are, in millimetres.</summary>
    public ImmutableArray<Point3> Nodes { get; }

    /// <summary>The members that are there.</summary>
    public ImmutableArray<Member> Members { get; }

    /// <summary>The nodes that are held.</summary>
    public ImmutableArray<Support> Supports { get; }

    /// <summary>The nodes that are held and that a member reaches, in the order of the supports.</summary>
    internal ImmutableArray<int> Stood { get; }

    /// <summary>The places of their supports.</summary>
    internal ImmutableArray<int> StoodSupports { get; }

    /// <summary>The cover's triangles, counter-clockwise seen from outside; empty where there is no cover.</summary>
    public ImmutableArray<Panel> Panels { get; private init; } = [];

    /// <summary>
    /// The struts beside which a second one lies, tied to it: together they bear twice Euler's load. Nothing else is reckoned twice, for the force comes in at
    /// the ends of one.
    /// </summary>
    public ImmutableHashSet<int> Doubled { get; private init; } = [];

    /// <summary>Whether the supports leave the whole free to slide and turn on the ground, as <see cref="BaseSupport.Sliding"/> says.</summary>
    public bool Slides { get; private init; }

    /// <summary>The same model, free to slide on the ground: its supports hold it up only, as <see cref="BaseSupport.Sliding"/> says.</summary>
    public TrussModel Sliding() => new(Nodes, Members, [.. Supports.Select(s => new Support(s.Node, false, false, s.Z))]) { Panels = Panels, Doubled = Doubled, Slides = true };

    /// <summary>The lesser of its extents along x and y, in millimetres; where that is nothing, the greatest extent.</summary>
    public double SpanMm { get; }

    /// <summary>Whether a node takes part: a member reaches it.</summary>
    public bool Has(int node) => reached[node];

    /// <summary>A structure of any form.</summary>
    /// <param name="nodes">Where the nodes are, in millimetres, each coordinate within 10 km of the origin.</param>
    /// <param name="members">The members; each at least 0.001 mm long.</param>
    /// <param name="supports">The nodes that are held, each at most once.</param>
    /// <param name="panels">The cover's triangles, counter-clockwise seen from outside; none by default.</param>
    /// <returns>The structure, or a refusal with a field such as <c>members/0/from</c>.</returns>
    public static Outcome<TrussModel> Of(IEnumerable<Point3> nodes, IEnumerable<Member> members, IEnumerable<Support> supports, IEnumerable<Panel>? panels = null)
    {
        var model = new TrussModel([.. nodes], [.. members], [.. supports]) { Panels = [.. panels ?? []] };
        return model.Fault() is { } refusal ? refusal : model;
    }

    double Span()
    {
        Point3[] there = [.. Nodes.Where((_, n) => Has(n))];
        if (there.Length == 0) return 0;
        double[] extents = [there.Max(p => p.X) - there.Min(p => p.X), there.Max(p => p.Y) - there.Min(p => p.Y), there.Max(p => p.Z) - there.Min(p => p.Z)];
        return Math.Min(extents[0], extents[1]) is > 0 and var lesser ? lesser : extents.Max();
    }

    Refusal? Fault()
    {
        for (var i = 0; i < Nodes.Length; i++)
            if (!(Math.Abs(Nodes[i].X) <= 1e7 && Math.Abs(Nodes[i].Y) <= 1e7 && Math.Abs(Nodes[i].Z) <= 1e7))
                return Refusal.OfField(Code, $"nodes/{i}", $"A coordinate is −10,000,000 to 10,000,000 mm; node {i} is at {Nodes[i]}.");
        for (var i = 0; i < Members.Length; i++)
        {
            var (_, from, to) = Members[i];
            if (!IsNode(from)) return Refusal.OfField(Code, $"members/{i}/from", Unknown(from));
            if (!IsNode(to)) return Refusal.OfField(Code, $"members/{i}/to", Unknown(to));
            if (!(Nodes[from].DistanceTo(Nodes[to]) >= 0.001))
                return Refusal.OfField(Code, $"members/{i}/to", $"A member is at least 0.001 mm long; nodes {from} and {to} are in one place.");
        }
        for (var i = 0; i < Supports.Length; i++)
        {
            if (!IsNode(Supports[i].Node)) return Refusal.OfField(Code, $"supports/{i}/node", Unknown(Supports[i].Node));
            if (Supports.Take(i).Any(s => s.Node == Supports[i].Node))
                return Refusal.OfField(Code, $"supports/{i}/node", $"Node {Supports[i].Node} is held twice; say all its directions in one support.");
        }
        for (var i = 0; i < Panels.Length; i++)
            if (new[] { Panels[i].A, Panels[i].B, Panels[i].C }.Any(n => !IsNode(n)))
                return Refusal.OfField(Code, $"panels/{i}", $"A panel's nodes are 0 to {Nodes.Length - 1}, not {Panels[i].A}, {Panels[i].B} and {Panels[i].C}.");
        if (Members.IsEmpty) return Refusal.OfField(Code, "members", "A structure needs at least one member.");
        return Supports.Any(s => Has(s.Node)) ? null : Refusal.OfField(Code, "supports", "A structure needs at least one node that is held and that a member reaches.");
    }

    internal bool IsNode(int node) => node >= 0 && node < Nodes.Length;

    string Unknown(int node) => $"There is no node {node}; nodes are 0 to {Nodes.Length - 1}.";
}
