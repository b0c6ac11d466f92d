using System.Collections.Immutable;

namespace KitWorks.Kits.Cutting;

/// <summary>One way of cutting one bar.</summary>
/// <param name="Bar">The index of the bar.</param>
/// <param name="Counts">How many pieces of each width.</param>
sealed record Pattern(int Bar, ImmutableArray<int> Counts)
{
    /// <summary>What the widths of its pieces add up to.</summary>
    public int Width(CutInstance instance)
    {
        var width = 0;
        for (var i = 0; i < Counts.Length; i++) width += Counts[i] * instance.Widths[i];
        return width;
    }

    /// <summary>Whether it gives no more of any piece than is wanted.</summary>
    public bool IsWithin(IReadOnlyList<int> demands)
    {
        for (var i = 0; i < Counts.Length; i++)
            if (Counts[i] > demands[i]) return false;
        return true;
    }
}

/// <summary>Patterns are equal that cut the same pieces from the same bar.</summary>
sealed class PatternEquality : IEqualityComparer<Pattern>
{
    public static readonly PatternEquality Instance = new();

    public bool Equals(Pattern? x, Pattern? y) =>
        x is not null && y is not null && x.Bar == y.Bar && x.Counts.AsSpan().SequenceEqual(y.Counts.AsSpan());

    public int GetHashCode(Pattern pattern)
    {
        // The same on every run, unlike HashCode.
        var hash = pattern.Bar;
        foreach (var count in pattern.Counts) hash = hash * 31 + count;
        return hash;
    }
}

/// <summary>Patterns and how often each is cut.</summary>
sealed record CutSolution(ImmutableArray<(Pattern Pattern, int Times)> Uses)
{
    /// <summary>What its bars cost.</summary>
    public long Cost(CutInstance instance) => Uses.Sum(u => u.Times * instance.Bars[u.Pattern.Bar].Cost);
}
