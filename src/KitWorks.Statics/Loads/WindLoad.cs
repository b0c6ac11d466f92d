using KitWorks.Geometry;

namespace KitWorks.Statics.Loads;

/// <summary>
/// Wind as pressure by zone. Velocity pressure q = 0.613·Kz·Kzt·Kd·Ke·V² in pascals; on a panel p = q·(G·Cp − GCpi), positive inward: the form of ASCE 7, chapters 26 and 27.
/// Cp goes from the windward edge by the crown to the lee edge, straight along the arc, the same all across the wind.
/// Every factor is an input; the defaults are rounded assumptions for a dome on open, flat ground, not a transcript of that standard: read yours from it.
/// </summary>
public sealed record WindLoad
{
    /// <summary>Basic wind speed V (a gust of three seconds), in metres a second: 0 to 120. The local code gives it.</summary>
    public required double SpeedMPerS { get; init; }

    /// <summary>Exposure and height Kz: 0 to 3; 0.85 by default, open ground up to 4.6 m.</summary>
    public double Exposure { get; init; } = 0.85;

    /// <summary>Hills Kzt: 0 to 5; 1 by default, flat.</summary>
    public double Topography { get; init; } = 1;

    /// <summary>Direction Kd: 0 to 1; 1 by default, a round shelter.</summary>
    public double Directionality { get; init; } = 1;

    /// <summary>Elevation Ke: 0 to 1.5; 1 by default, sea level.</summary>
    public double Elevation { get; init; } = 1;

    /// <summary>Gust G: 0 to 3; 0.85 by default, a stiff frame.</summary>
    public double Gust { get; init; } = 0.85;

    /// <summary>Cp at the windward edge: −5 to 5; 0.8 by default, an assumption.</summary>
    public double WindwardCp { get; init; } = 0.8;

    /// <summary>Cp at the crown: −5 to 5; −1.2 by default, an assumption.</summary>
    public double CrownCp { get; init; } = -1.2;

    /// <summary>Cp at the lee edge: −5 to 5; −0.5 by default, an assumption.</summary>
    public double LeeCp { get; init; } = -0.5;

    /// <summary>Inside pressure GCpi, taken outward and inward in turn: 0 to 2; 0.18 by default, a shelter that is shut. A door that blows open makes it 0.55.</summary>
    public double InsideCp { get; init; } = 0.18;

    /// <summary>Velocity pressure q in pascals.</summary>
    public double VelocityPressurePa => 0.613 * Exposure * Topography * Directionality * Elevation * SpeedMPerS * SpeedMPerS;

    /// <summary>The wind's forces on the cover.</summary>
    /// <param name="model">The structure.</param>
    /// <param name="towardsDeg">The direction that the wind blows to, in degrees from x towards y: −360 to 360.</param>
    /// <param name="inflated">Whether the inside pressure pushes outward; otherwise it pulls inward.</param>
    /// <returns>A brief load, or a refusal with fields such as <c>wind/speedMPerS</c>.</returns>
    public Outcome<LoadCase> On(TrussModel model, double towardsDeg, bool inflated)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (Range.Fault(("wind/speedMPerS", SpeedMPerS, 0, 120), ("wind/exposure", Exposure, 0, 3), ("wind/topography", Topography, 0, 5),
            ("wind/directionality", Directionality, 0, 1), ("wind/elevation", Elevation, 0, 1.5), ("wind/gust", Gust, 0, 3),
            ("wind/windwardCp", WindwardCp, -5, 5), ("wind/crownCp", CrownCp, -5, 5), ("wind/leeCp", LeeCp, -5, 5),
            ("wind/insideCp", InsideCp, 0, 2), ("wind/towardsDeg", towardsDeg, -360, 360)) is { } refusal)
            return refusal;
        var plan = new Plan(model, towardsDeg);
        var inside = inflated ? InsideCp : -InsideCp;
        var loads = PanelForces.ToNodes(model, face => face.Outward * (-VelocityPressurePa * (Gust * Cp(plan.Along(face.Middle)) - inside) * face.AreaM2));
        return new LoadCase(inflated ? "wind, inflating" : "wind, pressing", LoadDuration.Brief, [.. loads]);
    }

    /// <summary>Cp at a place along the wind, −1 to 1; the arc over it is taken as half a circle, t = acos(−s)/π of the way along.</summary>
    double Cp(double along)
    {
        var t = Math.Acos(-along) / Math.PI;
        return t < 0.5 ? WindwardCp + (CrownCp - WindwardCp) * 2 * t : CrownCp + (LeeCp - CrownCp) * (2 * t - 1);
    }
}
