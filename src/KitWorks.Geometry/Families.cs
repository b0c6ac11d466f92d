namespace KitWorks.Geometry;

/// <summary>Tells which lengths are equal by mathematics.</summary>
static class Families
{
    /// <summary>
    /// How far two lengths may lie apart, over the radius, and still be equal. Rounding stays below 1e-14; the nearest two real families
    /// of icosahedral class 1 are 2.5e-5 apart at frequency 8 and 8.8e-6 at frequency 10.
    /// </summary>
    public const double Tolerance = 1e-9;

    /// <summary>Groups lengths: the family of each, families from the shortest, and the length of each family.</summary>
    public static (int[] FamilyOf, double[] Lengths) Group(ReadOnlySpan<double> lengths)
    {
        var sorted = lengths.ToArray();
        var places = new int[sorted.Length];
        for (var i = 0; i < places.Length; i++) places[i] = i;
        Array.Sort(sorted, places);
        var familyOf = new int[sorted.Length];
        var found = new List<double>();
        for (var i = 0; i < sorted.Length; i++)
        {
            if (i == 0 || sorted[i] - sorted[i - 1] > Tolerance) found.Add(sorted[i]);
            familyOf[places[i]] = found.Count - 1;
        }
        return (familyOf, [.. found]);
    }

    /// <summary>The family of one length.</summary>
    public static int Find(double[] families, double length)
    {
        var at = Array.BinarySearch(families, length - Tolerance);
        return at < 0 ? ~at : at;
    }
}
