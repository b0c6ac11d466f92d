namespace KitWorks.Kits.Packing;

/// <summary>
/// The code on a bundle's label: the order's number, <c>B</c>, the bundle's place in the order, and a check character
/// (<see cref="CheckCharacter"/>). Only digits and capitals, so that any scanner and any telephone carries it.
/// </summary>
public static class BundleCode
{
    /// <summary>The code of one bundle.</summary>
    /// <param name="orderNumber">The order's number, 1 or more.</param>
    /// <param name="bundle">The bundle's place in the order, 1 or more.</param>
    public static string Of(int orderNumber, int bundle) => CheckCharacter.Append($"{orderNumber}B{bundle:000}");

    /// <summary>Whether a text is written as a bundle code and its check character is right.</summary>
    public static bool IsWellFormed(string text) =>
        text.Length is >= 6 and <= 20 && text.Contains('B', StringComparison.Ordinal) && CheckCharacter.IsValid(text);
}
