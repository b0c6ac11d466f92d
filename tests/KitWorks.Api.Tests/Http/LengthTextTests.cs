using CsCheck;
using KitWorks.Api.Http;

namespace KitWorks.Api.Tests.Http;

public sealed class LengthTextTests
{
    [Theory]
    [InlineData("6 m", 60000)]
    [InlineData("6m", 60000)]
    [InlineData("1524 mm", 15240)]
    [InlineData("1.5 m", 15000)]
    [InlineData("152.4 cm", 15240)]
    [InlineData("5 ft", 15240)]
    [InlineData("5' 6\"", 16764)]
    [InlineData("5'6\"", 16764)]
    [InlineData("60 in", 15240)]
    [InlineData("2 yd", 18288)]
    [InlineData("0 mm", 0)]
    [InlineData("1000 m", 10_000_000)]
    public void TryParse_WhenALengthHasItsUnit_ReadsIt(string text, int tenths)
    {
        Assert.True(LengthText.TryParse(text, out var length));
        Assert.Equal(tenths, length.Tenths);
    }

    [Theory]
    [InlineData("6")]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("m")]
    [InlineData("6 km")]
    [InlineData("6 kg")]
    [InlineData("6,5 m")]
    [InlineData("1,524 mm")]
    [InlineData("NaN m")]
    [InlineData("Infinity m")]
    [InlineData("-1 mm")]
    [InlineData("-1'")]
    [InlineData("1e400 m")]
    [InlineData("1000.1 m")]
    [InlineData("6 m 6 m")]
    [InlineData("0x10 m")]
    [InlineData("66666666666666666666666666666666666666666666 m")]
    public void TryParse_WhenItIsNoLengthWithAUnit_Refuses(string text) => Assert.False(LengthText.TryParse(text, out _));

    static readonly string[] Units = ["mm", "cm", "m", "in", "ft", "yd"];

    [Fact]
    public void TryUsual_WhateverTheNumber_ReadsWhatTheLibraryReads() =>
        Gen.Select(Gen.Decimal[0, 1100], Gen.Int[0, 6], Gen.Int[0, 5].Select(i => Units[i]), Gen.Bool.Select(spaced => spaced ? " " : "")).Sample((number, places, unit, space) =>
        {
            var text = Math.Round(number, places).ToString(System.Globalization.CultureInfo.InvariantCulture) + space + unit;
            var metres = UnitsNet.Length.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

            Assert.Equal(metres.Meters <= 1000, LengthText.TryUsual(text, out var length));
            if (metres.Meters <= 1000) Assert.InRange(length.Millimetres - metres.Millimeters, -0.0501, 0.0501);
        });
}
