namespace KitWorks.Geometry;

/// <summary>Sorts lengths into a few groups.</summary>
static class LengthGroups
{
    /// <summary>
    /// The group of each length, groups from the shortest, such that the widest group is as narrow as can be.
    /// </summary>
    /// <param name="ascending">The lengths, from the shortest.</param>
    /// <param name="groups">How many groups at most.</param>
    public static int[] Narrowest(IReadOnlyList<double> ascending, int groups)
    {
        // Halved until no number lies between: the widths that do not do and those that do.
        double low = 0, high = ascending[^1] - ascending[0];
        if (Fill(ascending, low)[^1] < groups) return Fill(ascending, low);
        for (var middle = high / 2; middle > low && middle < high; middle = low + (high - low) / 2)
        {
            if (Fill(ascending, middle)[^1] < groups) high = middle;
            else low = middle;
        }
        return Fill(ascending, high);
    }

    static int[] Fill(IReadOnlyList<double> ascending, double width)
    {
        var groupOf = new int[ascending.Count];
        for (int i = 0, first = 0, group = 0; i < groupOf.Length; i++)
        {
            if (ascending[i] - ascending[first] > width) (first, group) = (i, group + 1);
            groupOf[i] = group;
        }
        return groupOf;
    }
}
