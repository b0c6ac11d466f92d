using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace KitWorks.Geometry;

/// <summary>
/// A length as a shop measures it: a whole number of tenths of a millimetre, from zero to one kilometre.
/// </summary>
/// <remarks>
/// Sizes, cut lengths, hub allowances and stock lengths are of this type. Coordinates and spacings inside a frame are
/// <see cref="double"/> millimetres. The one crossing is <see cref="FromMillimetres"/>, which rounds halves away from zero.
/// The default value is zero.
/// </remarks>
[JsonConverter(typeof(LengthJsonConverter))]
public readonly record struct Length : IComparable<Length>
{
    const int MaxTenths = 10_000_000;

    Length(int tenths) => Tenths = tenths;

    /// <summary>No length at all.</summary>
    public static Length Zero => default;

    /// <summary>The longest length, one kilometre.</summary>
    public static Length Max => new(MaxTenths);

    /// <summary>The length in tenths of a millimetre, 0 to 10,000,000.</summary>
    public int Tenths { get; }

    /// <summary>The length in millimetres.</summary>
    public double Millimetres => Tenths / 10.0;

    /// <summary>A length of whole tenths of a millimetre.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below zero or above one kilometre.</exception>
    public static Length FromTenths(int tenths) => tenths is >= 0 and <= MaxTenths
        ? new(tenths)
        : throw new ArgumentOutOfRangeException(nameof(tenths), tenths, "A length is 0 to 10,000,000 tenths of a millimetre.");

    /// <summary>The length nearest to a number of millimetres; halves of a tenth go away from zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, infinite, negative or above one kilometre.</exception>
    public static Length FromMillimetres(double millimetres) => TryFromMillimetres(millimetres, out var length)
        ? length
        : throw new ArgumentOutOfRangeException(nameof(millimetres), millimetres, "A length is 0 to 1,000,000 mm.");

    /// <summary>As <see cref="FromMillimetres"/>, answering false where that throws.</summary>
    public static bool TryFromMillimetres(double millimetres, out Length length)
    {
        length = default;
        if (!(millimetres >= 0 && millimetres <= MaxTenths / 10.0)) return false;
        length = new((int)Math.Round(millimetres * 10, MidpointRounding.AwayFromZero));
        return true;
    }

    /// <summary>The nearest multiple of <paramref name="step"/>; halves go up. A zero step leaves the length alone.</summary>
    public Length RoundTo(Length step) => step.Tenths == 0 ? this : new((Tenths + step.Tenths / 2) / step.Tenths * step.Tenths);

    /// <inheritdoc/>
    public int CompareTo(Length other) => Tenths.CompareTo(other.Tenths);

    /// <summary>Whether one length is shorter than another.</summary>
    public static bool operator <(Length left, Length right) => left.Tenths < right.Tenths;

    /// <summary>Whether one length is longer than another.</summary>
    public static bool operator >(Length left, Length right) => left.Tenths > right.Tenths;

    /// <summary>Whether one length is no longer than another.</summary>
    public static bool operator <=(Length left, Length right) => left.Tenths <= right.Tenths;

    /// <summary>Whether one length is no shorter than another.</summary>
    public static bool operator >=(Length left, Length right) => left.Tenths >= right.Tenths;

    /// <summary>The length in millimetres with its unit, for instance <c>1008.9 mm</c>.</summary>
    public override string ToString() => Millimetres.ToString("0.#", CultureInfo.InvariantCulture) + " mm";
}

/// <summary>Writes a <see cref="Length"/> as a number of millimetres and reads it back, for values that KitWorks itself keeps.</summary>
sealed class LengthJsonConverter : JsonConverter<Length>
{
    public override Length Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        Length.TryFromMillimetres(reader.GetDouble(), out var length)
            ? length
            : throw new JsonException("A length is 0 to 1,000,000 mm.");

    public override void Write(Utf8JsonWriter writer, Length value, JsonSerializerOptions options) =>
        writer.WriteNumberValue(value.Tenths / 10m);
}
