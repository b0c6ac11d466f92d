namespace KitWorks.Kits.Packing;

/// <summary>The code on a remnant's label: <c>R</c>, its number, and a check character (<see cref="CheckCharacter"/>).</summary>
public static class RemnantCode
{
    /// <summary>The code of a remnant.</summary>
    /// <param name="number">The remnant's number, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is below 1.</exception>
    public static string Of(int number)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        return CheckCharacter.Append($"R{number:00000}");
    }
}
