using KitWorks.Geometry;
using ZXing;
using ZXing.OneD;
using ZXing.QrCode.Internal;

namespace KitWorks.Labels.Codes;

/// <summary>Turns text into the modules of a bar code.</summary>
static class Symbology
{
    const int Code128Quiet = 10;
    const int QrQuiet = 4;

    // Above the longest text that a label's width could take at the least module.
    const int LongestCode128 = 80;
    const int LongestGs1 = 48;
    const int LongestQr = 600;

    /// <summary>The symbol for a text, or a refusal that says what cannot be encoded.</summary>
    public static Outcome<Symbol> Encode(string symbology, string text) => symbology switch
    {
        "code128" => Code128(text),
        "gs1-128" => Gs1(text),
        "qr" => Qr(text),
        _ => new Refusal(RefusalKind.Impossible, "label.code-unknown", $"There is no code “{symbology}”; there are code128, gs1-128 and qr."),
    };

    static Outcome<Symbol> Code128(string text)
    {
        if (text.Length is 0 or > LongestCode128)
            return Refuse($"A Code 128 here has 1 to {LongestCode128} characters; “{text}” has {text.Length}.");
        // The encoder takes some letters beyond ASCII for function codes and says nothing.
        foreach (var odd in text.Where(c => c is < ' ' or > '~'))
            return Refuse($"A Code 128 here has printable ASCII characters only; “{text}” has U+{(int)odd:X4}.");
        return Bars(new Code128Writer().encode(text), SymbolLimits.Bars);
    }

    static Outcome<Symbol> Qr(string text)
    {
        if (text.Length is 0 or > LongestQr) return Refuse($"A QR code here has 1 to {LongestQr} characters; this text has {text.Length}.");
        var hints = new Dictionary<EncodeHintType, object> { [EncodeHintType.CHARACTER_SET] = "UTF-8", [EncodeHintType.DISABLE_ECI] = true };
        var matrix = Encoder.encode(text, ErrorCorrectionLevel.M, hints).Matrix;
        var dark = new bool[matrix.Width * matrix.Height];
        for (var i = 0; i < dark.Length; i++) dark[i] = matrix[i % matrix.Width, i / matrix.Width] == 1;
        return new Symbol(matrix.Width, matrix.Height, dark, QrQuiet, SymbolLimits.Matrix);
    }

    // A GS1-128 is a Code 128 that starts with function 1; U+00F1 in the text separates elements of unfixed length.
    static Outcome<Symbol> Gs1(string text)
    {
        var elements = text.Split('\u00f1');
        if (text.Length > LongestGs1 || elements.Any(e => e.Length < 3 || !e.All(c => c is > ' ' and <= '~')))
            return Refuse($"A GS1-128 has 3 to {LongestGs1} printable ASCII characters, each element starting with its application identifier; this is “{text}”.");
        return Bars(new Code128Writer().encode(text, new Dictionary<EncodeHintType, object> { [EncodeHintType.GS1_FORMAT] = true }), SymbolLimits.Logistics);
    }

    static Symbol Bars(bool[] dark, SymbolLimits limits) => new(dark.Length, 1, dark, Code128Quiet, limits);

    static Refusal Refuse(string detail) => new(RefusalKind.Impossible, "label.code-character", detail);
}
