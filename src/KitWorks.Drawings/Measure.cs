using System.Globalization;

namespace KitWorks.Drawings;

/// <summary>Writes measures in the reader's units, halves away from zero.</summary>
public static class Measure
{
    const double MmPerInch = 25.4;

    /// <summary>A measure of the whole: metres to the centimetre, or feet and inches to a quarter inch.</summary>
    public static string Whole(double mm, Units units) => units switch
    {
        Units.Metric => Number(mm / 1000, "0.00") + " m",
        Units.FeetAndInches => FeetAndInches(mm, 4),
    };

    /// <summary>A measure of a part: tenths of a millimetre, or feet and inches to 1/32 inch.</summary>
    public static string Part(double mm, Units units) => units switch
    {
        Units.Metric => Number(mm, "0.0") + " mm",
        Units.FeetAndInches => FeetAndInches(mm, 32),
    };

    /// <summary>A measure read off a tape on the ground: millimetres, or feet and inches to 1/8 inch.</summary>
    public static string Tape(double mm, Units units) => units switch
    {
        Units.Metric => Number(mm, "0"),
        Units.FeetAndInches => FeetAndInches(mm, 8),
    };

    /// <summary>An area: square metres to a tenth, or whole square feet.</summary>
    public static string Area(double m2, Units units) => units switch
    {
        Units.Metric => Number(m2, "0.0") + " m²",
        Units.FeetAndInches => Number(m2 * 1e6 / (MmPerInch * MmPerInch * 144), "0") + " sq ft",
    };

    static string FeetAndInches(double mm, int parts)
    {
        var total = (long)Math.Round(Math.Abs(mm) / MmPerInch * parts, MidpointRounding.AwayFromZero);
        var (inches, fraction) = Math.DivRem(total, parts);
        var (feet, rest) = Math.DivRem(inches, 12);
        var sign = mm < 0 && total > 0 ? "-" : "";
        var tail = fraction == 0 ? "" : Fraction(fraction, parts);
        if (feet == 0) return sign + (tail.Length == 0 ? $"{rest}\"" : rest == 0 ? $"{tail}\"" : $"{rest} {tail}\"");
        return sign + (tail.Length == 0 ? $"{feet}' {rest}\"" : $"{feet}' {rest} {tail}\"");
    }

    static string Fraction(long numerator, long denominator)
    {
        while (numerator % 2 == 0) (numerator, denominator) = (numerator / 2, denominator / 2);
        return $"{numerator}/{denominator}";
    }

    static string Number(double value, string format)
    {
        var text = value.ToString(format, CultureInfo.InvariantCulture);
        return text.StartsWith('-') && text.All(c => c is '-' or '0' or '.') ? text[1..] : text;
    }
}
