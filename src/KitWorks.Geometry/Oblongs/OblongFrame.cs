namespace KitWorks.Geometry;

/// <summary>Builds the frame of an oblong: shape, half shell, frequency, size.</summary>
static class OblongFrame
{
    public static Outcome<Frame> Of(Oblong oblong, Length hubAllowance)
    {
        if (OblongLimits.Refuse(oblong) is { } refusal) return refusal;
        return OblongChoice.Of(oblong.Fold, oblong.Bays, oblong.Lengths) is { } shape
            ? Of(oblong, shape, hubAllowance)
            : Refusal.OfField("shelter.lengths", "lengths", $"No shell of fold {oblong.Fold} closes in {oblong.Lengths} lengths; give more, up to 6.");
    }

    /// <summary>The frame of a given shape.</summary>
    internal static Outcome<Frame> Of(Oblong oblong, OblongShape shape, Length hubAllowance)
    {
        var (points, panels) = HalfShell(shape);
        if (oblong.Frequency > 1)
        {
            (points, panels) = Subdivision.Of(points, panels, oblong.Frequency);
            var radius = Radius(shape);
            for (var i = 0; i < points.Length; i++) points[i] = OnCapsule(points[i], shape.Barrel, radius);
        }
        var (net, ring) = OpenShell.FromTheTopDown(points, panels);
        var measured = MeasuredNet.Of(net, points.Length);
        return Sizing.ScaleOf(oblong.Size, Form.Of(measured, points.Length, ring, round: false), hubAllowance)
            .Select(scale => new Framing(measured, points.Length, ring).Frame(oblong, scale, null));
    }

    // The half above the plane through the axis: the ends, then line by line from the ground over the ridge to the ground.
    static (Point3[] Points, (int A, int B, int C)[] Panels) HalfShell(OblongShape shape)
    {
        var rings = shape.Rings;
        var start = new int[rings.Fold + 2];
        start[0] = 2;
        for (var line = 0; line <= rings.Fold; line++) start[line + 1] = start[line] + rings.NodesOn(line);
        var points = new Point3[start[^1]];
        (points[0], points[1]) = (rings.Position(shape.Unknowns, 0, -1), rings.Position(shape.Unknowns, 0, rings.NodesOn(0)));
        for (var line = 0; line <= rings.Fold; line++)
            for (var i = 0; i < rings.NodesOn(line); i++) points[start[line] + i] = rings.Position(shape.Unknowns, line, i);

        var panels = new List<(int, int, int)>();
        var last = rings.NodesOn(0) - 1;
        for (var line = 1; line < rings.Fold; line += 2)
        {
            int before = start[line - 1], between = start[line], after = start[line + 1];
            panels.Add((0, before, after));
            panels.Add((before, between, after));
            for (var i = 0; i < last; i++)
            {
                panels.Add((before + i, before + i + 1, between + i));
                panels.Add((after + i, between + i, after + i + 1));
                if (i + 1 == last) continue;
                panels.Add((between + i, before + i + 1, between + i + 1));
                panels.Add((between + i, between + i + 1, after + i + 1));
            }
            panels.Add((before + last, after + last, between + last - 1));
            panels.Add((1, after + last, before + last));
        }
        return (points, [.. panels]);
    }

    // Of the capsule that fits the shape; Closed moves the nodes by less than matters here.
    static double Radius(OblongShape shape)
    {
        var rings = shape.Rings;
        return rings.Rings.Sum(r => r.Nodes * FromCore(new(OblongRings.X(shape.Unknowns, r.Ring), OblongRings.Radius(shape.Unknowns, r.Ring), 0), shape.Barrel).Norm)
            / rings.Rings.Sum(r => r.Nodes);
    }

    // From the nearest point of the cylinder's axis.
    static Point3 FromCore(Point3 p, double barrel) => p with { X = Math.Sign(p.X) * Math.Max(Math.Abs(p.X) - barrel, 0) };

    static Point3 OnCapsule(Point3 p, double barrel, double radius)
    {
        var outward = FromCore(p, barrel);
        var core = p - outward;
        return core + outward * (radius / outward.Norm);
    }
}
