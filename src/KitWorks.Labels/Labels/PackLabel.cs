using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace KitWorks.Labels;

/// <summary>The label of one pack of a kit: what every bundle and bag says.</summary>
public abstract record PackLabel : Label
{
    /// <summary>The bundle's code, drawn as Code 128: printable ASCII.</summary>
    public required string Code { get; init; }

    /// <summary>The address of the bundle's page, drawn as a QR code.</summary>
    public required string PageUrl { get; init; }

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

    /// <summary>How many pieces are in it.</summary>
    public int Pieces => Contents.Sum(c => c.Count);

    /// <summary>How much is in it, to be read from afar: <c>×20</c>, <c>83 m²</c>.</summary>
    public string Amount => Contents is [{ Unit.Length: > 0 } only] ? only.Amount : $"×{Pieces}";

    /// <summary>What is in it.</summary>
    public required ImmutableArray<LabelItem> Contents { get; init; }

    /// <summary>Its mass, with its unit.</summary>
    public required string Mass { get; init; }

    /// <summary>What is being built.</summary>
    public string Shelter { get; init; } = "";
}

/// <summary>The label of a bundle of struts, of stakes, or of the cover.</summary>
public sealed record BundleLabel : PackLabel
{
    /// <inheritdoc/>
    public override string Kind => "bundle";

    /// <summary>What it holds, in a word: struts, stakes, cover.</summary>
    public required string What { get; init; }

    /// <summary>The code of the strut type; empty where there is none.</summary>
    public string PieceCode { get; init; } = "";

    /// <summary>What the saw was set to, with its unit; empty where nothing was cut.</summary>
    public string CutLength { get; init; } = "";

    /// <summary>The marker of the strut type.</summary>
    public TagMark Tag { get; init; } = TagMark.None;
}

/// <summary>The label of a bag of hubs.</summary>
public sealed record HubBagLabel : PackLabel
{
    /// <inheritdoc/>
    public override string Kind => "hubs";

    /// <summary>A label to be filled in.</summary>
    public HubBagLabel()
    {
    }

    /// <summary>The label of a bag that is otherwise as another pack.</summary>
    [SetsRequiredMembers]
    public HubBagLabel(PackLabel like) : base(like)
    {
    }
}

/// <summary>The label of a bag of ties.</summary>
public sealed record TieBagLabel : PackLabel
{
    /// <inheritdoc/>
    public override string Kind => "ties";

    /// <summary>A label to be filled in.</summary>
    public TieBagLabel()
    {
    }

    /// <summary>The label of a bag that is otherwise as another pack.</summary>
    [SetsRequiredMembers]
    public TieBagLabel(PackLabel like, int tiesPerEnd, int spares) : base(like) => (TiesPerEnd, Spares) = (tiesPerEnd, spares);

    /// <summary>How many ties hold one strut end.</summary>
    public required int TiesPerEnd { get; init; }

    /// <summary>How many of the pieces are spare.</summary>
    public int Spares { get; init; }
}
