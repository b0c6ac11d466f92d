using System.Text.Json.Serialization;
using KitWorks.Geometry;

namespace KitWorks.Kits;

/// <summary>What is asked for: a shelter, and what to build it from. A value.</summary>
public sealed record Design
{
    /// <summary>The form and size.</summary>
    public required Shelter Shelter { get; init; }

    /// <summary>The code of the hub system.</summary>
    public required string HubSystem { get; init; }

    /// <summary>The code of the strut stock; null for the smallest that passes the screening. A kit's design always has one.</summary>
    public string? StrutStock { get; init; }

    /// <summary>The cover; null for a bare frame.</summary>
    public CoverChoice? Cover { get; init; }

    /// <summary>The most strut types the customer accepts; null for as many as the geometry has.</summary>
    public int? MaxStrutTypes { get; init; }

    /// <summary>The name of the load set that it is screened for; null for the catalog's first.</summary>
    /// <remarks>Left out of a design's id where it is null, so that designs made before there were load sets keep theirs.</remarks>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? LoadSet { get; init; }

    /// <summary>Doors and vents, at most <see cref="OpenedFrame.MostOpenings"/>; null for none. In a kit's design each has its place, and there is one order.</summary>
    /// <remarks>Left out of a design's id where it is null, as <see cref="LoadSet"/> is.</remarks>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<Opening>? Openings { get; init; }
}

/// <summary>A cover of one or more layers.</summary>
/// <param name="Layers">How many layers: 1 to 4.</param>
/// <param name="Material">The code of the material; null for the catalog's first.</param>
public sealed record CoverChoice(int Layers, string? Material = null);
