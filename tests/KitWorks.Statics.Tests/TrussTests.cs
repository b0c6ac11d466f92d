using KitWorks.Statics.Loads;
using static KitWorks.Statics.Tests.Models;

namespace KitWorks.Statics.Tests;

/// <summary>Closed forms, by joint equilibrium and Castigliano's theorem (any mechanics handbook).</summary>
public class TrussTests
{
    const double P = 1000, R = 500, H = 1200;

    static double Leg => Math.Sqrt(R * R + H * H);

    [Theory]
    [InlineData(3), InlineData(4), InlineData(6)]
    public void Solve_WhenPyramidIsLoadedAtApex_LegsShareTheLoad(int legs)
    {
        var result = Pyramid(legs, R, H, BaseSupport.Pinned).Analysed().Solve([new(0, 0, 0, -P)]).Value;

        var force = -P * Leg / (legs * H);
        foreach (var leg in result.Members.Take(legs))
        {
            Near(force, leg.ForceN);
            Near(Math.PI * Math.PI * 2900 * 36355 / (Leg * Leg) / -force, leg.EulerFactor!.Value);
        }
        Assert.All(result.Members.Skip(legs), ring => Assert.Equal((0, null), (ring.ForceN, ring.EulerFactor)));
        Near(-P * Math.Pow(Leg, 3) / (legs * 2900 * 318.6 * H * H), result.Displacements[0].ZMm);
        Assert.All(result.Reactions, r => Near(P / legs, r.ZN));
        Near(P * R / (legs * H), -result.Reactions[0].XN);
    }

    [Fact]
    public void Solve_WhenSquarePyramidIsPushedSideways_TwoLegsBearIt()
    {
        var result = Pyramid(4, R, H, BaseSupport.Pinned).Analysed().Solve([new(0, P, 0, 0)]).Value;

        Near(-P * Leg / (2 * R), result.Members[0].ForceN);
        Near(0, result.Members[1].ForceN);
        Near(P * Leg / (2 * R), result.Members[2].ForceN);
        Assert.Null(result.Members[2].EulerFactor);
        Near(P * Math.Pow(Leg, 3) / (2 * 2900 * 318.6 * R * R), result.Displacements[0].XMm);
    }

    [Theory]
    [InlineData(3), InlineData(4), InlineData(5)]
    public void Solve_WhenPyramidSlides_RingTakesTheThrust(int legs)
    {
        var analysis = Pyramid(legs, R, H, BaseSupport.Sliding).Analysed();
        var result = analysis.Solve([new(0, 0, 0, -P)]).Value;

        Assert.Empty(analysis.Mechanisms);
        var thrust = P * R / (legs * H);
        Assert.All(result.Members.Skip(legs), ring => Near(thrust / (2 * Math.Sin(Math.PI / legs)), ring.ForceN));
        Assert.All(result.Reactions, r => Near(0, Math.Abs(r.XN) + Math.Abs(r.YN)));
        Near(0, result.Displacements.Skip(1).Sum(d => d.XMm));
    }

    [Fact]
    public void Solve_WhenSlidingAndPushed_FrictionIsSpreadOverTheBase()
    {
        var result = Pyramid(4, R, H, BaseSupport.Sliding).Analysed().Solve([new(0, P, 0, 0), new(1, 0, 40, 0)]).Value;

        Near(-P, result.Reactions.Sum(r => r.XN));
        Near(-40, result.Reactions.Sum(r => r.YN));
        // 40 N at x = 500 turns by 20,000 N·mm, met at four arms of 500 mm: 10 N each, on top of a fourth of each push.
        Near(-P / 4, result.Reactions[0].XN);
        Near(-10 - 10, result.Reactions[0].YN);
        Near(-10 + 10, result.Reactions[2].YN);
        // The turn over the y axis: P·H on feet at ±500.
        Near(P * H / (2 * R), result.Reactions[0].ZN);
        Near(-P * H / (2 * R), result.Reactions[2].ZN);
    }

    [Fact]
    public void Solve_WhenLongTerm_ForcesStayAndDisplacementsGrow()
    {
        var analysis = Truss.Of(Pyramid(3, R, H, BaseSupport.Pinned), Pvc with { LongTermModulusMPa = 1450 }).Value;
        var brief = analysis.Solve([new(0, 0, 0, -P)]).Value;
        var lasting = analysis.Solve([new(0, 0, 0, -P)], longTerm: true).Value;

        Assert.Equal(brief.Members[0].ForceN, lasting.Members[0].ForceN);
        Near(brief.Members[0].EulerFactor!.Value / 2, lasting.Members[0].EulerFactor!.Value);
        Near(brief.Displacements[0].ZMm * 2, lasting.Displacements[0].ZMm);
    }

    [Fact]
    public void Caution_OfEveryAnswer_DefersToCodesAndAnEngineer()
    {
        var analysis = Pyramid(3, R, H, BaseSupport.Pinned).Analysed();
        Assert.Contains("licensed engineer", analysis.Caution, StringComparison.Ordinal);
        Assert.Contains("not a certificate", analysis.Solve([]).Value.Caution, StringComparison.Ordinal);
    }
}
