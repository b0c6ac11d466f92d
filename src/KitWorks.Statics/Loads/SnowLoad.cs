using KitWorks.Geometry;

namespace KitWorks.Statics.Loads;

/// <summary>
/// Snow as a weight for each square metre of plan: p = Cs · roofShare · Ce · Ct · Is · pg, the form of ASCE 7, chapter 7. Every factor is an input;
/// the defaults are an assumption for an unheated shelter in ordinary ground, not a transcript of that standard.
/// </summary>
public sealed record SnowLoad
{
    /// <summary>Ground snow pg, in pascals (N/m²): 0 to 50,000. The local code gives it.</summary>
    public required double GroundPa { get; init; }

    /// <summary>Snow on a flat roof over snow on the ground: 0 to 2; 0.7 by default.</summary>
    public double RoofShare { get; init; } = 0.7;

    /// <summary>Exposure Ce: 0 to 2; 1 by default, partly exposed.</summary>
    public double Exposure { get; init; } = 1;

    /// <summary>Thermal factor Ct: 0 to 2; 1.2 by default, unheated.</summary>
    public double Thermal { get; init; } = 1.2;

    /// <summary>Importance Is: 0 to 2; 1 by default.</summary>
    public double Importance { get; init; } = 1;

    /// <summary>The steepest slope that still holds all its snow, in degrees: 0 to 90; 45 by default. From there Cs falls in a straight line.</summary>
    public double FullSlopeDeg { get; init; } = 45;

    /// <summary>The slope that holds none, in degrees: 0 to 90; 70 by default.</summary>
    public double BareSlopeDeg { get; init; } = 70;

    /// <summary>One-sided: the share of the balanced load on the lee side: 0 to 5; 1.5 by default, for drifting.</summary>
    public double LeeShare { get; init; } = 1.5;

    /// <summary>One-sided: the share of the balanced load on the windward side: 0 to 5; 0 by default.</summary>
    public double WindwardShare { get; init; }

    /// <summary>The same snow all over.</summary>
    /// <returns>A lasting load, or a refusal with fields such as <c>snow/groundPa</c>.</returns>
    public Outcome<LoadCase> Balanced(TrussModel model) => On(model, "snow, balanced", _ => 1);

    /// <summary>Snow blown to one side: one share on the lee half of the plan, another on the windward half.</summary>
    /// <param name="model">The structure.</param>
    /// <param name="towardsDeg">The direction that the wind blows to, in degrees from x towards y: −360 to 360.</param>
    public Outcome<LoadCase> OneSided(TrussModel model, double towardsDeg)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (Range.Fault(("snow/towardsDeg", towardsDeg, -360, 360)) is { } refusal) return refusal;
        var plan = new Plan(model, towardsDeg);
        return On(model, "snow, one-sided", face => plan.Along(face.Middle) is var s && s > 0 ? LeeShare : s < 0 ? WindwardShare : (LeeShare + WindwardShare) / 2);
    }

    Outcome<LoadCase> On(TrussModel model, string name, Func<PanelFace, double> share)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (Range.Fault(("snow/groundPa", GroundPa, 0, 50_000), ("snow/roofShare", RoofShare, 0, 2), ("snow/exposure", Exposure, 0, 2),
            ("snow/thermal", Thermal, 0, 2), ("snow/importance", Importance, 0, 2), ("snow/fullSlopeDeg", FullSlopeDeg, 0, 90),
            ("snow/bareSlopeDeg", BareSlopeDeg, FullSlopeDeg, 90), ("snow/leeShare", LeeShare, 0, 5),
            ("snow/windwardShare", WindwardShare, 0, 5)) is { } refusal)
            return refusal;
        var flatPa = RoofShare * Exposure * Thermal * Importance * GroundPa;
        // A sloping panel gathers what falls on its plan: its area times the cosine of its slope.
        var loads = PanelForces.ToNodes(model, face => new(0, 0, -flatPa * share(face) * SlopeFactor(face.SlopeDeg) * face.AreaM2 * Math.Max(0, face.Outward.Z)));
        return new LoadCase(name, LoadDuration.Lasting, [.. loads]);
    }

    /// <summary>Cs: 1 up to <see cref="FullSlopeDeg"/>, 0 from <see cref="BareSlopeDeg"/>, straight between.</summary>
    double SlopeFactor(double slopeDeg) => slopeDeg <= FullSlopeDeg ? 1 : slopeDeg >= BareSlopeDeg ? 0 : (BareSlopeDeg - slopeDeg) / (BareSlopeDeg - FullSlopeDeg);
}
