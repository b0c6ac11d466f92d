using System.Text.Json.Serialization;

namespace KitWorks.Geometry;

/// <summary>The one measure that fixes a shelter's scale.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "by")]
[JsonDerivedType(typeof(FloorDiameter), "floorDiameter")]
[JsonDerivedType(typeof(Height), "height")]
[JsonDerivedType(typeof(Radius), "radius")]
[JsonDerivedType(typeof(LongestStrut), "longestStrut")]
[JsonDerivedType(typeof(LongSide), "length")]
[JsonDerivedType(typeof(ShortSide), "width")]
[JsonDerivedType(typeof(Fits), "fits")]
public abstract record Size
{
    private protected Size()
    {
    }

    /// <summary>Twice the mean distance of a dome's base nodes from its vertical axis.</summary>
    public sealed record FloorDiameter(Length Diameter) : Size;

    /// <summary>From the lowest base node to the highest node.</summary>
    public sealed record Height(Length Of) : Size;

    /// <summary>The radius of a dome's sphere, through node centres.</summary>
    public sealed record Radius(Length Of) : Size;

    /// <summary>The cut length of the longest strut: its spacing less the two hub allowances.</summary>
    public sealed record LongestStrut(Length CutLength) : Size;

    /// <summary>An oblong's length over its node centres, along the long axis.</summary>
    public sealed record LongSide(Length Of) : Size;

    /// <summary>An oblong's width over its node centres, across the long axis.</summary>
    public sealed record ShortSide(Length Of) : Size;

    /// <summary>The largest shelter that fits a plot or stays under a height; null leaves a direction free, at least one is given.</summary>
    public sealed record Fits(Length? MaxLength, Length? MaxWidth, Length? MaxHeight) : Size;
}
