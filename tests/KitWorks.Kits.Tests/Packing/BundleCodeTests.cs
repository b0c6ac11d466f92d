using CsCheck;
using KitWorks.Kits.Packing;

namespace KitWorks.Kits.Tests.Packing;

public sealed class BundleCodeTests
{
    [Fact]
    public void Of_WhenOrderAndBundle_IsBothAndACheckCharacter()
    {
        Assert.Equal(CheckCharacter.Append("1042B007"), BundleCode.Of(1042, 7));
        Assert.Equal(CheckCharacter.Append("1B1234"), BundleCode.Of(1, 1234));
    }

    [Fact]
    public void IsWellFormed_WhenItIsOneOfOurs_IsTrueAndNoTwoAreAlike()
    {
        Gen.Select(Gen.Int[1, int.MaxValue], Gen.Int[1, 100_000]).Sample((order, bundle) => BundleCode.IsWellFormed(BundleCode.Of(order, bundle)));
        Assert.Equal(90_000, Enumerable.Range(1, 300).SelectMany(o => Enumerable.Range(1, 300).Select(b => BundleCode.Of(o, b))).Distinct().Count());
    }

    [Theory]
    [InlineData(""), InlineData("B"), InlineData("1042B007"), InlineData("1042b007"), InlineData("A12425GABC1234002M")]
    public void IsWellFormed_WhenAnythingElse_IsFalse(string text) => Assert.False(BundleCode.IsWellFormed(text));

    // Any text with a B and a right check character once passed.
    [Theory]
    [InlineData("B10420"), InlineData("1042B0B7"), InlineData("HUB1234"), InlineData("1042B07"), InlineData("0042B007"), InlineData("1042B0007")]
    public void IsWellFormed_WhenNotAnOrderABAndAPlace_IsFalse(string text) => Assert.False(BundleCode.IsWellFormed(CheckCharacter.Append(text)));

    [Theory]
    [InlineData(0, 1), InlineData(1, 0), InlineData(-1, 1)]
    public void Of_WhenNumbersDoNotStartAtOne_Throws(int order, int bundle) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BundleCode.Of(order, bundle));
}
