namespace KitWorks.Kits.Packing;

/// <summary>
/// The check character of ISO/IEC 7064, MOD 37,36: one character from the digits and capitals at the end of a string of
/// them, which catches every single wrong character and nearly every swap of neighbours.
/// </summary>
public static class CheckCharacter
{
    const string Alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
    const int M = 36;

    /// <summary>The text with its check character.</summary>
    /// <exception cref="ArgumentException">The text is empty or holds something other than digits and capitals.</exception>
    public static string Append(string text) => text + Alphabet[(M + 1 - Product(text)) % M];

    /// <summary>Whether the last character is the right check character for those before it.</summary>
    public static bool IsValid(string text) =>
        text.Length >= 2 && text.All(c => Alphabet.Contains(c, StringComparison.Ordinal)) && Append(text[..^1]) == text;

    /// <summary>The recursion of the hybrid systems, with the product carried to the place of the check character.</summary>
    static int Product(string text)
    {
        if (text.Length == 0) throw new ArgumentException("There is nothing to check.", nameof(text));
        var product = M;
        foreach (var character in text)
        {
            var value = Alphabet.IndexOf(character, StringComparison.Ordinal);
            if (value < 0) throw new ArgumentException($"'{character}' is neither a digit nor a capital.", nameof(text));
            var sum = (product + value) % M;
            product = (sum == 0 ? M : sum) * 2 % (M + 1);
        }
        return product;
    }
}
