namespace KitWorks.Drawings.Tests;

/// <summary>Lengths as a drawing's headline and legend write them.</summary>
public class MeasureTests
{
    [Theory]
    [InlineData(304.8, "1' 0\"")]
    [InlineData(25.4, "1\"")]
    [InlineData(0, "0\"")]
    [InlineData(12.7, "1/2\"")]
    [InlineData(1008.9, "3' 3 23/32\"")]
    [InlineData(1524, "5' 0\"")]
    [InlineData(304.79, "1' 0\"")]
    [InlineData(311.15, "1' 0 1/4\"")]
    public void Part_InFeetAndInches_RoundsTo32nds(double mm, string expected) => Assert.Equal(expected, Measure.Part(mm, Units.FeetAndInches));

    [Theory]
    [InlineData(2590.8, "8' 6\"")]
    [InlineData(6197.6, "20' 4\"")]
    [InlineData(5207, "17' 1\"")]
    [InlineData(-304.8, "-1' 0\"")]
    public void Whole_InFeetAndInches_RoundsToQuarters(double mm, string expected) => Assert.Equal(expected, Measure.Whole(mm, Units.FeetAndInches));

    [Fact]
    public void Measures_InMetric_AreInvariantAndWithoutMinusZero()
    {
        Assert.Equal("6.00 m", Measure.Whole(6000, Units.Metric));
        Assert.Equal("1008.9 mm", Measure.Part(1008.9, Units.Metric));
        Assert.Equal("0", Measure.Tape(-0.2, Units.Metric));
        Assert.Equal("277 sq ft", Measure.Area(25.734, Units.FeetAndInches));
    }
}
