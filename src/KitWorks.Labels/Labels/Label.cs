namespace KitWorks.Labels;

/// <summary>What is printed on one label. Its properties are the placeholders of its templates, in snake case: <c>{{ tier_name }}</c>.</summary>
public abstract record Label
{
    /// <summary>The kind of label: the first word of the names of its templates, <c>bundle</c> for <c>bundle-100x150.svg</c>.</summary>
    public abstract string Kind { get; }

    /// <summary>The shop's name.</summary>
    public string Shop { get; init; } = "";
}

/// <summary>Pieces of one sort on a label.</summary>
/// <param name="Code">Their code or SKU.</param>
/// <param name="Description">Their name for people.</param>
/// <param name="Count">How many.</param>
/// <param name="Unit">Of what: <c>m²</c>; empty for pieces.</param>
public sealed record LabelItem(string Code, string Description, int Count, string Unit = "")
{
    /// <summary>How many, as it stands before a name.</summary>
    public string Amount => Unit.Length == 0 ? $"{Count} ×" : $"{Count} {Unit}";
}

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
