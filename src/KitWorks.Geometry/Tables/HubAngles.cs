using System.Collections.Immutable;

namespace KitWorks.Geometry;

/// <summary>One strut at a hub.</summary>
/// <param name="Strut">The strut's id.</param>
/// <param name="TiltDegrees">By how much the strut leaves the hub's plane, towards the inside.</param>
/// <param name="TurnDegrees">
/// The angle in the hub's plane to the next strut, counter-clockwise from outside; all turns of a hub add up to 360°.
/// </param>
/// <param name="FaceDegrees">
/// The angle between the strut and the next one, which is the corner of the panel between them; null where there is no panel, on the ground.
/// </param>
public readonly record struct HubStrut(int Strut, double TiltDegrees, double TurnDegrees, double? FaceDegrees);

/// <summary>The angles at one hub: what a hub is bent, drilled or printed to.</summary>
/// <param name="Node">The node's id.</param>
/// <param name="Axis">
/// The unit vector that stands on the hub's plane, outwards: from the sphere's centre for a dome, and for an oblong the mean of the panels
/// around, each weighted by its corner.
/// </param>
/// <param name="Struts">The struts, counter-clockwise from outside; at a base node from one end of the base ring to the other.</param>
public sealed record HubAngles(int Node, Point3 Axis, ImmutableArray<HubStrut> Struts)
{
    /// <summary>The angles at every hub, by node id.</summary>
    public static ImmutableArray<HubAngles> Of(Frame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var struts = frame.Struts.ToDictionary(s => (s.From, s.To), s => s.Id);
        var after = new Dictionary<(int Node, int Neighbour), int>(frame.Panels.Length * 3);
        foreach (var (a, b, c, _) in frame.Panels) (after[(a, b)], after[(b, c)], after[(c, a)]) = (c, a, b);
        var before = after.ToDictionary(e => (e.Key.Node, e.Value), e => e.Key.Neighbour);
        var anyNeighbour = new int[frame.Nodes.Length];
        foreach (var s in frame.Struts) (anyNeighbour[s.From], anyNeighbour[s.To]) = (s.To, s.From);
        return [.. frame.Nodes.Select(node =>
        {
            var first = anyNeighbour[node.Id];
            for (var at = first; before.TryGetValue((node.Id, at), out at) && at != anyNeighbour[node.Id];) first = at;
            var around = new List<int> { first };
            while (after.TryGetValue((node.Id, around[^1]), out var next) && next != first) around.Add(next);
            return At(frame, node, around, closed: after.ContainsKey((node.Id, around[^1])), struts);
        })];
    }

    static HubAngles At(Frame frame, Node node, List<int> around, bool closed, Dictionary<(int, int), int> struts)
    {
        var ways = around.ConvertAll(w => Unit(frame.Nodes[w].Position - node.Position));
        var faces = ways.Select((u, i) => i + 1 < ways.Count || closed ? Angle(u, ways[(i + 1) % ways.Count]) : (double?)null).ToList();
        var axis = AxisAt(frame, node, ways, faces);
        var flat = ways.ConvertAll(u => Unit(u - axis * u.Dot(axis)));
        var hub = ImmutableArray.CreateBuilder<HubStrut>(ways.Count);
        for (var i = 0; i < ways.Count; i++)
        {
            Point3 u = flat[i], v = flat[(i + 1) % flat.Count];
            var turn = Math.Atan2(axis.Dot(u.Cross(v)), u.Dot(v)) * (180 / Math.PI);
            hub.Add(new(struts[(Math.Min(node.Id, around[i]), Math.Max(node.Id, around[i]))],
                Math.Asin(Math.Clamp(-ways[i].Dot(axis), -1, 1)) * (180 / Math.PI), turn > 0 ? turn : turn + 360, faces[i]));
        }
        return new(node.Id, axis, hub.MoveToImmutable());
    }

    static Point3 AxisAt(Frame frame, Node node, List<Point3> ways, List<double?> faces)
    {
        if (frame.RadiusMm is { } radius)
        {
            // The top row is near the axis and above the centre.
            var top = frame.Nodes[0].Position;
            return Unit(node.Position - new Point3(0, 0, top.Z - Math.Sqrt(radius * radius - top.X * top.X - top.Y * top.Y)));
        }
        var sum = new Point3(0, 0, 0);
        for (var i = 0; i < ways.Count; i++)
            if (faces[i] is { } face) sum += Unit(ways[i].Cross(ways[(i + 1) % ways.Count])) * face;
        return Unit(sum);
    }

    static Point3 Unit(Point3 p) => p * (1 / p.Norm);

    static double Angle(Point3 u, Point3 v) => Math.Atan2(u.Cross(v).Norm, u.Dot(v)) * (180 / Math.PI);
}
