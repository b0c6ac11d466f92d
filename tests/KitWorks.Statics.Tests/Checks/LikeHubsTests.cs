using KitWorks.Geometry;
using KitWorks.Statics.Checks;
using KitWorks.Statics.Loads;

namespace KitWorks.Statics.Tests.Checks;

/// <summary>Loading one of each set of like hubs finds what loading every hub finds.</summary>
public class LikeHubsTests
{
    public static TheoryData<string, Shelter> Shelters => new()
    {
        { "3V 5/8", Dome(new(3, 0), "5/8") }, { "4V 1/2", Dome(new(4, 0), "1/2") }, { "class 2", Dome(new(2, 2), "rows:5") }, { "class 3", Dome(new(3, 1), "rows:8") },
        { "octahedron", Dome(new(4, 0), "1/2") with { Solid = BaseSolid.Octahedron } }, { "edge up", Dome(new(3, 0), "rows:5") with { Up = Up.Edge } },
        { "flat", Dome(new(3, 0), "3/8") with { FlatBase = true } },
        { "oblong", new Oblong { Fold = 6, Bays = 1, Size = new Size.LongestStrut(Length.FromMillimetres(1524)) } },
        { "oblong 8", new Oblong { Fold = 8, Frequency = 2, Size = new Size.LongestStrut(Length.FromMillimetres(900)) } },
    };

    static Dome Dome(Lattice lattice, string cut) => new()
    {
        Lattice = lattice, Cut = Cut.TryParse(cut, out var parsed) ? parsed : throw new ArgumentException(cut), Size = new Size.FloorDiameter(Length.FromMillimetres(6000)),
    };

    [Theory, MemberData(nameof(Shelters))]
    public void Of_AFrame_FindsWhatEveryHubInTurnFinds(string name, Shelter shelter)
    {
        if (!Frame.Build(shelter).Succeeds(out var frame, out var refusal)) Assert.Fail($"{name}: {refusal.Detail}");
        var leaders = frame.LikeNodes();
        Assert.All(leaders, l => Assert.Equal(l, leaders[l]));
        var criteria = new Criteria { TieRatedN = 534 };
        var set = new LoadSet { DirectionsDeg = [] };

        var one = Screening.Of(frame, Models.Pvc, set, criteria).Value;
        var truss = Truss.Of(frame, Models.Pvc, BaseSupport.Pinned).Value;
        var every = Screening.Of(truss, set.On(truss.Model, Models.Pvc).Value, criteria).Value;
        var sliding = Truss.Of(truss.Model.Sliding(), Models.Pvc).Value;
        var everySliding = sliding.Mechanisms.IsEmpty ? Screening.Of(sliding, set.On(truss.Model, Models.Pvc).Value, criteria).Value.Checks : [];

        foreach (var check in one.Checks)
        {
            var worst = every.Checks.Concat(everySliding).Where(c => (c.Kind, c.LoadCase) == (check.Kind, check.LoadCase)).Max(c => c.Utilisation);
            Models.Near(worst, check.Utilisation, 1e-6);
        }
        foreach (var anchor in one.Anchors)
        {
            var upright = every.Anchors.Single(a => a.Node == anchor.Node);
            Assert.True(anchor.Stakes >= upright.Stakes, $"{name}, hub {anchor.Node}: {anchor.Stakes} for {upright.Stakes}");
            if (everySliding is []) Assert.Equal(upright.Stakes, anchor.Stakes);
        }
    }
}
