using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace KitWorks.Geometry;

/// <summary>
/// How much of a sphere a dome keeps, as it is asked for: a number of rows from the top (<c>rows:5</c>) or a fraction
/// (<c>5/8</c>), which is the name of a cut and not a share of the height.
/// </summary>
/// <remarks>Which cuts a design has, and what they are called, <see cref="DomeCuts"/> says.</remarks>
[JsonConverter(typeof(CutJsonConverter))]
public readonly record struct Cut
{
    Cut(int numerator, int? denominator) => (Numerator, Denominator) = (numerator, denominator);

    /// <summary>The rows kept, or the fraction's upper number.</summary>
    public int Numerator { get; }

    /// <summary>The fraction's lower number; null where rows are counted.</summary>
    public int? Denominator { get; }

    /// <summary>The cut that keeps a number of rows.</summary>
    public static Cut Rows(int rows) => new(rows, null);

    /// <summary>The cut named by a fraction.</summary>
    public static Cut Fraction(int numerator, int denominator) => new(numerator, denominator);

    /// <summary>Reads <c>5/8</c> or <c>rows:5</c>; numbers from 1 to 9999.</summary>
    public static bool TryParse(string? text, out Cut cut)
    {
        cut = default;
        if (text is null) return false;
        if (text.StartsWith("rows:", StringComparison.Ordinal))
        {
            if (!TryNumber(text.AsSpan(5), out var rows)) return false;
            cut = Rows(rows);
            return true;
        }
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        if (slash < 0 || !TryNumber(text.AsSpan(0, slash), out var n) || !TryNumber(text.AsSpan(slash + 1), out var d)) return false;
        cut = Fraction(n, d);
        return true;
    }

    static bool TryNumber(ReadOnlySpan<char> text, out int number) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number) && number is >= 1 and <= 9999;

    /// <summary>The cut as it is written: <c>5/8</c> or <c>rows:5</c>.</summary>
    public override string ToString() => Denominator is { } d ? $"{Numerator}/{d}" : $"rows:{Numerator}";
}

sealed class CutJsonConverter : JsonConverter<Cut>
{
    public override Cut Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        Cut.TryParse(reader.GetString(), out var cut) ? cut : throw new JsonException("A cut is a fraction such as 5/8, or rows:5.");

    public override void Write(Utf8JsonWriter writer, Cut value, JsonSerializerOptions options) => writer.WriteStringValue(value.ToString());
}
