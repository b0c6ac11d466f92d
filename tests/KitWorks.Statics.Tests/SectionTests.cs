using static KitWorks.Statics.Tests.Models;

namespace KitWorks.Statics.Tests;

public class SectionTests
{
    /// <summary>PVC pipe, schedule 40: outside diameter and minimum wall of ASTM D1785 in inches; area and second moment computed from them.</summary>
    [Theory]
    [InlineData(1.050, 0.113, 214.6, 15_416)]
    [InlineData(1.315, 0.133, 318.6, 36_355)]
    [InlineData(1.660, 0.140, 431.3, 81_044)]
    [InlineData(1.900, 0.145, 515.8, 128_988)]
    public void Tube_OfSchedule40Pipe_HasItsSectionValues(double outsideIn, double wallIn, double areaMm2, double secondMomentMm4)
    {
        var tube = Section.Tube(outsideIn * 25.4, wallIn * 25.4, 2900).Value;
        Near(areaMm2, tube.AreaMm2, 2e-4);
        Near(secondMomentMm4, tube.SecondMomentMm4, 2e-4);
    }

    [Fact]
    public void Tube_WhenTheWallIsHalfTheDiameter_IsARod()
    {
        var rod = Section.Tube(10, 5, 200_000).Value;
        Near(Math.PI * 25, rod.AreaMm2);
        Near(Math.PI * 10_000 / 64, rod.SecondMomentMm4);
    }

    /// <summary>π²·200,000·490.87/1,000² = 968.9 N: a steel rod of 10 mm, one metre long, hinged.</summary>
    [Fact]
    public void EulerLoadN_OfASteelRod_IsTheTextbookValue()
    {
        var rod = Section.Tube(10, 5, 200_000).Value;
        Near(968.946, rod.EulerLoadN(1000), 1e-6);
        Near(4 * 968.946, rod.EulerLoadN(1000, effectiveLengthFactor: 0.5), 1e-6);
        Near(968.946 / 4, (rod with { LongTermModulusMPa = 50_000 }).EulerLoadN(1000, longTerm: true), 1e-6);
    }

    [Theory]
    [InlineData(double.NaN, 1, "outsideDiameterMm"), InlineData(0, 1, "outsideDiameterMm"), InlineData(10, 5.1, "wallMm"), InlineData(10, double.NaN, "wallMm")]
    public void Tube_WhenItCannotBe_NamesTheField(double outside, double wall, string field) =>
        Assert.Equal(field, Section.Tube(outside, wall, 1).Refusal!.Errors.Single().Field);
}
