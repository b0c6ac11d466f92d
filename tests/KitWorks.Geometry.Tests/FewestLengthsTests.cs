namespace KitWorks.Geometry.Tests;

public sealed class FewestLengthsTests
{
    static Frame Hemisphere(int frequency) =>
        Frame.Build(Designs.Dome(frequency, frequency % 2 == 0 ? "1/2" : $"rows:{(3 * frequency + 1) / 2}", new Size.FloorDiameter(Designs.Mm(6000)))).Value;

    public static TheoryData<int> Frequencies() => [.. Enumerable.Range(1, 16)];

    [Theory, MemberData(nameof(Frequencies))]
    public void Within_WhenHemisphere_ClosesWithinTheTolerance(int frequency)
    {
        var frame = Hemisphere(frequency);
        foreach (var tolerance in new[] { 1.0, 4.0 })
            Closes(frame, FewestLengths.Within(frame, Designs.Mm(tolerance)).Value, tolerance);
    }

    public static TheoryData<Shelter> Others() =>
    [
        Designs.Dome(BaseSolid.Icosahedron, new(2, 1), Up.Vertex, "rows:4"),
        Designs.Dome(BaseSolid.Octahedron, Lattice.Class1(4), Up.Vertex, "1/2"),
        Designs.Dome(BaseSolid.Icosahedron, Lattice.Class2(4), Up.Face, "rows:4"),
        Designs.Dome(5, "8/15", flatBase: true),
        new Oblong { Fold = 6, Size = new Size.Height(Designs.Mm(2500)) },
        new Oblong { Fold = 6, Frequency = 3, Bays = 1, Size = new Size.Height(Designs.Mm(2500)) },
    ];

    [Theory, MemberData(nameof(Others))]
    public void Within_WhenOtherDesign_ClosesWithinTheTolerance(Shelter shelter)
    {
        var frame = Frame.Build(shelter).Value;
        Closes(frame, FewestLengths.Within(frame, Designs.Mm(3)).Value, 3);
    }

    [Fact]
    public void Within_When4VHemisphereAndOneMillimetre_SavesTwoTypesByMovingNodes()
    {
        // 6 m floor. Cutting families alike without moving a node would save none.
        var fewer = FewestLengths.Within(Hemisphere(4), Designs.Mm(1)).Value;

        Assert.Equal(4, fewer.Frame.Families.Length);
        Assert.InRange(fewer.WorstMoveMm, 1, 60);
    }

    [Theory]
    [InlineData(4, 3), InlineData(4, 4), InlineData(6, 5), InlineData(8, 6), InlineData(16, 8)]
    public void Of_WhenTypesAreGiven_BeatsCuttingAlikeWithoutMoving(int frequency, int types)
    {
        var frame = Hemisphere(frequency);
        var spacings = frame.Families.Select(f => f.SpacingMm).ToList();
        var groups = LengthGroups.Narrowest(spacings, types);
        var unmoved = Enumerable.Range(0, types).Max(g => spacings.Where((_, f) => groups[f] == g).Max() - spacings.Where((_, f) => groups[f] == g).Min()) / 2;

        var fewer = FewestLengths.Of(frame, types).Value;

        Assert.Equal(types, fewer.Frame.Families.Length);
        Closes(frame, fewer, unmoved);
        Assert.True(fewer.WorstMisfitMm < unmoved - 0.02);
    }

    [Fact]
    public void Of_WhenTypesSuffice_LeavesTheFrameAlone()
    {
        var frame = Hemisphere(3);

        Assert.Same(frame, FewestLengths.Of(frame, 3).Value.Frame);
        Assert.Same(frame, FewestLengths.Of(frame, 100).Value.Frame);
    }

    [Fact]
    public void Within_WhenTwice_GivesTheSame()
    {
        var frame = Hemisphere(6);

        Assert.Equal(FewestLengths.Within(frame, Designs.Mm(2)).Value.Frame.Nodes, FewestLengths.Within(frame, Designs.Mm(2)).Value.Frame.Nodes);
    }

    [Theory]
    [InlineData(0), InlineData(100_000), InlineData(500_000)]
    public void Of_WhenWorkRunsOut_SaysSoAndStillCloses(long workLimit)
    {
        var frame = Hemisphere(12);

        var stopped = FewestLengths.Of(frame, 4, workLimit).Value;

        Assert.True(stopped.WorkRanOut);
        Assert.True(stopped.WorstMisfitMm >= FewestLengths.Of(frame, 4).Value.WorstMisfitMm);
        Closes(frame, stopped, stopped.WorstMisfitMm);
    }

    [Theory]
    [InlineData(8), InlineData(16)]
    public void Within_WhenHemisphere_TakesLessThanAFifthOfTheWorkAllowed(int frequency)
    {
        Assert.False(FewestLengths.Within(Hemisphere(frequency), Designs.Mm(2), FewestLengths.WorkLimit / 5).Value.WorkRanOut);
        Assert.False(FewestLengths.Of(Hemisphere(frequency), 6, FewestLengths.WorkLimit / 5).Value.WorkRanOut);
    }

    [Fact]
    public void Within_WhenAskedForNothing_Refuses()
    {
        Assert.Equal("lengths.tolerance", FewestLengths.Within(Hemisphere(2), Length.Zero).Refusal!.Code);
        Assert.Equal("lengths.types", FewestLengths.Of(Hemisphere(2), 0).Refusal!.Code);
        Assert.Equal("lengths.types", FewestLengths.Of(Hemisphere(2), -1).Refusal!.Code);
    }

    [Theory]
    [InlineData(new[] { 1.0, 2, 3, 10, 11 }, 2, new[] { 0, 0, 0, 1, 1 })]
    [InlineData(new[] { 1.0, 2, 3, 10, 11 }, 5, new[] { 0, 1, 2, 3, 4 })]
    [InlineData(new[] { 1.0, 4, 6, 9 }, 1, new[] { 0, 0, 0, 0 })]
    public void Narrowest_WhenByHand_IsIt(double[] lengths, int groups, int[] expected) =>
        Assert.Equal(expected, LengthGroups.Narrowest(lengths, groups));

    static void Closes(Frame frame, FewerLengths fewer, double tolerance)
    {
        var made = fewer.Frame;
        Assert.True(made.Families.Length <= frame.Families.Length);
        Assert.InRange(fewer.WorstMisfitMm, 0, tolerance + 2e-4);
        foreach (var s in made.Struts)
            Assert.InRange(Math.Abs(made.Nodes[s.From].Position.DistanceTo(made.Nodes[s.To].Position) - s.SpacingMm), 0, fewer.WorstMisfitMm + 1e-9);
        Assert.All(made.Base, n => Assert.Equal(frame.Nodes[n].Position.Z, made.Nodes[n].Position.Z, 1e-9));
        Assert.Equal(frame.Struts.Length, made.Families.Sum(f => f.Count));
        Assert.Equal(frame.Panels.Length, made.PanelKinds.Sum(k => k.Count));
        Point3[] points = [.. made.Nodes.Select(n => n.Position)];
        Assert.All(Hinge.Of(frame), h => Assert.True(h.FoldDegrees(points) >= Math.Min(h.BeforeDegrees, h.BeforeDegrees / 2) - 0.2501));
    }
}
