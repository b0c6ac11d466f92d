using System.Text.RegularExpressions;

namespace KitWorks.Kits.Packing;

/// <summary>
/// The code on a bundle's label: the order's number, <c>B</c>, the bundle's place in the order, and a check character
/// (<see cref="CheckCharacter"/>). Only digits and capitals, so that any scanner and any telephone carries it.
/// </summary>
public static partial class BundleCode
{
    /// <summary>The code of one bundle.</summary>
    /// <param name="orderNumber">The order's number, 1 or more.</param>
    /// <param name="bundle">The bundle's place in the order, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is below 1.</exception>
    public static string Of(int orderNumber, int bundle)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(orderNumber, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(bundle, 1);
        return CheckCharacter.Append($"{orderNumber}B{bundle:000}");
    }

    /// <summary>Whether a text is written as a bundle code and its check character is right.</summary>
    public static bool IsWellFormed(string text) => Form().IsMatch(text) && CheckCharacter.IsValid(text);

    [GeneratedRegex(@"^[1-9][0-9]{0,9}B(?!000)([0-9]{3}|[1-9][0-9]{3,9})[0-9A-Z]\z")]
    private static partial Regex Form();
}
