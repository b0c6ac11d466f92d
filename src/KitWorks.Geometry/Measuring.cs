namespace KitWorks.Geometry;

/// <summary>The outer measures of a frame.</summary>
static class Measuring
{
    public static Dimensions Of(ReadOnlySpan<Node> nodes, ReadOnlySpan<Panel> panels, IEnumerable<PanelKind> kinds, ReadOnlySpan<int> ring)
    {
        double left = 0, right = 0, front = 0, back = 0, low = double.MaxValue, high = double.MinValue;
        foreach (ref readonly var node in nodes)
        {
            var (x, y, z) = (node.Position.X, node.Position.Y, node.Position.Z);
            (left, right, front, back) = (Math.Min(left, x), Math.Max(right, x), Math.Min(front, y), Math.Max(back, y));
            (low, high) = (Math.Min(low, z), Math.Max(high, z));
        }
        var cover = 0.0;
        foreach (var kind in kinds) cover += kind.AreaM2 * kind.Count;
        return new(high - low, right - left, back - front, FloorArea(nodes, ring) / 1e6, Volume(nodes, panels) / 1e9, cover);
    }

    // Gauss's shoelace.
    static double FloorArea(ReadOnlySpan<Node> nodes, ReadOnlySpan<int> ring)
    {
        var twice = 0.0;
        for (var i = 0; i < ring.Length; i++)
        {
            Point3 p = nodes[ring[i]].Position, q = nodes[ring[(i + 1) % ring.Length]].Position;
            twice += p.X * q.Y - q.X * p.Y;
        }
        return twice / 2;
    }

    // The tetrahedra between the panels and the middle of the floor. Where the base ring is not planar the floor is the fan from there.
    static double Volume(ReadOnlySpan<Node> nodes, ReadOnlySpan<Panel> panels)
    {
        var six = 0.0;
        foreach (ref readonly var panel in panels)
            six += nodes[panel.A].Position.Dot(nodes[panel.B].Position.Cross(nodes[panel.C].Position));
        return six / 6;
    }
}
