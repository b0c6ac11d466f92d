namespace KitWorks.Geometry;

/// <summary>How fine a dome may be, checked before anything is computed.</summary>
public static class DomeLimits
{
    /// <summary>
    /// The highest frequency of a class-1 icosahedron. The trade builds up to about 8V; a 16V hemisphere already has 3,880 struts.
    /// </summary>
    public const int MaxClass1IcosahedronFrequency = 16;

    /// <summary>The highest triangulation number of any other design.</summary>
    public const int MaxT = 1024;

    /// <summary>The highest frequency of class 1 on the other solids: 32² = 1,024.</summary>
    public const int MaxClass1Frequency = 32;

    /// <summary>The highest frequency of class 2: 3 · 18² = 972.</summary>
    public const int MaxClass2Frequency = 36;

    internal static Refusal? Refuse(BaseSolid solid, Lattice lattice, Up up)
    {
        if (!Enum.IsDefined(solid))
            return Refusal.OfField("shelter.solid", "solid", $"There is no solid {(int)solid}; a dome's is icosahedron, octahedron or tetrahedron.");
        if (!Enum.IsDefined(up)) return Refusal.OfField("shelter.up", "up", $"There is no up {(int)up}; up is vertex, edge or face.");
        var (b, c) = lattice;
        var t = (decimal)b * b + (decimal)b * c + (decimal)c * c;
        var highest = solid == BaseSolid.Icosahedron ? MaxClass1IcosahedronFrequency : MaxClass1Frequency;
        if (c == 0 && (b < 1 || b > highest)) return OfFrequency(b, $"1 to {highest} for class 1 on this solid");
        if (b < 1 || c < 0)
            return OfLattice($"The lattice is ({b}, {c}); its first number is 1 or more, its second 0 or more.");
        if (b == c && t > MaxT) return OfFrequency((long)b + c, $"2 to {MaxClass2Frequency}, even, for class 2");
        return t > MaxT ? OfLattice($"The lattice ({b}, {c}) has b² + bc + c² = {t}; {MaxT} is the most.") : null;
    }

    static Refusal OfFrequency(long frequency, string limits) =>
        Refusal.OfField("shelter.frequency", "frequency", $"The frequency is {frequency}; it is {limits}.");

    static Refusal OfLattice(string detail) => Refusal.OfField("shelter.frequency", "lattice", detail);
}
