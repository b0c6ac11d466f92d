namespace KitWorks.Geometry;

/// <summary>
/// One way to place the rings of an oblong. The shortest measure of its smoothness is how far it is from a capsule, a cylinder with
/// hemispherical ends, of radius 1.
/// </summary>
/// <param name="Rings">The rings.</param>
/// <param name="Unknowns">Their places; the capsule's radius is 1.</param>
/// <param name="Barrel">Half the length of the capsule's cylinder.</param>
/// <param name="Rms">The root mean square of the nodes' distances from the capsule.</param>
sealed record OblongShape(OblongRings Rings, double[] Unknowns, double Barrel, double Rms)
{
    // How much an uneven length counts against a node off the capsule. Free: the nodes come to lie on it, then as evenly as they can.
    // Tied: equal lengths are all but exact; what is left goes away in Closed.
    const double FreeWeight = 1.0 / 30, TiedWeight = 100;

    /// <summary>Accuracy of the fit in radii, and of the exact lengths after it; 1e-13 of a 10 m shelter is 1e-9 mm.</summary>
    const double FitAccuracy = 1e-7, LengthAccuracy = 1e-13;

    /// <summary>Steps at most. A fit takes about 15; one that has not settled by then is judged by its misfit like any other.</summary>
    const int StepCap = 60;

    public double LengthOf(OblongRings.Family family) => OblongRings.Length(Unknowns, family);

    public double Longest => Rings.Families.Max(LengthOf);

    public double SmallestFoldDegrees => Rings.Families.Min(f => Rings.FoldDegrees(Unknowns, f));

    /// <summary>The floor area that the longest strut opens, in squares of that strut.</summary>
    public double Roominess => Rings.FloorArea(Unknowns) / (Longest * Longest);

    /// <summary>The nodes on the capsule, struts as even as they can be.</summary>
    public static OblongShape Free(OblongRings rings)
    {
        // A first guess: rings 0.93 of a strut apart along the axis, on a capsule around which fold struts of length 1 almost fit.
        var radius = 0.2915 * rings.Fold;
        var places = new double[rings.Unknowns];
        double first = (rings.NodesOn(0) - 1) / 2.0 * 0.93, barrel = Math.Max(first + 0.45 - radius, 0);
        places[rings.End.X] = (first + 0.45) / radius;
        for (var line = 0; line < 2; line++)
            for (var i = 0; i < (rings.NodesOn(line) + 1) / 2; i++)
            {
                var x = ((rings.NodesOn(line) - 1) / 2.0 - i) * 0.93;
                var beyond = Math.Max(x - barrel, 0);
                rings.Place(places, line, i, x / radius, Math.Sqrt(Math.Max(radius * radius - beyond * beyond, 0.05)) / radius);
            }
        var counts = rings.Families.Sum(f => f.Count);
        return Fit(rings, places, barrel / radius, [1 / radius], _ => 0, f => FreeWeight * Math.Sqrt((double)f.Count / counts));
    }

    /// <summary>The least squares to a capsule where families of one group share a length.</summary>
    public OblongShape Tied(Func<OblongRings.Family, int> groupOf, int groups)
    {
        var starts = Enumerable.Range(0, groups).Select(g => Rings.Families.Where(f => groupOf(f) == g).Average(LengthOf)).ToArray();
        return Fit(Rings, Unknowns, Barrel, starts, groupOf, _ => TiedWeight);
    }

    /// <summary>The shape whose families have exactly the lengths given, from this one as a start; null where none is near.</summary>
    public OblongShape? Closed(Func<OblongRings.Family, double> lengthOf)
    {
        var (at, sum) = LeastSquares.Minimum((places, equations) =>
        {
            Span<int> unknowns = stackalloc int[4];
            Span<double> by = stackalloc double[4];
            foreach (var family in Rings.Families)
            {
                var count = OblongRings.Gradient(places, family, unknowns, by);
                equations.Add(OblongRings.Length(places, family) - lengthOf(family), unknowns[..count], by[..count]);
            }
        }, Unknowns, LengthAccuracy, StepCap);
        return Math.Sqrt(sum) < 10 * LengthAccuracy * Rings.Families.Count ? this with { Unknowns = at } : null;
    }

    static OblongShape Fit(OblongRings rings, double[] places, double barrel, double[] lengths,
        Func<OblongRings.Family, int> groupOf, Func<OblongRings.Family, double> weightOf)
    {
        int n = rings.Unknowns, all = rings.Rings.Sum(r => r.Nodes);
        var (at, _) = LeastSquares.Minimum((q, equations) =>
        {
            Span<int> unknowns = stackalloc int[5];
            Span<double> by = stackalloc double[5];
            foreach (var family in rings.Families)
            {
                var (weight, length) = (weightOf(family), n + 1 + groupOf(family));
                var count = OblongRings.Gradient(q, family, unknowns, by);
                (unknowns[count], by[count]) = (length, -1);
                foreach (ref var derivative in by[..++count]) derivative *= weight;
                equations.Add(weight * (OblongRings.Length(q, family) - q[length]), unknowns[..count], by[..count]);
            }
            foreach (var (ring, nodes) in rings.Rings)
            {
                var (off, dx, dRadius) = OffCapsule(rings, q, ring, q[n]);
                var (weight, count) = (Math.Sqrt((double)nodes / all), 0);
                if (ring.X >= 0) (unknowns[count], by[count++]) = (ring.X, weight * ring.Sign * dx);
                if (ring.Radius >= 0) (unknowns[count], by[count++]) = (ring.Radius, weight * dRadius);
                if (q[n] > 0) (unknowns[count], by[count++]) = (n, -weight * Math.Abs(dx));
                equations.Add(weight * off, unknowns[..count], by[..count]);
            }
        }, [.. places, barrel, .. lengths], FitAccuracy, StepCap);
        var shape = at[..n];
        var mean = rings.Rings.Sum(r => r.Nodes * Math.Pow(OffCapsule(rings, shape, r.Ring, at[n]).Off, 2)) / all;
        return new(rings, shape, Math.Max(at[n], 0), Math.Sqrt(mean));
    }

    // The distance outside the capsule and its derivatives along x and the radius.
    static (double Off, double Dx, double DRadius) OffCapsule(OblongRings rings, double[] places, OblongRings.Ring ring, double barrel)
    {
        double x = OblongRings.X(places, ring), radius = OblongRings.Radius(places, ring);
        var beyond = Math.Max(Math.Abs(x) - Math.Max(barrel, 0), 0);
        var far = Math.Sqrt(beyond * beyond + radius * radius);
        return (far - 1, Math.Sign(x) * beyond / far, radius / far);
    }
}
