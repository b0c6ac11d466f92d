namespace KitWorks.Geometry;

/// <summary>Builds the frame of a dome: sphere, cut, base, size.</summary>
static class DomeFrame
{
    public static Outcome<Frame> Of(Dome dome, Length hubAllowance)
    {
        if (DomeLimits.Refuse(dome.Solid, dome.Lattice, dome.Up) is { } refusal) return refusal;
        var sphere = GeodesicSphere.Of(dome.Solid, dome.Lattice, dome.Up);
        var rows = DomeCuts.RowsOf(dome.Cut, dome.Solid, dome.Lattice, dome.Up, sphere.Rows);
        if (rows is null || rows < 1 || rows >= sphere.Rows || DomeCuts.RingOf(sphere, rows.Value) is not { } ring) return NoSuchCut(dome, sphere);
        var kept = sphere.RowStart[rows.Value + 1];
        if (!Measure(dome, sphere, kept, ring).Succeeds(out var measured, out var unflat)) return unflat;
        return Sizing.ScaleOf(dome.Size, Form.Of(measured, kept, ring, round: true), hubAllowance)
            .Select(scale => new Framing(measured, kept, ring).Frame(dome, scale, scale));
    }

    /// <summary>The frame of a whole sphere, which stands on its lowest row; nothing is sold that way, but its counts are known.</summary>
    internal static Frame WholeSphere(Dome dome, double radius)
    {
        var sphere = GeodesicSphere.Of(dome.Solid, dome.Lattice, dome.Up);
        return new Framing(sphere.Measured, sphere.Net.Count, [], sphere.RowStart[sphere.Rows]).Frame(dome, radius, radius);
    }

    static Refusal NoSuchCut(Dome dome, GeodesicSphere sphere)
    {
        var names = DomeCuts.Of(sphere, dome.Solid, dome.Lattice, dome.Up).Select(c => c.Cut.Name);
        return Refusal.OfField("shelter.cut-invalid", "cut", $"The cut {dome.Cut} is not one of this design's. Valid cuts, from the smallest: {string.Join(", ", names)}.");
    }

    static Outcome<MeasuredNet> Measure(Dome dome, GeodesicSphere sphere, int kept, int[] ring)
    {
        if (!dome.FlatBase) return sphere.Measured;
        var points = sphere.Net.Points[..kept];
        var floor = ring.Average(n => points[n].Z);
        if (ring.All(n => Math.Abs(points[n].Z - floor) <= Families.Tolerance)) return sphere.Measured;
        foreach (var node in ring) points[node] = AtHeight(points[node], floor);
        var net = sphere.Net with { Points = points };
        return Folds(net, kept)
            ? Refusal.OfField("shelter.flat-base", "flatBase", $"With its base nodes in one plane the cut {dome.Cut} would fold panels over; take another cut, or flatBase false.")
            : MeasuredNet.Of(net, kept);
    }

    // Along its meridian, so that it stays on the sphere and the base nodes on one circle.
    static Point3 AtHeight(Point3 p, double z)
    {
        var stretch = Math.Sqrt((1 - z * z) / (p.X * p.X + p.Y * p.Y));
        return new(p.X * stretch, p.Y * stretch, z);
    }

    static bool Folds(Triangulation net, int kept)
    {
        for (var node = 0; node < kept; node++)
            for (var i = net.Start[node]; i < net.Start[node + 1]; i++)
                if (Rim.KeepsPanel(net, kept, node, i)
                    && net.Points[node].Dot(net.Points[net.Around[i]].Cross(net.Points[net.Around[net.After(node, i)]])) < Families.Tolerance)
                    return true;
        return false;
    }
}
