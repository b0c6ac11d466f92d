using System.Collections.Immutable;

namespace KitWorks.Labels;

/// <summary>What is printed on one label. Its properties are the placeholders of its templates, in snake case: <c>{{ tier_name }}</c>.</summary>
public abstract record Label
{
    /// <summary>The kind of label: the first word of the names of its templates, <c>bundle</c> for <c>bundle-100x150.svg</c>.</summary>
    public abstract string Kind { get; }

    /// <summary>A web address as it is printed: the scheme left out.</summary>
    private protected static string WithoutScheme(string url) =>
        url.IndexOf("://", StringComparison.Ordinal) is var at and >= 0 ? url[(at + 3)..] : url;
}

/// <summary>The label of one bundle of a kit.</summary>
public sealed record BundleLabel : Label
{
    /// <inheritdoc/>
    public override string Kind => "bundle";

    /// <summary>The bundle's code, drawn as Code 128: printable ASCII.</summary>
    public required string Code { get; init; }

    /// <summary>The address of the bundle's page, drawn as a QR code.</summary>
    public required string PageUrl { get; init; }

    /// <summary>The address as it is printed.</summary>
    public string PageAddress => WithoutScheme(PageUrl);

    /// <summary>The order's number.</summary>
    public required string Order { get; init; }

    /// <summary>Which kit of the order, from 1.</summary>
    public int Kit { get; init; } = 1;

    /// <summary>How many kits the order has.</summary>
    public int Kits { get; init; } = 1;

    /// <summary>Which bundle of the kit, from 1.</summary>
    public required int Bundle { get; init; }

    /// <summary>How many bundles the kit has.</summary>
    public required int Bundles { get; init; }

    /// <summary>The tier it is for; 0 is the foundation.</summary>
    public required int Tier { get; init; }

    /// <summary>The tier's name.</summary>
    public required string TierName { get; init; }

    /// <summary>What it holds, in a word: struts, hubs, ties.</summary>
    public required string What { get; init; }

    /// <summary>The code of the strut type; empty where there is none.</summary>
    public string PieceCode { get; init; } = "";

    /// <summary>What the saw was set to, with its unit; empty where nothing was cut.</summary>
    public string CutLength { get; init; } = "";

    /// <summary>The marker of the strut type.</summary>
    public TagMark Tag { get; init; } = TagMark.None;

    /// <summary>How many pieces are in it.</summary>
    public int Pieces => Contents.Sum(c => c.Count);

    /// <summary>What is in it.</summary>
    public required ImmutableArray<LabelItem> Contents { get; init; }

    /// <summary>Its mass, with its unit.</summary>
    public required string Mass { get; init; }

    /// <summary>What is being built.</summary>
    public string Shelter { get; init; } = "";

    /// <summary>The shop's name.</summary>
    public string Shop { get; init; } = "";
}

/// <summary>Pieces of one sort on a label.</summary>
/// <param name="Code">Their code or SKU.</param>
/// <param name="Description">Their name for people.</param>
/// <param name="Count">How many.</param>
public sealed record LabelItem(string Code, string Description, int Count);

/// <summary>The marker of a strut type as it is printed: colour and bands, and both in words for a black-and-white printer.</summary>
/// <param name="Colour">The colour's name.</param>
/// <param name="Hex">The colour: #RRGGBB.</param>
/// <param name="Bands">How many bands; 0 for no marker.</param>
public sealed record TagMark(string Colour, string Hex, int Bands)
{
    /// <summary>No marker.</summary>
    public static TagMark None { get; } = new("", "", 0);

    /// <summary>Colour and bands in words.</summary>
    public string Words => Bands switch { 0 => "", 1 => $"{Colour}, 1 band", _ => $"{Colour}, {Bands} bands" };
}
