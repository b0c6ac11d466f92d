using System.Collections.Immutable;
using System.Globalization;

namespace KitWorks.Labels;

/// <summary>What to take from stock for an order, in the order in which one walks past the bins.</summary>
public sealed record Picklist : Paper
{
    /// <summary>The code that the bench scans to start, drawn as Code 128; empty for none.</summary>
    public string Code { get; init; } = "";

    /// <summary>What is being built, and how often.</summary>
    public required string Shelter { get; init; }

    /// <summary>Who it is for; empty where that is not said.</summary>
    public string Customer { get; init; } = "";

    /// <summary>What to take.</summary>
    public required ImmutableArray<PickLine> Lines { get; init; }

    /// <summary>The lines by bin path, numbers in it by their value: A-2 before A-10. Lines without a bin come last.</summary>
    public IReadOnlyList<PickLine> Path => [.. Lines.OrderBy(l => l.Bin.Length == 0).ThenBy(l => BinPath.Key(l.Bin), StringComparer.Ordinal).ThenBy(l => l.Tier).ThenBy(l => l.Sku, StringComparer.Ordinal)];

    /// <summary>The same a stop at a time: everything of one sort from one bin, and what of it goes to which tier.</summary>
    public IReadOnlyList<PickStop> Stops => [.. Path.GroupBy(l => (l.Bin, l.Sku, l.Description, l.Unit, l.Tag)).SelectMany(g => g.Chunk(PickStop.MostParts)
        .Select((lines, i) => new PickStop(g.Key.Bin, g.Key.Sku, g.Key.Description, g.Key.Unit, i == 0 ? PickStop.Words(g.Sum(l => l.Quantity)) : "…", g.Key.Tag, lines)))];

    /// <summary>What the shop must know of the kit before it packs it, with the figures; empty where there is nothing.</summary>
    public ImmutableArray<string> Warnings { get; init; } = [];

    internal override IEnumerable<PaperSection> Sections => Warnings.IsEmpty ? [new("picklist", this)] : [new("picklist", this), new("picklist-notes", this)];
}

/// <summary>One line of a picklist.</summary>
/// <param name="Bin">The bin; empty where the item has none.</param>
/// <param name="Sku">The stock code.</param>
/// <param name="Description">The item's name for people.</param>
/// <param name="Quantity">How many to take.</param>
/// <param name="Unit">Of what: pieces, lengths, m².</param>
/// <param name="Tier">The tier it is for.</param>
/// <param name="Tag">The marker of the strut type.</param>
public sealed record PickLine(string Bin, string Sku, string Description, int Quantity, string Unit, int Tier, TagMark Tag)
{
    /// <summary>The quantity with its thousands set apart.</summary>
    public string QuantityWords => PickStop.Words(Quantity);
}

/// <summary>What to take at one bin.</summary>
/// <param name="Bin">The bin; empty where the item has none.</param>
/// <param name="Sku">The stock code.</param>
/// <param name="Description">The item's name for people.</param>
/// <param name="Unit">Of what: pieces, lengths, m².</param>
/// <param name="Take">How many in all; three dots where an earlier stop said it.</param>
/// <param name="Tag">The marker of the strut type.</param>
/// <param name="Parts">What of it goes to which tier.</param>
public sealed record PickStop(string Bin, string Sku, string Description, string Unit, string Take, TagMark Tag, IReadOnlyList<PickLine> Parts)
{
    internal const int MostParts = 8;

    internal static string Words(int quantity) => quantity.ToString("# ##0", CultureInfo.InvariantCulture).Trim();
}
