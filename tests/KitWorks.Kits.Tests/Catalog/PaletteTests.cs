using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using static KitWorks.Kits.Tests.ExampleShop;

namespace KitWorks.Kits.Tests.Catalog;

public sealed class PaletteTests
{
    // M. Okabe and K. Ito, Color Universal Design: how to make figures and presentations that are friendly to colorblind people (2008),
    // RGB values from memory; the order is the shop's.
    [Fact]
    public void TagFor_WhenColourBlindSafe_IsOkabeAndItoFromOrange() => Assert.Equal(
        [
            new("orange", "#E69F00", 1), new("sky blue", "#56B4E9", 1), new("reddish purple", "#CC79A7", 1), new("bluish green", "#009E73", 1),
            new("vermillion", "#D55E00", 1), new("yellow", "#F0E442", 1), new("blue", "#0072B2", 1), new("black", "#000000", 1),
            new("orange", "#E69F00", 2), new("sky blue", "#56B4E9", 2),
        ],
        Enumerable.Range(0, 10).Select(Palette.ColourBlindSafe.TagFor));

    [Fact]
    public void TagFor_WhenOneColour_CountsInBands() => Assert.Equal(
        [1, 2, 3], Enumerable.Range(0, 3).Select(i => new Palette([new("red", "#FF0000")]).TagFor(i).Bands));

    [Fact]
    public void Make_When16V_TagsEachTypeOnce()
    {
        var types = Made(Dome(16, "1/2", new Size.FloorDiameter(Mm(12_000)))).StrutTypes;

        Assert.True(types.Length > 16, $"{types.Length} types");
        Assert.Equal(types.Length, types.Select(t => (t.Tag.Colour, t.Tag.Bands)).Distinct().Count());
        Assert.Equal("orange", types[0].Tag.Colour);
        Assert.Equal((types.Length + 7) / 8, types[^1].Tag.Bands);
    }
}
