using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Kits.Catalog;

/// <summary>What the shop's carriers take, and how it names its parcels.</summary>
public sealed record ParcelRules
{
    /// <summary>The kinds of parcel, the preferred first: of plans with equally few parcels, one with the more preferred kinds is taken. Empty where the shop does not plan parcels.</summary>
    public ImmutableArray<ParcelKind> Kinds { get; init; } = [];

    /// <summary>What the wrapping adds to each outer measure.</summary>
    public Length Wrapping { get; init; } = Length.FromMillimetres(20);

    /// <summary>What a litre of bagged hubs, ties or stakes weighs, in grams. Common practice, no source; weigh one.</summary>
    public int BagGramsPerLitre { get; init; } = 300;

    /// <summary>What a litre of folded cover weighs, in grams. Common practice, no source; weigh one.</summary>
    public int CoverGramsPerLitre { get; init; } = 400;

    /// <summary>The shop's GS1 company prefix; null where it has none, and parcels then have no SSCC.</summary>
    public string? Gs1CompanyPrefix { get; init; }

    /// <summary>The extension digit of the shop's SSCCs: 0 to 9.</summary>
    public int SsccExtension { get; init; }
}

/// <summary>A kind of parcel, with the carrier's limits.</summary>
public sealed record ParcelKind
{
    /// <summary>The code that the price book's shipping rates name it by.</summary>
    public required string Code { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>The longest side at the most.</summary>
    public required Length MaxLength { get; init; }

    /// <summary>The longest side and the girth round the other two at the most.</summary>
    public required Length MaxLengthAndGirth { get; init; }

    /// <summary>The mass at the most, wrapping with it.</summary>
    public required int MaxGrams { get; init; }

    /// <summary>What the wrapping weighs.</summary>
    public int TareGrams { get; init; }
}
