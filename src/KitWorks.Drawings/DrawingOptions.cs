using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Drawings;

/// <summary>From where a frame is seen.</summary>
public enum View
{
    /// <summary>From straight above; x to the right.</summary>
    Plan,

    /// <summary>From the front, along y, so that an oblong shows its length.</summary>
    Side,

    /// <summary>From the end, along x.</summary>
    End,

    /// <summary>From above the front right corner, the three axes equally foreshortened.</summary>
    Isometric,

    /// <summary>
    /// As the plan, but with the walls folded outwards, so that every strut is seen at nearly its full length and none
    /// hides another. Not to scale.
    /// </summary>
    Spread,
}

/// <summary>What lengths are written in.</summary>
public enum Units
{
    /// <summary>Metres for the whole, millimetres for parts.</summary>
    Metric,

    /// <summary>Feet and inches, to a quarter inch for the whole and to 1/32 inch for parts.</summary>
    FeetAndInches,
}

/// <summary>How a frame is drawn.</summary>
public sealed record DrawingOptions
{
    /// <summary>From where; the plan by default.</summary>
    public View View { get; init; }

    /// <summary>The tier being built: what is new in it is strong, what already stands pale, what comes later absent. Null for the whole frame.</summary>
    public int? Tier { get; init; }

    /// <summary>What lengths are written in.</summary>
    public Units Units { get; init; }

    /// <summary>The width on paper, 60 mm to 3 m; 180 mm by default. Text keeps its size on paper, so a wider sheet has room for more codes.</summary>
    public Length Width { get; init; } = Length.FromMillimetres(180);

    /// <summary>Whether it is only a picture, without headline, codes and legend: for a small one that nobody reads figures from.</summary>
    public bool IsPlain { get; init; }

    /// <summary>The frame's openings, which are outlined and named; none by default.</summary>
    public ImmutableArray<FramedOpening> Openings { get; init; } = [];

    /// <summary>The headline; null for the shelter's own name.</summary>
    public string? Title { get; init; }
}
