using System.Collections.Immutable;

namespace KitWorks.Labels;

/// <summary>The label of one parcel, as the carrier reads it: a GS1-128 of its SSCC, and where it goes.</summary>
public sealed record ParcelLabel : Label
{
    /// <inheritdoc/>
    public override string Kind => "parcel";

    /// <summary>The parcel's serial shipping container code.</summary>
    public required Sscc Sscc { get; init; }

    /// <summary>The element string to encode: application identifier 00 and the SSCC.</summary>
    public string SsccElement => "00" + Sscc;

    /// <summary>The element string as it is printed below its bars.</summary>
    public string SsccWords => "(00) " + Sscc;

    /// <summary>Who gets it, on lines of their own.</summary>
    public required string To { get; init; }

    /// <summary>Who sends it, on lines of their own.</summary>
    public required string From { get; init; }

    /// <summary>The order's number.</summary>
    public required string Order { get; init; }

    /// <summary>The customer's own reference; empty for none.</summary>
    public string Reference { get; init; } = "";

    /// <summary>Which parcel of the order, from 1.</summary>
    public required int Parcel { get; init; }

    /// <summary>How many parcels the order has.</summary>
    public required int Parcels { get; init; }

    /// <summary>Its mass, with its unit.</summary>
    public required string Mass { get; init; }

    /// <summary>Its outer measures, with their unit; empty where not known.</summary>
    public string Measures { get; init; } = "";

    /// <summary>The carrier's name; empty where not known.</summary>
    public string Carrier { get; init; } = "";

    /// <summary>The codes of the bundles in it.</summary>
    public ImmutableArray<string> Bundles { get; init; } = [];
}
