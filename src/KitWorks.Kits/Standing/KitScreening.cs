using System.Collections.Immutable;
using KitWorks.Statics.Checks;

namespace KitWorks.Kits.Standing;

/// <summary>What the screening of a kit found. It warns; it never certifies.</summary>
public sealed record KitScreening
{
    /// <summary>The load set that it was screened for.</summary>
    public required string LoadSet { get; init; }

    /// <summary>Whether the frame is firm and every check is within its limit, given the stakes. Not a statement that it is safe: see <see cref="Caution"/>.</summary>
    public required bool Passes { get; init; }

    /// <summary>The check that governs; null where nothing was checked.</summary>
    public ScreeningLine? Governing => Checks.FirstOrDefault();

    /// <summary>The share of what is allowed that the governing check leaves: 1 − utilisation, negative where more is asked for; null where nothing was checked.</summary>
    public double? Margin => 1 - Governing?.Utilisation;

    /// <summary>The load table: the worst of each kind of check under each load case, the worst of all first; empty where the frame is loose.</summary>
    public required ImmutableArray<ScreeningLine> Checks { get; init; }

    /// <summary>Stakes needed by all base hubs together, under the worst case for each.</summary>
    public required int StakesNeeded { get; init; }

    /// <summary>Stakes in the kit.</summary>
    public required int StakesInKit { get; init; }

    /// <summary>What is loose, and what a reader should know of how it was computed.</summary>
    public required ImmutableArray<string> Notes { get; init; }

    /// <summary>What this is not.</summary>
    public required string Caution { get; init; }
}

/// <summary>The worst of one kind of check under one load case.</summary>
/// <param name="Kind">What was looked at.</param>
/// <param name="LoadCase">The load case.</param>
/// <param name="LoadedHub">The node that was loaded, where each was in turn; otherwise null.</param>
/// <param name="At">The strut's id, or for a deflection the node's.</param>
/// <param name="StrutType">The strut's type; null for a deflection.</param>
/// <param name="Demand">What the load asks for, in <paramref name="Unit"/>.</param>
/// <param name="Capacity">What is allowed, safety taken off.</param>
/// <param name="Unit">N, MPa or mm.</param>
/// <param name="Utilisation">Demand over capacity: 1 is just allowed.</param>
public sealed record ScreeningLine(
    CheckKind Kind, string LoadCase, int? LoadedHub, int At, string? StrutType, double Demand, double Capacity, string Unit, double Utilisation);

/// <summary>The smallest pipe and tie of the catalog that pass the screening.</summary>
/// <param name="LoadSet">The load set.</param>
/// <param name="StrutStock">The code of the pipe; null where none passes.</param>
/// <param name="Tie">The stock code of the tie; null where none passes.</param>
/// <param name="IsInKit">Whether the kit is made of them.</param>
/// <param name="Reason">Why, in words.</param>
public sealed record Recommendation(string LoadSet, string? StrutStock, string? Tie, bool IsInKit, string Reason);
