namespace KitWorks.Geometry;

/// <summary>Makes a frame anew with moved nodes and merged families.</summary>
static class Regrouped
{
    public static FewerLengths Of(Frame frame, Point3[] points, int[] groupOf, double[] lengths)
    {
        var counts = new int[lengths.Length];
        double misfit = 0, moved = 0;
        foreach (var s in frame.Struts)
        {
            counts[groupOf[s.Family]]++;
            misfit = Math.Max(misfit, Math.Abs(points[s.From].DistanceTo(points[s.To]) - lengths[groupOf[s.Family]]));
        }
        foreach (var n in frame.Nodes) moved = Math.Max(moved, n.Position.DistanceTo(points[n.Id]));
        var sidesOf = frame.PanelKinds.Select(k => MeasuredNet.Ascending(groupOf[k.Families[0]], groupOf[k.Families[1]], groupOf[k.Families[2]])).ToArray();
        var kinds = sidesOf.Distinct().Order().ToArray();
        var kindCounts = new int[kinds.Length];
        var panels = frame.Panels.Select(p => p with { Kind = Array.BinarySearch(kinds, sidesOf[p.Kind]) }).ToArray();
        foreach (var p in panels) kindCounts[p.Kind]++;
        var nodes = frame.Nodes.Select(n => n with { Position = points[n.Id] }).ToArray();
        var panelKinds = kinds.Select((k, i) => new PanelKind(i, [k.Item1, k.Item2, k.Item3],
            Triangle.Area(lengths[k.Item1], lengths[k.Item2], lengths[k.Item3]) / 1e6, kindCounts[i])).ToArray();
        return new(new()
        {
            Shelter = frame.Shelter,
            RadiusMm = frame.RadiusMm,
            Nodes = [.. nodes],
            Struts = [.. frame.Struts.Select(s => s with { Family = groupOf[s.Family], SpacingMm = lengths[groupOf[s.Family]] })],
            Panels = [.. panels],
            Families = [.. lengths.Select((l, i) => new StrutFamily(i, l, frame.RadiusMm is { } r ? l / r : null, counts[i]))],
            PanelKinds = [.. panelKinds],
            Base = frame.Base,
            Dimensions = Measuring.Of(nodes, panels, panelKinds, frame.Base.AsSpan()),
            BaseSpreadMm = frame.BaseSpreadMm,
        }, misfit, moved);
    }
}
