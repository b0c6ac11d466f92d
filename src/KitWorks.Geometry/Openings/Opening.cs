using System.Text.Json.Serialization;

namespace KitWorks.Geometry;

/// <summary>A place where a shelter is left open. A value, told in words of the shelter before anything is taken out of it.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(Door), "door")]
[JsonDerivedType(typeof(Vent), "vent")]
public abstract record Opening;

/// <summary>
/// A door: one base hub where four struts meet is left out with its struts and panels, and in its place two plumb posts stand under the two hubs above it,
/// on feet of their own, each foot joined to the base ring beside it. Common practice, no source.
/// </summary>
public sealed record Door : Opening
{
    /// <summary>The base hub that it takes the place of: its number on the stake-out, from 1; null for the first that will do.</summary>
    public int? Stake { get; init; }

    /// <summary>What is over it; level by default.</summary>
    public DoorTop Top { get; init; }
}

/// <summary>What is over a door.</summary>
public enum DoorTop
{
    /// <summary>The strut between the heads of the posts, doubled.</summary>
    Level,

    /// <summary>A gable: that strut is left out with the panel over it, and the two struts above, which meet at one hub, are doubled.</summary>
    Peaked,
}

/// <summary>
/// A vent: one panel off the ground is left open, and a second strut lies beside each of the three around it, which the edge of the cover and a flap are tied
/// to. No strut is left out. Common practice, no source.
/// </summary>
public sealed record Vent : Opening
{
    /// <summary>The panel's place in <see cref="Frame.Panels"/>; null for the topmost that will do.</summary>
    public int? Panel { get; init; }
}
