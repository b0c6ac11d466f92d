namespace KitWorks.Labels;

/// <summary>The sheets that papers are printed on. Templates of papers fit both.</summary>
public enum PaperSize
{
    /// <summary>210 × 297 mm.</summary>
    A4,

    /// <summary>8.5 × 11 in.</summary>
    Letter,
}

/// <summary>A document of pages. Its properties are the placeholders of its templates, in snake case.</summary>
public abstract record Paper
{
    /// <summary>The shop's name.</summary>
    public string Shop { get; init; } = "";

    /// <summary>The order's number.</summary>
    public required string Order { get; init; }

    /// <summary>The parts of the document, each on pages of its own.</summary>
    internal abstract IEnumerable<PaperSection> Sections { get; }
}

/// <summary>Pages of one template.</summary>
/// <param name="Kind">The template's kind.</param>
/// <param name="Values">What its placeholders name.</param>
sealed record PaperSection(string Kind, object Values);

/// <summary>Where a page stands in its document.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Count">How many pages there are.</param>
/// <param name="Goes">Which page of its section this is, from 1.</param>
sealed record PageMark(int Number, int Count, int Goes);
