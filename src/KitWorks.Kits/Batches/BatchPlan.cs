using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Cutting;

namespace KitWorks.Kits.Batches;

/// <summary>An order whose pipe is cut in a batch.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Quantity">How many kits.</param>
/// <param name="Kit">The kit.</param>
public sealed record BatchOrder(int Number, int Quantity, Kit Kit);

/// <summary>Struts of one length that lie ready cut.</summary>
/// <param name="PipeSku">The stock code of the pipe they were cut from.</param>
/// <param name="CutLength">Their length.</param>
/// <param name="Count">How many.</param>
public sealed record CutStruts(string PipeSku, Length CutLength, int Count);

/// <summary>An offcut in stock, with its own label.</summary>
/// <param name="Code">The code on its label.</param>
/// <param name="PipeSku">The stock code of the pipe it was cut from.</param>
/// <param name="Length">Its length.</param>
public sealed record LabelledRemnant(string Code, string PipeSku, Length Length);

/// <summary>How the pipe of several orders is cut as one.</summary>
/// <param name="Pipes">The pipes, by stock code.</param>
/// <param name="Kerf">The width of the saw cut that it reckons with.</param>
public sealed record BatchPlan(ImmutableArray<PipePlan> Pipes, Length Kerf);

/// <summary>How one pipe is cut in a batch.</summary>
public sealed record PipePlan
{
    /// <summary>The stock code of one length.</summary>
    public required string PipeSku { get; init; }

    /// <summary>The lengths that are needed, from the shortest.</summary>
    public required ImmutableArray<BatchPiece> Pieces { get; init; }

    /// <summary>The cut plan; null where everything lies ready cut.</summary>
    public CutPlan? CutPlan { get; init; }

    /// <summary>The patterns of the cut plan, with numbers that go on through the batch.</summary>
    public required ImmutableArray<BatchPattern> Patterns { get; init; }

    /// <summary>New lengths that the batch takes.</summary>
    public required int Lengths { get; init; }

    /// <summary>New lengths that the orders take when each kit is cut for itself.</summary>
    public required int LengthsApart { get; init; }

    /// <summary>The wasted millimetres of the batch: sawdust and ends too short to keep.</summary>
    public required long WasteMm { get; init; }

    /// <summary>The same where each kit is cut for itself.</summary>
    public required long WasteMmApart { get; init; }
}

/// <summary>Struts of one cut length in a batch, and where each goes.</summary>
/// <param name="Code">L1 for the shortest of the first pipe, then L2 and so on through the batch.</param>
/// <param name="CutLength">What the saw is set to.</param>
/// <param name="Picked">How many lie ready cut and are picked.</param>
/// <param name="Cut">How many are cut.</param>
/// <param name="Goes">Where they go, in this order; those picked go first.</param>
public sealed record BatchPiece(string Code, Length CutLength, int Picked, int Cut, ImmutableArray<StrutDestination> Goes);

/// <summary>A bundle that struts go into.</summary>
/// <param name="Order">The order's number.</param>
/// <param name="Bundle">The bundle's place among the order's bundles, from 1.</param>
/// <param name="StrutCode">The strut type there.</param>
/// <param name="Tag">How the struts are tagged there.</param>
/// <param name="Count">How many.</param>
public sealed record StrutDestination(int Order, int Bundle, string StrutCode, Tag Tag, int Count);

/// <summary>One way of cutting one length of pipe, in a batch.</summary>
/// <param name="Number">Its number in the batch, from 1.</param>
/// <param name="Pattern">The pattern.</param>
/// <param name="Remnants">The codes of the remnants it is cut from, one for each time; empty for new lengths.</param>
public sealed record BatchPattern(int Number, CutPattern Pattern, ImmutableArray<string> Remnants);
