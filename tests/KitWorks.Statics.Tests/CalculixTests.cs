using KitWorks.Geometry;
using KitWorks.Statics.Loads;

namespace KitWorks.Statics.Tests;

/// <summary>Forces and displacements against CalculiX, to six digits of the largest.</summary>
public class CalculixTests
{
    [Theory]
    [InlineData(2, "1/2"), InlineData(4, "1/2"), InlineData(3, "5/8")]
    public void Solve_OfPinnedDomes_AgreesWithCalculix(int frequency, string cut)
    {
        var model = TrussModel.Of(Frames.Dome(frequency, cut), BaseSupport.Pinned).Value;
        Compare(model, model, [new(0, 0, 0, -1000)]);
        Compare(model, model, [new(3, 250, -400, -600), new(model.Nodes.Length / 2, -70, 30, 110)]);
    }

    [Theory]
    [InlineData(2, "1/2"), InlineData(4, "1/2"), InlineData(3, "3/8")]
    public void Solve_OfSlidingDomes_AgreesWithCalculixHeldInPlan(int frequency, string cut)
    {
        var model = TrussModel.Of(Frames.Dome(frequency, cut, flatBase: true), BaseSupport.Sliding).Value;
        // Downward loads need no sideways hold, so that any three that stop the drift leave the forces alone.
        var far = model.Supports.MaxBy(s => model.Nodes[s.Node].DistanceTo(model.Nodes[model.Supports[0].Node])).Node;
        var acrossX = Math.Abs(model.Nodes[far].X - model.Nodes[model.Supports[0].Node].X) > 1;
        var held = TrussModel.Of(model.Nodes, model.Members, model.Supports.Select((s, i) =>
            i == 0 ? new Support(s.Node, true, true, true) : s.Node == far ? new Support(far, !acrossX, acrossX, true) : s)).Value;
        Compare(model, held, [new(0, 0, 0, -1000), new(2, 0, 0, -300)], displacements: false);
    }

    [Theory]
    [InlineData(0), InlineData(1)]
    public void Solve_OfTheSixFoldOblong_AgreesWithCalculix(int bays)
    {
        var model = TrussModel.Of(Frames.SixFoldOblong(bays), BaseSupport.Pinned).Value;
        Compare(model, model, [new(0, 0, 0, -1000)]);
        Compare(model, model, [new(model.Nodes.Length / 3, 90, 140, -600)]);
    }

    [Theory]
    [InlineData(3, "5/8", DoorTop.Level), InlineData(4, "1/2", DoorTop.Level), InlineData(4, "1/2", DoorTop.Peaked)]
    public void Solve_OfDomesWithADoor_AgreesWithCalculix(int frequency, string cut, DoorTop top)
    {
        var model = TrussModel.Of(OpenedFrame.Of(Frames.Dome(frequency, cut), [new Door { Top = top }, new Vent()]).Value.Frame, BaseSupport.Pinned).Value;
        Compare(model, model, [new(0, 0, 0, -1000)]);
        // At a post's foot stands the last node but one; its head is the only other node of that strut.
        var head = model.Members.Where(m => m.To == model.Nodes.Length - 2).Select(m => m.From).MaxBy(n => model.Nodes[n].Z);
        Compare(model, model, [new(head, 50, 80, -900)]);
    }

    static void Compare(TrussModel model, TrussModel forCalculix, NodeLoad[] loads, bool displacements = true)
    {
        Calculix.Require();
        var ours = Truss.Of(model, Models.Pvc).Value.Solve(loads).Value;
        var theirs = Calculix.Solve(forCalculix, Models.Pvc, loads);

        var most = theirs.Forces.Max(Math.Abs);
        Assert.True(most > 100);
        for (var i = 0; i < theirs.Forces.Length; i++) Assert.Equal(theirs.Forces[i] / most, ours.Members[i].ForceN / most, 1e-6);
        if (!displacements) return;
        var farthest = theirs.Displacements.SelectMany(d => d).Max(Math.Abs);
        for (var n = 0; n < theirs.Displacements.Length; n++)
        {
            Assert.Equal(theirs.Displacements[n][0] / farthest, ours.Displacements[n].XMm / farthest, 1e-6);
            Assert.Equal(theirs.Displacements[n][1] / farthest, ours.Displacements[n].YMm / farthest, 1e-6);
            Assert.Equal(theirs.Displacements[n][2] / farthest, ours.Displacements[n].ZMm / farthest, 1e-6);
        }
    }
}
