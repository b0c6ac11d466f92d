using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Kits.Packing;

/// <summary>What a bundle holds.</summary>
public enum BundleKind
{
    /// <summary>Struts of one type, tied together.</summary>
    Struts,

    /// <summary>A bag of hubs.</summary>
    Hubs,

    /// <summary>A bag of ties.</summary>
    Ties,

    /// <summary>A bundle of stakes.</summary>
    Stakes,

    /// <summary>The cover, folded.</summary>
    Cover,
}

/// <summary>One tied or bagged pack of parts for one tier.</summary>
/// <param name="Number">Its place in the kit, from 1.</param>
/// <param name="Tier">The tier it is for.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Contents">What is in it.</param>
/// <param name="MassGrams">Its mass.</param>
/// <param name="Length">The length of its longest piece; zero for a bag.</param>
public sealed record Bundle(int Number, int Tier, BundleKind Kind, ImmutableArray<BundleItem> Contents, int MassGrams, Length Length)
{
    /// <summary>How thick one piece is; zero for a bag.</summary>
    public Length PieceWidth { get; init; }
}

/// <summary>Pieces of one sort in a bundle.</summary>
/// <param name="Sku">The stock code they come from.</param>
/// <param name="Code">The strut type, for struts.</param>
/// <param name="Description">Their name for people.</param>
/// <param name="Count">How many.</param>
public sealed record BundleItem(string Sku, string? Code, string Description, int Count);
