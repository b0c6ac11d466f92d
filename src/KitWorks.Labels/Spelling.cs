namespace KitWorks.Labels;

/// <summary>How near two words are to each other.</summary>
static class Spelling
{
    /// <summary>How many letters one adds, drops or changes to make one word of the other; two that have changed places count two.</summary>
    public static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
                (diagonal, row[j]) = (row[j], Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + (a[i - 1] == b[j - 1] ? 0 : 1)));
        }
        return row[^1];
    }
}
