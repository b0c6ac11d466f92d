namespace KitWorks.Geometry;

/// <summary>A closed surface of triangles: its points, each with its neighbours counter-clockwise from outside.</summary>
/// <param name="Points">Where the points are.</param>
/// <param name="Start">Where each point's neighbours start in <paramref name="Around"/>, with one more entry for the end.</param>
/// <param name="Around">The neighbours of all points, one after the other.</param>
sealed record Triangulation(Point3[] Points, int[] Start, int[] Around)
{
    public int Count => Points.Length;

    /// <summary>The place in <see cref="Around"/> after <paramref name="i"/>, counter-clockwise around <paramref name="point"/>.</summary>
    public int After(int point, int i) => i + 1 == Start[point + 1] ? Start[point] : i + 1;

    /// <summary>The place in <see cref="Around"/> before <paramref name="i"/>.</summary>
    public int Before(int point, int i) => i == Start[point] ? Start[point + 1] - 1 : i - 1;

    /// <summary>The place in <see cref="Around"/> of one neighbour of a point.</summary>
    public int PlaceOf(int neighbour, int point)
    {
        var i = Start[point];
        while (Around[i] != neighbour) i++;
        return i;
    }
}
