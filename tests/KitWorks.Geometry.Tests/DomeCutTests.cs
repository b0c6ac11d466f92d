namespace KitWorks.Geometry.Tests;

public sealed class DomeCutTests
{
    static string[] Names(int frequency) =>
        [.. DomeCuts.Of(BaseSolid.Icosahedron, Lattice.Class1(frequency), Up.Vertex).Value.Select(c => c.Name)];

    [Fact]
    public void Of_WhenClass1_NamesTheTradesCuts()
    {
        Assert.Equal(["1/6", "2/6", "1/2", "4/6", "5/6"], Names(2));
        Assert.Equal(["1/9", "2/9", "3/9", "3/8", "5/8", "6/9", "7/9", "8/9"], Names(3));
        Assert.Equal("1/2", Names(4)[5]);
        Assert.Equal(["7/15", "8/15"], Names(5)[6..8]);
    }

    [Theory]
    // Common knowledge of method 1: only the first row, the equator of an even frequency and the last row but one are planar.
    [InlineData(2), InlineData(3), InlineData(4), InlineData(5), InlineData(6), InlineData(16)]
    public void Of_WhenClass1VertexUp_HasThePlanarRingsThatAreKnown(int frequency)
    {
        var planar = DomeCuts.Of(BaseSolid.Icosahedron, Lattice.Class1(frequency), Up.Vertex).Value
            .Where(c => c.BaseSpreadOverRadius == 0).Select(c => c.Rows);

        int[] expected = frequency % 2 == 0 ? [1, 3 * frequency / 2, 3 * frequency - 1] : [1, 3 * frequency - 1];
        Assert.Equal(expected, planar);
    }

    [Theory]
    [InlineData(3, "5/8", 61), InlineData(3, "rows:5", 61), InlineData(3, "5/9", 61), InlineData(3, "10/18", 61)]
    [InlineData(3, "4/9", 46), InlineData(2, "3/6", 26), InlineData(2, "1/3", 16), InlineData(5, "7/15", 126), InlineData(8, "3/8", 0)]
    public void Build_WhenCutIsWrittenOtherwise_FindsIt(int frequency, string cut, int hubs)
    {
        var nodes = Frame.Build(Designs.Dome(frequency, cut)).Value.Nodes.Length;

        Assert.Equal(hubs == 0 ? Frame.Build(Designs.Dome(frequency, "rows:9")).Value.Nodes.Length : hubs, nodes);
    }

    [Fact]
    public void Of_WhenClass2VertexUp_TellsOfItsZigZagRings()
    {
        var cuts = DomeCuts.Of(BaseSolid.Icosahedron, Lattice.Class2(4), Up.Vertex).Value;

        Assert.Equal(["1/10", "2/10", "3/10", "4/10", "1/2"], cuts.Select(c => c.Name).Take(5));
        // Measured: the equator's teeth are a third of the radius deep.
        Assert.Equal(0.3505, cuts[4].BaseSpreadOverRadius, 1e-4);
        foreach (var cut in cuts)
        {
            var frame = Frame.Build(Designs.Dome(BaseSolid.Icosahedron, Lattice.Class2(4), Up.Vertex, $"rows:{cut.Rows}")).Value;
            Assert.All(frame.Base, n => Assert.True(frame.Nodes[n].Degree >= 3));
        }
    }

    [Theory]
    [InlineData(BaseSolid.Icosahedron, 18, 18), InlineData(BaseSolid.Icosahedron, 31, 1), InlineData(BaseSolid.Icosahedron, 1, 31)]
    [InlineData(BaseSolid.Octahedron, 32, 0), InlineData(BaseSolid.Tetrahedron, 32, 0), InlineData(BaseSolid.Tetrahedron, 20, 15)]
    public void Build_WhenAtTheLimitOfT_HoldsTogether(BaseSolid solid, int b, int c)
    {
        var cuts = DomeCuts.Of(solid, new(b, c), Up.Vertex).Value;

        FrameChecks.Holds(Frame.Build(Designs.Dome(solid, new(b, c), Up.Vertex, cuts[cuts.Length / 2].Name)).Value);
    }

    [Theory]
    [InlineData("3/7"), InlineData("rows:9"), InlineData("1/1"), InlineData("rows:9999"), InlineData("9999/1")]
    public void Build_WhenCutDoesNotExist_ListsTheValidOnes(string cut)
    {
        var refusal = Frame.Build(Designs.Dome(3, cut)).Refusal!;

        Assert.Equal("shelter.cut-invalid", refusal.Code);
        Assert.Equal("cut", Assert.Single(refusal.Errors).Field);
        Assert.Contains(cut, refusal.Detail, StringComparison.Ordinal);
        Assert.Contains("1/9, 2/9, 3/9, 3/8, 5/8, 6/9, 7/9, 8/9", refusal.Detail, StringComparison.Ordinal);
    }
}
