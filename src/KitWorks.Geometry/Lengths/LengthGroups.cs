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
        // The answer is a difference of two lengths: search the sorted differences.
        var widths = new List<double> { 0 };
        for (var i = 0; i < ascending.Count; i++)
            for (var j = i + 1; j < ascending.Count; j++) widths.Add(ascending[j] - ascending[i]);
        widths.Sort();
        int low = 0, high = widths.Count - 1;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (Fill(ascending, widths[middle])[^1] < groups) high = middle;
            else low = middle + 1;
        }
        return Fill(ascending, widths[low]);
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
