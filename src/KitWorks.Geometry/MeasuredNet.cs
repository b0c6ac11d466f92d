namespace KitWorks.Geometry;

/// <summary>A triangulation with its strut families and panel kinds.</summary>
/// <param name="Net">The nodes and their neighbours.</param>
/// <param name="FamilyAround">Beside each neighbour the family of the strut to it.</param>
/// <param name="Lengths">The length of each family, from the shortest.</param>
/// <param name="KindAround">Beside each neighbour the kind of the panel between it and the next, counter-clockwise.</param>
/// <param name="Kinds">The three families of each kind, ascending; kinds in that order.</param>
sealed record MeasuredNet(Triangulation Net, ushort[] FamilyAround, double[] Lengths, ushort[] KindAround, (int, int, int)[] Kinds)
{
    /// <summary>Measures the first <paramref name="kept"/> nodes of a net strut by strut, for nets whose symmetry is lost or unknown.</summary>
    public static MeasuredNet Of(Triangulation net, int kept)
    {
        var lengths = new List<double>();
        var placeOf = new List<(int Place, int Back)>();
        for (var node = 0; node < kept; node++)
            for (var i = net.Start[node]; i < net.Start[node + 1]; i++)
            {
                var w = net.Around[i];
                if (w <= node || w >= kept) continue;
                lengths.Add(net.Points[node].DistanceTo(net.Points[w]));
                placeOf.Add((i, net.PlaceOf(node, w)));
            }
        var (familyOf, families) = Families.Group([.. lengths]);
        var family = new ushort[net.Around.Length];
        for (var s = 0; s < familyOf.Length; s++) family[placeOf[s].Place] = family[placeOf[s].Back] = (ushort)familyOf[s];
        var (kind, kinds) = Panels(net, kept, family);
        return new(net, family, families, kind, kinds);
    }

    static (ushort[], (int, int, int)[]) Panels(Triangulation net, int kept, ushort[] family)
    {
        var sidesAt = new Dictionary<int, (int, int, int)>();
        for (var node = 0; node < kept; node++)
            for (var i = net.Start[node]; i < net.Start[node + 1]; i++)
                if (Rim.KeepsPanel(net, kept, node, i))
                {
                    var next = net.After(node, i);
                    sidesAt[i] = Ascending(family[i], family[next], family[net.PlaceOf(net.Around[next], net.Around[i])]);
                }
        var kinds = sidesAt.Values.Distinct().Order().ToArray();
        var kind = new ushort[family.Length];
        foreach (var (i, sides) in sidesAt) kind[i] = (ushort)Array.BinarySearch(kinds, sides);
        return (kind, kinds);
    }

    /// <summary>Three numbers in order.</summary>
    public static (int, int, int) Ascending(int a, int b, int c)
    {
        if (a > b) (a, b) = (b, a);
        if (b > c) (b, c) = (c, b);
        return a > b ? (b, a, c) : (a, b, c);
    }
}
