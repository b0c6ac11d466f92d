using System.Buffers;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using UnitsNet.Units;
using Length = KitWorks.Geometry.Length;

namespace KitWorks.Api.Http;

/// <summary>Lengths as people write them: a number and its unit. Read in mm, cm, m, in, ft, yd, or feet and inches; written in mm.</summary>
sealed class LengthText : JsonConverter<Length>
{
    public const string WhatIsRight = "a length is a text with its unit, such as \"6 m\", \"1524 mm\", \"5 ft\" or \"5' 6\\\"\", with a point for decimals, from 0 to 1 km";

    static readonly LengthUnit[] Units =
        [LengthUnit.Millimeter, LengthUnit.Centimeter, LengthUnit.Meter, LengthUnit.Inch, LengthUnit.Foot, LengthUnit.Yard];

    /// <summary>The usual way to write a unit, and how many millimetres it has. The library reads these too, at a hundred times the cost.</summary>
    static readonly (string Word, double Millimetres)[] Usual = [("mm", 1), ("cm", 10), ("m", 1000), ("in", 25.4), ("ft", 304.8), ("yd", 914.4)];

    static readonly SearchValues<char> Digits = SearchValues.Create("0123456789.");

    public static bool TryParse(string text, out Length length)
    {
        length = default;
        // Half of the world reads "1,5 m" as one and a half metres, the other half as fifteen; nobody's pipe is cut by guess.
        if (text.Length > 40 || text.Contains(',', StringComparison.Ordinal)) return false;
        var invariant = CultureInfo.InvariantCulture;
        if (TryUsual(text, out length)) return true;
        try
        {
            return (UnitsNet.Length.TryParse(text, invariant, out var parsed) && Units.Contains(parsed.Unit)
                || UnitsNet.Length.TryParseFeetInches(text, out parsed, invariant))
                && Length.TryFromMillimetres(parsed.Millimeters, out length);
        }
        catch (ArgumentException)
        {
            // TryParse throws on what is not a number or too large for one.
            return false;
        }
    }

    /// <summary>Digits with or without a point, a space or none, and a unit.</summary>
    internal static bool TryUsual(ReadOnlySpan<char> text, out Length length)
    {
        length = default;
        var digits = text.IndexOfAnyExcept(Digits);
        if (digits is < 1 or > 15) return false;
        var unit = text[digits..].TrimStart(' ');
        foreach (var (word, millimetres) in Usual)
            if (unit.SequenceEqual(word))
                return double.TryParse(text[..digits], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
                    && Length.TryFromMillimetres(number * millimetres, out length);
        return false;
    }

    public override Length Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.TokenType switch
    {
        JsonTokenType.String when TryParse(reader.GetString()!, out var length) => length,
        JsonTokenType.String => throw new JsonException($"'{Clipped(reader.GetString()!)}' is not a length: {WhatIsRight}."),
        JsonTokenType.Number => throw new JsonException($"A bare number has no unit: {WhatIsRight}."),
        _ => throw new JsonException($"This is not a length: {WhatIsRight}."),
    };

    public override void Write(Utf8JsonWriter writer, Length value, JsonSerializerOptions options) => writer.WriteStringValue(value.ToString());

    static string Clipped(string text) => text.Length <= 40 ? text : text[..40] + "…";
}
