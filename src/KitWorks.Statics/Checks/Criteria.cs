using KitWorks.Geometry;
using KitWorks.Statics.Loads;

namespace KitWorks.Statics.Checks;

/// <summary>What a shelter's struts, ties, shape and stakes are held to. Every factor has a default, which is stated; all are assumptions of a screening.</summary>
public sealed record Criteria
{
    /// <summary>Effective length factor K in Euler's load: 0.5 to 2; 1 by default, hinged ends.</summary>
    public double EffectiveLengthFactor { get; init; } = 1;

    /// <summary>Safety on Euler's load: 1 to 10; 2 by default.</summary>
    public double BucklingSafety { get; init; } = 2;

    /// <summary>Rated strength of one tie, in newtons: 0.001 to 1e6. Null leaves the ties unchecked.</summary>
    public double? TieRatedN { get; init; }

    /// <summary>Ties that share the pull of one strut end: 1 to 10; 1 by default.</summary>
    public int TiesPerEnd { get; init; } = 1;

    /// <summary>Safety on a tie's rating: 1 to 10; 2 by default.</summary>
    public double TieSafety { get; init; } = 2;

    /// <summary>Safety on the section's strength: 1 to 10; 2 by default.</summary>
    public double StressSafety { get; init; } = 2;

    /// <summary>The share of a short-term strength, of ties and of struts, that a lasting load may use: 0.01 to 1; 0.5 by default, for plastics.</summary>
    public double LastingShare { get; init; } = 0.5;

    /// <summary>The lesser extent of the plan over the largest displacement allowed: 1 to 10,000; 180 by default.</summary>
    public double SpanOverDeflection { get; init; } = 180;

    /// <summary>The pull along itself that one stake holds, in newtons: 0.001 to 1e6; 500 by default. Ground differs: pull one to know.</summary>
    public double StakePullN { get; init; } = 500;

    /// <summary>The push across itself that one stake holds, in newtons: 0.001 to 1e6; 500 by default.</summary>
    public double StakeSideN { get; init; } = 500;

    /// <summary>Safety on stakes: 1 to 10; 1.5 by default.</summary>
    public double StakeSafety { get; init; } = 1.5;

    /// <summary>Friction between a base hub and the ground: 0 to 2; 0.3 by default.</summary>
    public double Friction { get; init; } = 0.3;

    internal Refusal? Fault() => Loads.Range.Fault(
        ("criteria/effectiveLengthFactor", EffectiveLengthFactor, 0.5, 2), ("criteria/bucklingSafety", BucklingSafety, 1, 10),
        ("criteria/tieRatedN", TieRatedN, 0.001, 1e6), ("criteria/tiesPerEnd", TiesPerEnd, 1, 10), ("criteria/tieSafety", TieSafety, 1, 10),
        ("criteria/stressSafety", StressSafety, 1, 10), ("criteria/lastingShare", LastingShare, 0.01, 1),
        ("criteria/spanOverDeflection", SpanOverDeflection, 1, 10_000), ("criteria/stakePullN", StakePullN, 0.001, 1e6),
        ("criteria/stakeSideN", StakeSideN, 0.001, 1e6), ("criteria/stakeSafety", StakeSafety, 1, 10), ("criteria/friction", Friction, 0, 2));

    /// <summary>The pull that the ties of one strut end may bear, in newtons: rating · ties / safety, less for a lasting load; null where ties are unchecked.</summary>
    public double? TieLimitN(LoadDuration duration) => TieRatedN * TiesPerEnd / TieSafety * Share(duration);

    internal double Share(LoadDuration duration) => duration switch { LoadDuration.Brief => 1, LoadDuration.Lasting => LastingShare };

    /// <summary>Stakes that a base hub needs: safety · (uplift / pull + sideways push beyond friction / side), rounded up.</summary>
    /// <param name="upliftN">The pull up, in newtons: 0 or more.</param>
    /// <param name="slidingN">The push sideways beyond friction, in newtons: 0 or more.</param>
    public int Stakes(double upliftN, double slidingN) =>
        // A thousandth of a newton is rounding, not a stake.
        upliftN + slidingN < 0.001 ? 0 : (int)Math.Ceiling(StakeSafety * (upliftN / StakePullN + slidingN / StakeSideN));
}
