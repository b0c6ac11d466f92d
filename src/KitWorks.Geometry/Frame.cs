using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace KitWorks.Geometry;

/// <summary>
/// The geometry of a shelter: nodes, struts and panels, in an order that is the same on every machine.
/// </summary>
/// <remarks>Coordinates are millimetres, z up, the mean base plane at z = 0, the vertical axis through the middle of the base at x = y = 0.</remarks>
public sealed partial class Frame
{
    [JsonConstructor]
    internal Frame()
    {
    }

    /// <summary>The shelter this is the frame of.</summary>
    public required Shelter Shelter { get; init; }

    /// <summary>The radius of a dome's sphere in millimetres; null for an oblong.</summary>
    public double? RadiusMm { get; init; }

    /// <summary>The nodes, by id, from the top row down.</summary>
    public required ImmutableArray<Node> Nodes { get; init; }

    /// <summary>The struts, by id.</summary>
    public required ImmutableArray<Strut> Struts { get; init; }

    /// <summary>The triangles between struts, counter-clockwise seen from outside.</summary>
    public required ImmutableArray<Panel> Panels { get; init; }

    /// <summary>Struts that are equal by mathematics, from the shortest.</summary>
    public required ImmutableArray<StrutFamily> Families { get; init; }

    /// <summary>The kinds of triangle, by their three strut families.</summary>
    public required ImmutableArray<PanelKind> PanelKinds { get; init; }

    /// <summary>The base nodes' ids, in order around the ring, counter-clockwise seen from above.</summary>
    public required ImmutableArray<int> Base { get; init; }

    /// <summary>The outer measures.</summary>
    public required Dimensions Dimensions { get; init; }

    /// <summary>Height of the highest base node over the lowest, in millimetres.</summary>
    public required double BaseSpreadMm { get; init; }

    /// <summary>How many tiers there are, tier 0 included.</summary>
    public int TierCount => Nodes.Max(n => n.Tier) + 1;
}

/// <summary>A point of a frame, where struts meet.</summary>
/// <param name="Id">Its place in <see cref="Frame.Nodes"/>.</param>
/// <param name="Position">Where it is, in millimetres.</param>
/// <param name="Degree">How many struts meet there.</param>
/// <param name="Tier">Its graph distance from the base ring.</param>
public readonly record struct Node(int Id, Point3 Position, int Degree, int Tier);

/// <summary>One straight member between two nodes.</summary>
/// <param name="Id">Its place in <see cref="Frame.Struts"/>.</param>
/// <param name="From">The node of the lower id.</param>
/// <param name="To">The node of the higher id.</param>
/// <param name="Family">The place of its family in <see cref="Frame.Families"/>.</param>
/// <param name="SpacingMm">The distance between its node centres, in millimetres.</param>
/// <param name="Tier">The larger of its ends' tiers.</param>
public readonly record struct Strut(int Id, int From, int To, int Family, double SpacingMm, int Tier);

/// <summary>One triangle of a frame.</summary>
/// <param name="A">A node.</param>
/// <param name="B">The next, counter-clockwise from outside.</param>
/// <param name="C">The last.</param>
/// <param name="Kind">The place of its kind in <see cref="Frame.PanelKinds"/>.</param>
public readonly record struct Panel(int A, int B, int C, int Kind);

/// <summary>Struts that are equal by mathematics.</summary>
/// <param name="Index">Its place in <see cref="Frame.Families"/>.</param>
/// <param name="SpacingMm">The distance between node centres, in millimetres.</param>
/// <param name="ChordFactor">Spacing over radius; null for an oblong.</param>
/// <param name="Count">How many struts of the frame belong to it.</param>
public sealed record StrutFamily(int Index, double SpacingMm, double? ChordFactor, int Count);

/// <summary>Triangles with the same three strut families.</summary>
/// <param name="Index">Its place in <see cref="Frame.PanelKinds"/>.</param>
/// <param name="Families">The three strut families, ascending.</param>
/// <param name="AreaM2">The area of one, in square metres.</param>
/// <param name="Count">How many there are.</param>
public sealed record PanelKind(int Index, ImmutableArray<int> Families, double AreaM2, int Count);

/// <summary>The outer measures of a frame, between node centres.</summary>
/// <param name="HeightMm">From the lowest base node to the highest node.</param>
/// <param name="LengthMm">The greatest horizontal extent along x.</param>
/// <param name="WidthMm">The horizontal extent along y.</param>
/// <param name="FloorAreaM2">The area of the base ring's polygon, seen from above.</param>
/// <param name="VolumeM3">The volume enclosed by the panels and the floor.</param>
/// <param name="CoverAreaM2">The area of all panels together, one layer, without seams.</param>
public sealed record Dimensions(double HeightMm, double LengthMm, double WidthMm, double FloorAreaM2, double VolumeM3, double CoverAreaM2);
