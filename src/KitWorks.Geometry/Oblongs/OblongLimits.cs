using System.Collections.Immutable;

namespace KitWorks.Geometry;

/// <summary>What oblongs there are, checked before anything is computed.</summary>
public static class OblongLimits
{
    /// <summary>The folds.</summary>
    public static ImmutableArray<int> Folds => [4, 6, 8];

    /// <summary>The highest frequency; the lowest is 1.</summary>
    public const int MaxFrequency = 8;

    /// <summary>The fewest bays: at −2 the two ends share their rings.</summary>
    public const int MinBays = -2;

    /// <summary>The most bays. A six-fold oblong is then about four times as long as wide, and at frequency 8 has 6,000 nodes.</summary>
    public const int MaxBays = 12;

    /// <summary>The most lengths; the fewest is 1.</summary>
    public const int MaxLengths = 6;

    internal static Refusal? Refuse(Oblong oblong)
    {
        if (!Folds.Contains(oblong.Fold)) return Refusal.OfField("shelter.fold", "fold", $"The fold is {oblong.Fold}; it is {string.Join(", ", Folds)}.");
        if (oblong.Frequency is < 1 or > MaxFrequency)
            return Refusal.OfField("shelter.frequency", "frequency", $"The frequency is {oblong.Frequency}; it is 1 to {MaxFrequency} for an oblong.");
        if (oblong.Bays is < MinBays or > MaxBays)
            return Refusal.OfField("shelter.bays", "bays", $"There are {oblong.Bays} bays; there may be {MinBays} to {MaxBays}.");
        return oblong.Lengths is < 1 or > MaxLengths
            ? Refusal.OfField("shelter.lengths", "lengths", $"There are {oblong.Lengths} lengths; there may be 1 to {MaxLengths}.")
            : null;
    }
}
