using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Statics;

/// <summary>What a strut is made of and how thick it is; every strut of a structure has the same.</summary>
/// <remarks>Values are checked where a structure is analysed; the fields of a refusal are <c>section/areaMm2</c> and so on.</remarks>
public sealed record Section
{
    /// <summary>Area of the cross-section A, in square millimetres: 0.000001 to 1,000,000.</summary>
    public required double AreaMm2 { get; init; }

    /// <summary>Least second moment of area I, in mm⁴: 0.000001 to 1e12.</summary>
    public required double SecondMomentMm4 { get; init; }

    /// <summary>Young's modulus E for a brief load, in megapascals (N/mm²): 0.000001 to 1,000,000.</summary>
    public required double ModulusMPa { get; init; }

    /// <summary>Young's modulus under a load that stays for months, in megapascals: 0.000001 to <see cref="ModulusMPa"/>. Null where the material does not creep.</summary>
    public double? LongTermModulusMPa { get; init; }

    /// <summary>Mass of one metre of strut, in kilograms: 0 to 1,000. Null where it is not known; then there is no self-weight.</summary>
    public double? MassKgPerM { get; init; }

    /// <summary>The stress at which the material yields or breaks, in megapascals: 0.000001 to 10,000. Null leaves the stress unchecked.</summary>
    public double? StrengthMPa { get; init; }

    /// <summary>
    /// The section of a round tube: A = π(D² − d²)/4, I = π(D⁴ − d⁴)/64, d = D − 2t (any mechanics handbook). A wall of half the diameter is a solid rod.
    /// </summary>
    /// <param name="outsideDiameterMm">Outside diameter D in millimetres: above 0, to 1,000.</param>
    /// <param name="wallMm">Wall t in millimetres: above 0, to D/2.</param>
    /// <param name="modulusMPa">Young's modulus in megapascals.</param>
    public static Outcome<Section> Tube(double outsideDiameterMm, double wallMm, double modulusMPa)
    {
        if (!(outsideDiameterMm is > 0 and <= 1000))
            return Refusal.OfField(Code, "outsideDiameterMm", $"An outside diameter is above 0 and at most 1,000 mm, not {outsideDiameterMm}.");
        if (!(wallMm > 0 && wallMm <= outsideDiameterMm / 2))
            return Refusal.OfField(Code, "wallMm", $"A wall is above 0 and at most half the outside diameter ({outsideDiameterMm / 2} mm), not {wallMm}.");
        var (outer, inner) = (Math.Pow(outsideDiameterMm, 2), Math.Pow(outsideDiameterMm - 2 * wallMm, 2));
        return new Section
        {
            AreaMm2 = Math.PI * (outer - inner) / 4,
            SecondMomentMm4 = Math.PI * (outer * outer - inner * inner) / 64,
            ModulusMPa = modulusMPa,
        };
    }

    const string Code = "statics.section-invalid";

    /// <summary>The refusal of this section, its fields under <c>section/</c>; null where every value is in range.</summary>
    internal Refusal? Fault()
    {
        ImmutableArray<FieldError> errors =
        [
            .. Above0("areaMm2", AreaMm2, 1e6, "mm²"),
            .. Above0("secondMomentMm4", SecondMomentMm4, 1e12, "mm⁴"),
            .. Above0("modulusMPa", ModulusMPa, 1e6, "MPa"),
            .. LongTermModulusMPa is { } e ? Above0("longTermModulusMPa", e, ModulusMPa is >= Least and <= 1e6 ? ModulusMPa : 1e6, "MPa") : [],
            .. MassKgPerM is { } m and not (>= 0 and <= 1000) ? [new("massKgPerM", $"A mass is 0 to 1,000 kg/m, not {m}.")] : Array.Empty<FieldError>(),
            .. StrengthMPa is { } s ? Above0("strengthMPa", s, 1e4, "MPa") : [],
        ];
        return errors.IsEmpty ? null : (new Refusal(RefusalKind.Impossible, Code, errors[0].Detail) { Errors = errors }).Under("section");
    }

    /// <summary>Less is no strut, and would only bring numbers too small to compute with.</summary>
    const double Least = 1e-6;

    static FieldError[] Above0(string field, double value, double most, string unit) => value >= Least && value <= most
        ? []
        : [new(field, $"A value of {Least:0.000000} to {most:#,0} {unit} is needed, not {value}.")];

    /// <summary>Euler's load of a strut, π²·E·I/(K·L)², in newtons (L. Euler 1744; any mechanics handbook).</summary>
    /// <param name="lengthMm">The strut's length L between node centres, in millimetres.</param>
    /// <param name="effectiveLengthFactor">K: 1 for hinged ends, 0.5 for clamped ones.</param>
    /// <param name="longTerm">Whether <see cref="LongTermModulusMPa"/> is taken, where there is one.</param>
    public double EulerLoadN(double lengthMm, double effectiveLengthFactor = 1, bool longTerm = false) =>
        Math.PI * Math.PI * Modulus(longTerm) * SecondMomentMm4 / Math.Pow(effectiveLengthFactor * lengthMm, 2);

    internal double Modulus(bool longTerm) => longTerm ? LongTermModulusMPa ?? ModulusMPa : ModulusMPa;
}
