using KitWorks.Geometry;
using KitWorks.Statics.Checks;
using KitWorks.Statics.Loads;
using static KitWorks.Statics.Tests.Models;

namespace KitWorks.Statics.Tests.Checks;

public class ScreeningTests
{
    static ScreeningReport Screened(TrussAnalysis analysis, Criteria criteria, params LoadCase[] cases) => Screening.Of(analysis, cases, criteria).Value;

    [Fact]
    public void Of_WhenTripodCarriesAWeight_ChecksAgainstEuler()
    {
        var leg = Math.Sqrt(500 * 500 + 1200 * 1200);
        var report = Screened(Pyramid(3, 500, 1200, BaseSupport.Pinned).Analysed(), new() { EffectiveLengthFactor = 0.8, BucklingSafety = 3 },
            new LoadCase("weight", LoadDuration.Brief, [new(0, 0, 0, -600)]));

        var buckling = report.Checks.Single(c => c.Kind == CheckKind.Buckling);
        Near(200 * leg / 1200, buckling.Demand);
        Near(Math.PI * Math.PI * 2900 * 36355 / (0.64 * leg * leg) / 3, buckling.Capacity);
        Assert.True(report.Passes);
        Assert.Equal(report.Governing, report.Checks.MaxBy(c => c.Utilisation));
    }

    [Theory]
    [InlineData(LoadDuration.Brief, 1), InlineData(LoadDuration.Lasting, 0.5)]
    public void Of_WhenTripodIsPulledUp_ChecksTiesAndStakes(LoadDuration duration, double share)
    {
        var leg = Math.Sqrt(500 * 500 + 1200 * 1200);
        var report = Screened(Pyramid(3, 500, 1200, BaseSupport.Pinned).Analysed(), new() { TieRatedN = 534, TiesPerEnd = 2, TieSafety = 3 },
            new LoadCase("pull", duration, [new(0, 0, 0, 900)]));

        var tie = report.Checks.Single(c => c.Kind == CheckKind.TieTension);
        Near(300 * leg / 1200, tie.Demand);
        Near(534 * 2 / 3.0 * share, tie.Capacity);
        // Each foot is pulled up by 300 N and inward by 125 N: 1.5 · (300 + 125) / 500 = 1.275 stakes.
        Assert.All(report.Anchors, a => Assert.Equal((2, "pull"), (a.Stakes, a.LoadCase)));
        Near(300, report.Anchors[0].UpliftN);
        Near(125, report.Anchors[0].SlidingN);
        Assert.Equal(6, report.Stakes);
    }

    [Fact]
    public void Of_WhenStandingByItsWeight_FrictionHoldsIt()
    {
        // Each foot: 250 N down, 62.5 N out; friction of 0.3 holds 75 N.
        var report = Screened(Pyramid(4, 500, 2000, BaseSupport.Pinned).Analysed(), new(), new LoadCase("weight", LoadDuration.Brief, [new(0, 0, 0, -1000)]));
        Assert.All(report.Anchors, a => Assert.Equal((0, 0, null), (a.Stakes, a.SlidingN, a.LoadCase)));
    }

    [Fact]
    public void Of_WhenStrengthIsKnown_ChecksStressAndDeflection()
    {
        var analysis = Truss.Of(Pyramid(4, 500, 500, BaseSupport.Pinned), Pvc with { StrengthMPa = 48.3 }).Value;
        var report = Screened(analysis, new() { SpanOverDeflection = 200 }, new LoadCase("weight", LoadDuration.Brief, [new(0, 0, 0, -800)]));

        var stress = report.Checks.Single(c => c.Kind == CheckKind.Stress);
        Near(200 * Math.Sqrt(2) / 318.6, stress.Demand);
        Near(48.3 / 2, stress.Capacity);
        var deflection = report.Checks.Single(c => c.Kind == CheckKind.Deflection);
        Near(800 * Math.Pow(500 * Math.Sqrt(2), 3) / (4 * 2900 * 318.6 * 500 * 500), deflection.Demand);
        Near(1000 / 200.0, deflection.Capacity);
        Assert.Equal(0, deflection.At);
    }

    [Fact]
    public void Of_AStandardSet_OnADomeReportsEachNamedCase()
    {
        var report = Screening.Of(Frames.Dome(3, "5/8"), Pvc, new LoadSet { Snow = new() { GroundPa = 500 }, Wind = new() { SpeedMPerS = 30 } },
            new() { TieRatedN = 534 }).Value;

        Assert.Equal(6, report.Checks.Where(c => c.Kind == CheckKind.TieTension).Select(c => c.LoadCase).Distinct().Count());
        Assert.All(report.Checks.Where(c => c.LoadCase == "one person at a hub"), c => Assert.NotNull(c.LoadedHub));
        Assert.True(report.Stakes > 0);
        Assert.Contains("licensed engineer", report.Caution, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_WhenAnOpeningLeavesAHubLoose_SaysSoAndChecksNothing()
    {
        var frame = Frames.Dome(3, "5/8");
        var hub = frame.Nodes.First(n => n.Tier == 2).Id;
        var gone = frame.Struts.Where(s => s.From == hub || s.To == hub).Skip(2).Select(s => s.Id).ToList();
        var report = Screening.Of(frame, Pvc, new(), new(), gone).Value;

        Assert.False(report.Passes);
        Assert.Empty(report.Checks);
        Assert.Contains(report.Mechanisms, m => m.Detail.Contains($"Hub {hub} ", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_WhenInputIsWrong_NamesTheField()
    {
        var frame = Frames.Dome(2, "1/2");
        Assert.Equal("criteria/tieSafety", Screening.Of(frame, Pvc, new(), new() { TieSafety = double.NaN }).Refusal!.Errors.Single().Field);
        Assert.Equal("without/1", Screening.Of(frame, Pvc, new(), new(), [0, 9999]).Refusal!.Errors.Single().Field);
        Assert.Equal("section/massKgPerM", Screening.Of(frame, Pvc with { MassKgPerM = null }, new(), new()).Refusal!.Errors.Single().Field);
    }

    /// <summary>Two pipes side by side bear twice Euler's load before they buckle (any mechanics handbook: their second moments add up).</summary>
    [Fact]
    public void Of_WhenALegIsDoubled_ItBearsTwiceEuler()
    {
        var frame = Frames.Dome(2, "1/2");
        var set = new LoadSet { DirectionsDeg = [] };
        Check Buckling(IEnumerable<int> doubled) =>
            Sweep.Of(frame, set, shut: [], doubled: doubled).Value.Report(Pvc, new(), new()).Value.Checks.First(c => c is { Kind: CheckKind.Buckling, LoadCase: "one person at a hub" });

        var (single, all) = (Buckling([]), Buckling(frame.Struts.Select(s => s.Id)));
        Near(single.Demand, all.Demand);
        Near(2 * single.Capacity, all.Capacity);
    }

    /// <summary>Forces of a frame twice as large under its own struts, a person, snow and wind: by scaling, and by solving it anew.</summary>
    [Fact]
    public void Scaled_OfASweep_IsTheSweepOfTheLargerFrame()
    {
        Frame Dome(int mm) => Frame.Build(new Dome { Lattice = Lattice.Class1(3), Cut = Cut.Fraction(5, 8), Size = new Size.Radius(Length.FromMillimetres(mm)) }).Value;
        var set = new LoadSet { Snow = new() { GroundPa = 600 }, Wind = new() { SpeedMPerS = 35 } };
        var (section, criteria) = (Pvc with { StrengthMPa = 48.3, LongTermModulusMPa = 965 }, new Criteria { TieRatedN = 534 });
        var scaled = Sweep.Of(Dome(2000), set).Value.Scaled(2).Report(section, new(), criteria).Value;
        var anew = Sweep.Of(Dome(4000), set).Value.Report(section, new(), criteria).Value;

        Assert.Equal(anew.Checks.Length, scaled.Checks.Length);
        foreach (var check in anew.Checks)
        {
            var same = scaled.Checks.Single(c => (c.Kind, c.LoadCase) == (check.Kind, check.LoadCase));
            Near(check.Demand, same.Demand, 1e-8);
            Near(check.Capacity, same.Capacity, 1e-8);
        }
        Assert.Equal(anew.Anchors.Select(a => a.Stakes), scaled.Anchors.Select(a => a.Stakes));
        Assert.Throws<ArgumentOutOfRangeException>(() => Sweep.Of(Dome(2000), set).Value.Scaled(0));
    }
}
