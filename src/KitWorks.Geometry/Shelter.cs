using System.Text.Json.Serialization;

namespace KitWorks.Geometry;

/// <summary>What a customer wants framed: its form and its size. A value: two shelters are equal when all their parts are.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(Dome), "dome")]
[JsonDerivedType(typeof(Oblong), "oblong")]
public abstract record Shelter
{
    /// <summary>The one measure that fixes the scale.</summary>
    public required Size Size { get; init; }
}

/// <summary>Part of a geodesic sphere.</summary>
public sealed record Dome : Shelter
{
    /// <summary>The solid whose faces are subdivided; the icosahedron by default.</summary>
    public BaseSolid Solid { get; init; } = BaseSolid.Icosahedron;

    /// <summary>How each face is subdivided.</summary>
    public required Lattice Lattice { get; init; }

    /// <summary>What of the solid points up; a vertex by default.</summary>
    public Up Up { get; init; } = Up.Vertex;

    /// <summary>How much of the sphere is kept.</summary>
    public required Cut Cut { get; init; }

    /// <summary>Whether the base nodes are moved to one plane; false leaves them on the sphere.</summary>
    public bool FlatBase { get; init; }
}

/// <summary>An elongated shelter, longer than wide, on an oval footprint: half of a closed shell, cut along its long axis.</summary>
public sealed record Oblong : Shelter
{
    /// <summary>The symmetry around the long axis: 4, 6 or 8.</summary>
    public required int Fold { get; init; }

    /// <summary>In how many parts each strut of the frequency-1 shell is split: 1 to 8.</summary>
    public int Frequency { get; init; } = 1;

    /// <summary>Nodes added to each line that runs along the shell: −2 and up.</summary>
    public int Bays { get; init; }

    /// <summary>In how many lengths the struts of the frequency-1 shell come: 1 to 6; four by default.</summary>
    public int Lengths { get; init; } = 4;
}

/// <summary>A regular solid of triangles.</summary>
public enum BaseSolid
{
    /// <summary>Twenty faces, five at a vertex.</summary>
    Icosahedron,

    /// <summary>Eight faces, four at a vertex.</summary>
    Octahedron,

    /// <summary>Four faces, three at a vertex.</summary>
    Tetrahedron,
}

/// <summary>What of a base solid points straight up.</summary>
public enum Up
{
    /// <summary>A vertex.</summary>
    Vertex,

    /// <summary>The middle of an edge.</summary>
    Edge,

    /// <summary>The middle of a face.</summary>
    Face,
}

/// <summary>
/// The triangular lattice laid on each face: from one corner of the face to the next it goes <see cref="B"/> steps along one
/// direction and <see cref="C"/> steps along the direction 60° to its left.
/// </summary>
/// <remarks>Class 1 is (v, 0), class 2 is (b, b) with frequency 2b, class 3 is any other; (b, c) and (c, b) are mirror images.</remarks>
/// <param name="B">Steps along the first direction, 1 or more.</param>
/// <param name="C">Steps along the second direction, 0 or more.</param>
public readonly record struct Lattice(int B, int C)
{
    /// <summary>The class-1 lattice of a frequency: each edge in <paramref name="frequency"/> equal parts.</summary>
    public static Lattice Class1(int frequency) => new(frequency, 0);

    /// <summary>The class-2 lattice of an even frequency.</summary>
    public static Lattice Class2(int frequency) => new(frequency / 2, frequency / 2);

    /// <summary>1, 2 or 3.</summary>
    public int Class => C == 0 ? 1 : B == C ? 2 : 3;

    /// <summary>The frequency: b + c.</summary>
    public int Frequency => B + C;

    /// <summary>The triangulation number T = b² + bc + c²: small triangles to a face of the solid.</summary>
    public int T => B * B + B * C + C * C;
}
