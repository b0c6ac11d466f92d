using KitWorks.Geometry;
using KitWorks.Statics.Loads;
using static KitWorks.Statics.Tests.Models;

namespace KitWorks.Statics.Tests;

public class RigidFrameTests
{
    const double P = 120, L = 2400;

    /// <summary>Two beams of length L that cross in the middle, their ends held: each bears half, as a simple beam (any mechanics handbook).</summary>
    [Theory]
    [InlineData(0), InlineData(0.7)]
    public void Solve_WhenTwoBeamsCross_EachBendsAsASimpleBeam(double turned)
    {
        var ends = Enumerable.Range(0, 4).Select(i => turned + Math.PI * i / 2).Select(t => new Point3(L / 2 * Math.Cos(t), L / 2 * Math.Sin(t), 0));
        var model = TrussModel.Of([default, .. ends], Enumerable.Range(1, 4).Select(i => new Member(i, 0, i)), Enumerable.Range(1, 4).Select(i => new Support(i, true, true, true))).Value;
        var result = RigidFrame.Of(model, Pvc).Value.Solve([new(0, 0, 0, -P)]).Value;

        Near(-(P / 2) * L * L * L / (48.0 * 2900 * 36355), result.Displacements[0].ZMm);
        Assert.All(result.Members, m => Near(P / 2 * L / 4, m.MomentNMm));
        Assert.All(result.Members, m => Near(0, Math.Abs(m.ForceN) + Math.Abs(m.TorqueNMm)));
        Assert.Single(Truss.Of(model, Pvc).Value.Mechanisms);
    }

    /// <summary>A mast with stiff feet: four long ground beams held at their ends stop it from turning; a push at its head H bends it as M = P·h.</summary>
    [Fact]
    public void Solve_WhenAMastIsPushed_ItsFootBearsTheMoment()
    {
        const double h = 1500;
        Point3[] nodes = [new(0, 0, h), default, new(L, 0, 0), new(0, L, 0), new(-L, 0, 0), new(0, -L, 0)];
        var model = TrussModel.Of(nodes, [new(0, 0, 1), new(1, 1, 2), new(2, 1, 3), new(3, 1, 4), new(4, 1, 5)],
            Enumerable.Range(1, 5).Select(i => new Support(i, true, true, true))).Value;
        var result = RigidFrame.Of(model, Pvc, poissonRatio: 0.5).Value.Solve([new(0, P, 0, 0)]).Value;

        Near(P * h, result.Members[0].MomentNMm);
        // About y the foot is held by two beams of stiffness 3EI/L. The two along y are free to turn with it, their ends being hinged.
        var turn = P * h / (2 * 3.0 * 2900 * 36355 / L);
        Near(P * h * h * h / (3.0 * 2900 * 36355) + turn * h, result.Displacements[0].XMm);
    }

    [Theory]
    [InlineData("2V"), InlineData("3V"), InlineData("oblong"), InlineData("door")]
    public void Solve_OfShelters_AgreesWithTheHandbooksBeams(string shelter)
    {
        var frame = shelter switch
        {
            "2V" => Frames.Dome(2, "1/2"), "3V" => Frames.Dome(3, "5/8"), "oblong" => Frames.SixFoldOblong(1),
            _ => OpenedFrame.Of(Frames.Dome(3, "5/8"), [new Door()]).Value.Frame,
        };
        var model = TrussModel.Of(frame, BaseSupport.Pinned).Value;
        NodeLoad[] loads = [new(0, 30, 0, -500), new(model.Nodes.Length / 3, -40, 60, -200)];
        var ours = RigidFrame.Of(model, Pvc, poissonRatio: 0.38).Value.Solve(loads).Value;
        var theirs = HandbookBeams.Solve(model, Pvc, 0.38, loads);

        var farthest = theirs.Max(u => u.Norm);
        Assert.True(farthest > 0.1);
        for (var n = 0; n < theirs.Length; n++)
            Assert.True((new Point3(ours.Displacements[n].XMm, ours.Displacements[n].YMm, ours.Displacements[n].ZMm) - theirs[n]).Norm < 1e-7 * farthest);
    }

    [Fact]
    public void Solve_WhenStrutsAreVerySlender_AgreesWithTheTruss()
    {
        var model = TrussModel.Of(Frames.Dome(3, "5/8"), BaseSupport.Pinned).Value;
        var thin = Pvc with { SecondMomentMm4 = 0.5 };
        var hinged = Truss.Of(model, thin).Value.Solve([new(0, 30, 0, -200)]).Value;
        var stiff = RigidFrame.Of(model, thin).Value.Solve([new(0, 30, 0, -200)]).Value;

        for (var i = 0; i < hinged.Members.Length; i++) Assert.Equal(hinged.Members[i].ForceN, stiff.Members[i].ForceN, 0.05);
        var sturdy = RigidFrame.Of(model, Pvc).Value.Solve([new(0, 30, 0, -200)]).Value;
        Assert.True(-sturdy.Displacements[0].ZMm < -stiff.Displacements[0].ZMm);
    }

    [Fact]
    public void Of_WhenInputIsWrong_NamesTheField()
    {
        var model = Pyramid(3, 500, 500, BaseSupport.Pinned);
        Assert.Equal("poissonRatio", RigidFrame.Of(model, Pvc, double.NaN).Refusal!.Errors.Single().Field);
        Assert.Equal("loads/0/node", RigidFrame.Of(model, Pvc).Value.Solve([new(9, 0, 0, 0)]).Refusal!.Errors.Single().Field);
        var rod = TrussModel.Of([default, new(0, 0, 1)], [new(0, 0, 1)], [new(0, true, true, true)]).Value;
        Assert.Equal("statics.mechanism", RigidFrame.Of(rod, Pvc).Refusal!.Code);
    }
}
