using System.Collections.Immutable;

namespace KitWorks.Labels;

/// <summary>What lies in which parcel, for the customer to check.</summary>
public sealed record PackingList : Paper
{
    /// <summary>Who gets it, on lines of their own.</summary>
    public required string To { get; init; }

    /// <summary>Who sends it, on lines of their own.</summary>
    public required string From { get; init; }

    /// <summary>The customer's own reference; empty for none.</summary>
    public string Reference { get; init; } = "";

    /// <summary>What is being built, and how often.</summary>
    public required string Shelter { get; init; }

    /// <summary>The mass of all of it, with its unit.</summary>
    public required string Mass { get; init; }

    /// <summary>The bundles, in the order in which they are built.</summary>
    public required ImmutableArray<PackedBundle> Bundles { get; init; }

    /// <summary>The parcels.</summary>
    public ImmutableArray<PackedParcel> Parcels { get; init; } = [];

    internal override IEnumerable<PaperSection> Sections =>
        Parcels.IsEmpty ? [new("packing-list", this)] : [new("packing-list", this), new("packing-parcels", this)];
}

/// <summary>One bundle on a packing list.</summary>
/// <param name="Number">Its place in the kit, as on its label.</param>
/// <param name="Code">Its code.</param>
/// <param name="Tier">The tier it is for.</param>
/// <param name="Contents">What is in it, in words.</param>
/// <param name="Tag">The marker of the strut type.</param>
/// <param name="Mass">Its mass, with its unit.</param>
/// <param name="Parcel">The parcel it lies in; 0 where that is not known yet.</param>
/// <param name="Kit">Which kit it is of; empty where the order has one kit.</param>
public sealed record PackedBundle(int Number, string Code, int Tier, string Contents, TagMark Tag, string Mass, int Parcel, string Kit = "");

/// <summary>One parcel on a packing list.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Sscc">Its code; empty where it has none.</param>
/// <param name="Measures">Its outer measures.</param>
/// <param name="Mass">Its mass, with its unit.</param>
/// <param name="Kind">What the carrier calls it.</param>
/// <param name="Bundles">The bundles in it, from the bottom up, in words.</param>
public sealed record PackedParcel(int Number, string Sscc, string Measures, string Mass, string Kind = "", string Bundles = "");
