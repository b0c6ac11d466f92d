using KitWorks.Geometry;

namespace KitWorks.Api.Endpoints;

/// <summary>What shelters there are, and their limits.</summary>
sealed record ShapesAnswer(IReadOnlyList<KindAnswer> Kinds)
{
    public static ShapesAnswer All { get; } = new(
    [
        new("dome", "Part of a geodesic sphere.", ["icosahedron", "octahedron", "tetrahedron"],
            [new(1, 1, DomeLimits.MaxClass1IcosahedronFrequency), new(2, 2, DomeLimits.MaxClass2Frequency), new(3, null, null)],
            ["vertex", "edge", "face"], DomeLimits.MaxT, ["floorDiameter", "height", "radius", "longestStrut", "fits"]),
    ]);
}

/// <summary>A kind of shelter.</summary>
/// <param name="Kind">Its name in a design.</param>
/// <param name="Description">What it is.</param>
/// <param name="Solids">The base solids.</param>
/// <param name="Classes">The classes of subdivision.</param>
/// <param name="Up">What may point up.</param>
/// <param name="MaxT">The largest triangulation number.</param>
/// <param name="Sizes">The measures it can be sized by.</param>
sealed record KindAnswer(string Kind, string Description, string[] Solids, ClassAnswer[] Classes, string[] Up, int MaxT, string[] Sizes);

/// <summary>A class of subdivision; class 3 takes a lattice instead of a frequency.</summary>
sealed record ClassAnswer(int Class, int? MinFrequency, int? MaxFrequency);
