namespace KitWorks.Labels;

/// <summary>The label of a bin.</summary>
public sealed record BinLabel : Label
{
    /// <inheritdoc/>
    public override string Kind => "bin";

    /// <summary>Where the bin is, as it is said: <c>A-03-2</c>.</summary>
    public required string Bin { get; init; }

    /// <summary>The bin's code, drawn as Code 128: printable ASCII.</summary>
    public required string Code { get; init; }

    /// <summary>The stock code of what lies in it; empty where that changes.</summary>
    public string Sku { get; init; } = "";

    /// <summary>Its name for people.</summary>
    public string Description { get; init; } = "";

    /// <summary>What it is counted in.</summary>
    public string Unit { get; init; } = "";
}

/// <summary>The label of an offcut worth keeping.</summary>
public sealed record RemnantLabel : Label
{
    /// <inheritdoc/>
    public override string Kind => "remnant";

    /// <summary>The remnant's code, drawn as Code 128: printable ASCII.</summary>
    public required string Code { get; init; }

    /// <summary>Its length, with its unit.</summary>
    public required string Length { get; init; }

    /// <summary>The stock code of the length it was cut from.</summary>
    public required string Sku { get; init; }

    /// <summary>Its name for people.</summary>
    public required string Description { get; init; }

    /// <summary>The bin it goes to; empty where it has none yet.</summary>
    public string Bin { get; init; } = "";
}
