using KitWorks.Geometry;

namespace KitWorks.Api.Endpoints;

/// <summary>What shelters there are, and their limits.</summary>
sealed record ShapesAnswer(IReadOnlyList<KindAnswer> Kinds, OblongAnswer Oblong)
{
    public static ShapesAnswer All { get; } = new(
    [
        new("dome", "Part of a geodesic sphere.", ["icosahedron", "octahedron", "tetrahedron"],
            [new(1, 1, DomeLimits.MaxClass1IcosahedronFrequency), new(2, 2, DomeLimits.MaxClass2Frequency), new(3, null, null)],
            ["vertex", "edge", "face"], DomeLimits.MaxT, ["floorDiameter", "height", "radius", "longestStrut", "fits"]),
        new("oblong", "Longer than wide, on an oval footprint.", [], [], [], null, ["height", "length", "width", "longestStrut", "fits"]),
    ], new([.. OblongLimits.Folds], OblongLimits.MaxFrequency, OblongLimits.MinBays, OblongLimits.MaxBays, OblongLimits.MaxLengths));
}

/// <summary>A kind of shelter.</summary>
/// <param name="Kind">Its name in a design.</param>
/// <param name="Description">What it is.</param>
/// <param name="Solids">The base solids.</param>
/// <param name="Classes">The classes of subdivision.</param>
/// <param name="Up">What may point up.</param>
/// <param name="MaxT">The largest triangulation number.</param>
/// <param name="Sizes">The measures it can be sized by.</param>
sealed record KindAnswer(string Kind, string Description, string[] Solids, ClassAnswer[] Classes, string[] Up, int? MaxT, string[] Sizes);

/// <summary>The limits of oblongs.</summary>
/// <param name="Folds">The symmetries around the long axis.</param>
/// <param name="MaxFrequency">The highest frequency.</param>
/// <param name="MinBays">The fewest bays.</param>
/// <param name="MaxBays">The most bays.</param>
/// <param name="MaxLengths">The most strut lengths of the frequency-1 shell.</param>
sealed record OblongAnswer(int[] Folds, int MaxFrequency, int MinBays, int MaxBays, int MaxLengths);

/// <summary>A class of subdivision; class 3 takes a lattice instead of a frequency.</summary>
sealed record ClassAnswer(int Class, int? MinFrequency, int? MaxFrequency);
