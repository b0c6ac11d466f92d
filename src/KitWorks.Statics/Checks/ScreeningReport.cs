using System.Collections.Immutable;

namespace KitWorks.Statics.Checks;

/// <summary>What a check looks at.</summary>
public enum CheckKind
{
    /// <summary>The compression of a strut against Euler's load, in newtons.</summary>
    Buckling,

    /// <summary>The tension of a strut against what its ties hold, in newtons.</summary>
    TieTension,

    /// <summary>The axial stress of a strut against its strength, in megapascals.</summary>
    Stress,

    /// <summary>The displacement of a hub against a share of the span, in millimetres.</summary>
    Deflection,
}

/// <summary>The worst of one kind of check under the load cases of one name.</summary>
/// <param name="Kind">What was looked at.</param>
/// <param name="LoadCase">The name of the load case.</param>
/// <param name="LoadedHub">The hub that was loaded, where each was in turn; otherwise null.</param>
/// <param name="At">The strut that governs, or for <see cref="CheckKind.Deflection"/> the hub.</param>
/// <param name="Demand">What the load asks for, in the kind's unit; 0 or more.</param>
/// <param name="Capacity">What is allowed, safety taken off, in the kind's unit.</param>
public sealed record Check(CheckKind Kind, string LoadCase, int? LoadedHub, int At, double Demand, double Capacity)
{
    /// <summary>Demand over capacity: 1 is just allowed.</summary>
    public double Utilisation => Demand / Capacity;

    /// <summary>Whether the demand is within the capacity.</summary>
    public bool Passes => Utilisation <= 1;
}

/// <summary>What one base hub needs to stay where it is, under the worst case for it.</summary>
/// <param name="Node">The base hub's node.</param>
/// <param name="UpliftN">The pull up, in newtons; 0 where it stands by its weight.</param>
/// <param name="SlidingN">The push sideways beyond friction, in newtons.</param>
/// <param name="Stakes">Stakes needed.</param>
/// <param name="LoadCase">The case that asks for most; null where none asks for a stake.</param>
public sealed record Anchor(int Node, double UpliftN, double SlidingN, int Stakes, string? LoadCase);

/// <summary>What a screening found. It warns; it never certifies.</summary>
public sealed record ScreeningReport
{
    /// <summary>The ways in which the frame is loose; where there is one, nothing else was looked at.</summary>
    public ImmutableArray<Mechanism> Mechanisms { get; init; } = [];

    /// <summary>The worst of each kind under each named case, the worst of all first.</summary>
    public ImmutableArray<Check> Checks { get; init; } = [];

    /// <summary>One entry a base hub, by node.</summary>
    public ImmutableArray<Anchor> Anchors { get; init; } = [];

    /// <summary>What a reader should know of how it was computed.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>The check that governs; null where there is none.</summary>
    public Check? Governing => Checks.FirstOrDefault();

    /// <summary>Stakes needed by all base hubs together.</summary>
    public int Stakes => Anchors.Sum(a => a.Stakes);

    /// <summary>Whether the frame is firm and every check passes, given the stakes.</summary>
    public bool Passes => Mechanisms.IsEmpty && Checks.All(c => c.Passes);

    /// <inheritdoc cref="Truss.Caution"/>
    public string Caution { get; } = Truss.Caution;
}
