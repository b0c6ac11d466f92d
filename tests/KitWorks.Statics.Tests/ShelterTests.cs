using CsCheck;
using KitWorks.Geometry;
using KitWorks.Statics.Loads;
using static KitWorks.Statics.Tests.Models;

namespace KitWorks.Statics.Tests;

public class ShelterTests
{
    /// <summary>
    /// Common practice, without a source to cite: the six-fold oblong of five-foot struts in one-inch schedule 40 PVC with ties of 120 lbf (534 N) carries over
    /// 100 lbf (444.8 N) hung from any one hub. The trade ties with one tie an end and no safety taken off.
    /// </summary>
    [Theory]
    [InlineData(BaseSupport.Pinned), InlineData(BaseSupport.Sliding)]
    public void EachHub_OfTheSixFoldOblong_CarriesAHundredPounds(BaseSupport support)
    {
        var analysis = TrussModel.Of(Frames.SixFoldOblong(), support).Value.Analysed();
        foreach (var load in LoadCase.EachHub(analysis.Model, new(0, 0, -444.8)))
        {
            var result = analysis.Solve(load.Loads).Value;
            Assert.True(result.Members.Max(m => m.ForceN) < 534);
            Assert.True(result.Members.Min(m => m.EulerFactor ?? double.MaxValue) > 1);
        }
    }

    /// <summary>Whatever the load, the ground bears its sum and its moment about each axis.</summary>
    [Fact]
    public void Reactions_OfRandomLoadsOnDomes_BalanceThem() =>
        Gen.Select(Gen.Int[0, 3], Gen.Bool, Gen.Double[-900, 900].Array[9]).Sample((design, pinned, f) =>
        {
            var (frequency, cut) = new[] { (2, "1/2"), (3, "3/8"), (3, "5/8"), (4, "1/2") }[design];
            var model = TrussModel.Of(Frames.Dome(frequency, cut), pinned ? BaseSupport.Pinned : BaseSupport.Sliding).Value;
            NodeLoad[] loads = [new(0, f[0], f[1], f[2]), new(model.Nodes.Length / 2, f[3], f[4], f[5]), new(model.Nodes.Length - 1, f[6], f[7], f[8])];
            var forces = loads.Select(l => (At: model.Nodes[l.Node], Force: new Point3(l.XN, l.YN, l.ZN)))
                .Concat(model.Analysed().Solve(loads).Value.Reactions.Select(r => (At: model.Nodes[r.Node], Force: new Point3(r.XN, r.YN, r.ZN)))).ToList();
            Assert.InRange(forces.Aggregate(default(Point3), (sum, x) => sum + x.Force).Norm, 0, 1e-7);
            Assert.InRange(forces.Aggregate(default(Point3), (sum, x) => sum + x.At.Cross(x.Force)).Norm, 0, 1e-4);
        }, iter: 100);

    [Fact]
    public void Without_ABaseStrutForADoor_TheDomeStillStandsAndForcesFlowAround()
    {
        var frame = Frames.Dome(3, "5/8");
        var door = frame.Struts.First(s => s.Tier == 1).Id;
        var whole = Truss.Of(frame, Pvc, BaseSupport.Pinned).Value;
        var open = Truss.Of(frame, Pvc, BaseSupport.Pinned, [door]).Value;

        Assert.Empty(open.Mechanisms);
        var forces = open.Solve([new(0, 0, 0, -1000)]).Value;
        Assert.DoesNotContain(forces.Members, m => m.Strut == door);
        Assert.True(forces.Displacements[0].ZMm < whole.Solve([new(0, 0, 0, -1000)]).Value.Displacements[0].ZMm);
    }

    /// <summary>A dome on sliding hubs has as many struts as it has motions to stop (E = 3V − 3 − n), so that any strut taken out leaves one loose.</summary>
    [Fact]
    public void Without_AnyStrutOfASlidingDome_OneMechanismIsLeft()
    {
        var frame = Frames.Dome(2, "1/2");
        Assert.Empty(Truss.Of(frame, Pvc, BaseSupport.Sliding).Value.Mechanisms);
        foreach (var strut in frame.Struts) Assert.Single(Truss.Of(frame, Pvc, BaseSupport.Sliding, [strut.Id]).Value.Mechanisms);
    }

    [Fact]
    public void Of_AnOblongOfOneLength_IsLooseUnlessStaked()
    {
        var frame = Frames.SixFoldOblong(lengths: 1);
        Assert.Empty(Truss.Of(frame, Pvc, BaseSupport.Pinned).Value.Mechanisms);
        Assert.All(Truss.Of(frame, Pvc, BaseSupport.Sliding).Value.Mechanisms, m => Assert.Contains("Stake the base hubs", m.Detail, StringComparison.Ordinal));
    }
}
