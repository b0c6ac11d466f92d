using System.Collections.Immutable;
using System.Globalization;

namespace KitWorks.Geometry;

/// <summary>One valid cut of a dome's sphere.</summary>
/// <param name="Name">Its name: a trade fraction where there is one, else rows kept over rows in the whole sphere.</param>
/// <param name="Rows">Rows of struts kept, from the top.</param>
/// <param name="HeightOverRadius">The height kept, from the mean base plane to the top, over the radius.</param>
public sealed record DomeCut(string Name, int Rows, double HeightOverRadius)
{
    /// <summary>How many nodes stand on the ground.</summary>
    public int BaseNodes { get; init; }

    /// <summary>Height of the highest base node over the lowest, over the radius; zero where the ring is planar.</summary>
    public double BaseSpreadOverRadius { get; init; }
}

/// <summary>The valid cuts of dome designs.</summary>
/// <remarks>
/// A row is a graph distance from the top: the top node, or the struts or panel that the axis meets where it meets no node. Keeping k rows
/// keeps the panels whose nodes all lie within k rows. A cut is valid when what is kept is bounded by one closed ring of struts.
/// Every base node then holds three struts or more: its two in the ring and one to the row above.
/// </remarks>
public static class DomeCuts
{
    /// <summary>Every valid cut of a dome, from the smallest; its own cut and size do not matter.</summary>
    public static Outcome<ImmutableArray<DomeCut>> Of(BaseSolid solid, Lattice lattice, Up up)
    {
        if (DomeLimits.Refuse(solid, lattice, up) is { } refusal) return refusal;
        return Of(GeodesicSphere.Of(solid, lattice, up), solid, lattice, up).ConvertAll(c => c.Cut).ToImmutableArray();
    }

    internal static List<(DomeCut Cut, int[] Ring)> Of(GeodesicSphere sphere, BaseSolid solid, Lattice lattice, Up up)
    {
        var cuts = new List<(DomeCut, int[])>();
        var net = sphere.Net;
        for (var rows = 1; rows < sphere.Rows; rows++)
        {
            if (RingOf(sphere, rows) is not { } ring) continue;
            double low = ring.Min(n => net.Points[n].Z), high = ring.Max(n => net.Points[n].Z);
            cuts.Add((new(NameOf(solid, lattice, up, rows, sphere.Rows), rows, net.Points[0].Z - ring.Average(n => net.Points[n].Z))
            {
                BaseNodes = ring.Length,
                BaseSpreadOverRadius = high - low > Families.Tolerance ? high - low : 0,
            }, ring));
        }
        return cuts;
    }

    internal static int[]? RingOf(GeodesicSphere sphere, int rows) =>
        Rim.Ring(sphere.Net, sphere.RowStart[rows + 1], sphere.RowStart[rows]);

    /// <summary>
    /// The rows that a cut asks for, whether or not they make a valid one; null where the fraction names none. A cut's own name comes first,
    /// then any fraction of equal value, unless it is the trade's name of another.
    /// </summary>
    internal static int? RowsOf(Cut cut, BaseSolid solid, Lattice lattice, Up up, int of)
    {
        if (cut.Denominator is not { } denominator) return cut.Numerator;
        var named = Enumerable.Range(1, of - 1).Where(rows => NameOf(solid, lattice, up, rows, of) == cut.ToString()).ToArray();
        if (named.Length > 0) return named[0];
        var (rows, rest) = Math.DivRem((long)cut.Numerator * of, denominator);
        return rest == 0 && rows <= int.MaxValue ? (int)rows : null;
    }

    // The trade speaks of icosahedral class-1 domes with a vertex up. At 3V its eighths are names: rows 4 and 5 of 9.
    static string NameOf(BaseSolid solid, Lattice lattice, Up up, int rows, int of)
    {
        if (2 * rows == of) return "1/2";
        if (solid == BaseSolid.Icosahedron && up == Up.Vertex && lattice == Lattice.Class1(3) && rows is 4 or 5) return rows == 4 ? "3/8" : "5/8";
        return string.Create(CultureInfo.InvariantCulture, $"{rows}/{of}");
    }
}
