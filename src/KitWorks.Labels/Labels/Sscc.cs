using System.Globalization;
using KitWorks.Geometry;

namespace KitWorks.Labels;

/// <summary>
/// A serial shipping container code: eighteen digits that name one parcel in the world, the last a check digit
/// (GS1 General Specifications, application identifier 00).
/// </summary>
/// <remarks>The default value is no SSCC; labels refuse it.</remarks>
public readonly record struct Sscc
{
    const int Digits = 18;

    readonly string? digits;

    Sscc(string digits) => this.digits = digits;

    /// <summary>Composes an SSCC from its parts and its check digit.</summary>
    /// <param name="extension">The extension digit, 0 to 9.</param>
    /// <param name="companyPrefix">The shop's GS1 company prefix: 4 to 12 digits.</param>
    /// <param name="serial">The parcel's number; with the prefix it fills 16 digits.</param>
    public static Outcome<Sscc> Of(int extension, string companyPrefix, long serial)
    {
        if (extension is < 0 or > 9) return Refusal.OfField("sscc.extension", "extension", $"An extension digit is 0 to 9, not {extension}.");
        if (companyPrefix.Length is < 4 or > 12 || !companyPrefix.All(char.IsAsciiDigit))
            return Refusal.OfField("sscc.prefix", "companyPrefix", $"A GS1 company prefix has 4 to 12 digits; “{companyPrefix}” has not.");
        var room = 16 - companyPrefix.Length;
        var number = serial.ToString(CultureInfo.InvariantCulture);
        if (serial < 0 || number.Length > room) return Refusal.OfField("sscc.serial", "serial", $"With this prefix a serial number has up to {room} digits; {serial} has not.");
        var body = extension.ToString(CultureInfo.InvariantCulture) + companyPrefix + number.PadLeft(room, '0');
        return new Sscc(body + CheckDigit(body));
    }

    /// <summary>Reads eighteen digits whose last is the check digit of the others.</summary>
    public static Outcome<Sscc> Parse(string text)
    {
        if (text.Length != Digits || !text.All(char.IsAsciiDigit)) return Refusal.OfField("sscc.malformed", "sscc", $"An SSCC has {Digits} digits; “{text}” has not.");
        var check = CheckDigit(text.AsSpan(0, Digits - 1));
        return check == text[^1] ? new Sscc(text) : Refusal.OfField("sscc.check-digit", "sscc", $"The check digit of {text[..^1]} is {check}, not {text[^1]}.");
    }

    /// <summary>The check digit of a GS1 number: digits weigh 3 and 1 in turn from the right, and the check digit fills up to ten.</summary>
    public static char CheckDigit(ReadOnlySpan<char> digits)
    {
        var sum = 0;
        for (var i = 0; i < digits.Length; i++) sum += (digits[^(i + 1)] - '0') * (i % 2 == 0 ? 3 : 1);
        return (char)('0' + (10 - sum % 10) % 10);
    }

    /// <summary>The eighteen digits.</summary>
    public override string ToString() => digits ?? "";
}
