using System.Collections.Immutable;

namespace KitWorks.Geometry.Tests;

/// <summary>Chord factors and counts that are in print. All from memory: Kenner, Geodesic Math and How to Use It (1976); Domebook 2 (1971);
/// Clinton, NASA CR-1734 (1971), method 1.</summary>
public sealed class DomeCountTests
{
    [Fact]
    public void Build_When2VHemisphere_HasTheFactorsAndCountsInPrint()
    {
        // Domebook 2 and Kenner: A 0.54653 × 30, B 0.61803 × 35; 26 hubs.
        var frame = Frame.Build(Designs.Dome(2, "1/2")).Value;

        Assert.Equal([(0.54653, 30), (0.61803, 35)], Factors(frame));
        Assert.Equal((26, 65, 40), (frame.Nodes.Length, frame.Struts.Length, frame.Panels.Length));
    }

    [Fact]
    public void Build_When3VFiveEighths_HasTheFactorsAndCountsInPrint()
    {
        // Domebook 2 and Kenner: A 0.34862 × 30, B 0.40355 × 55, C 0.41241 × 80; 61 hubs.
        var frame = Frame.Build(Designs.Dome(3, "5/8")).Value;

        Assert.Equal([(0.34862, 30), (0.40355, 55), (0.41241, 80)], Factors(frame));
        Assert.Equal((61, 165, 105), (frame.Nodes.Length, frame.Struts.Length, frame.Panels.Length));
    }

    [Fact]
    public void Build_When3VThreeEighths_HasTheCountsInPrint()
    {
        // Domebook 2: A 30, B 40, C 50; 46 hubs.
        var frame = Frame.Build(Designs.Dome(3, "3/8")).Value;

        Assert.Equal([(0.34862, 30), (0.40355, 40), (0.41241, 50)], Factors(frame));
        Assert.Equal(46, frame.Nodes.Length);
    }

    [Fact]
    public void Build_When4VHemisphere_HasTheFactorsAndCountsInPrint()
    {
        // Domebook 2 and Kenner: six lengths, 0.25318 to 0.32492; 250 struts, 91 hubs.
        var frame = Frame.Build(Designs.Dome(4, "1/2")).Value;

        Assert.Equal([0.25318, 0.29453, 0.29524, 0.29859, 0.31287, 0.32492], Factors(frame).Select(f => f.Factor));
        Assert.Equal((91, 250), (frame.Nodes.Length, frame.Struts.Length));
    }

    [Theory]
    // The number of different chords of class 1 on the icosahedron: OEIS A097108, from memory.
    [InlineData(1, 1), InlineData(2, 2), InlineData(3, 3), InlineData(4, 6), InlineData(5, 9)]
    [InlineData(6, 9), InlineData(7, 16), InlineData(8, 20), InlineData(9, 18), InlineData(10, 30)]
    public void WholeSphere_WhenClass1_HasTheKnownNumberOfFamilies(int frequency, int families) =>
        Assert.Equal(families, DomeFrame.WholeSphere(Designs.Dome(frequency, "1/2"), 1000).Families.Length);

    public static TheoryData<BaseSolid, int, int> Lattices()
    {
        var data = new TheoryData<BaseSolid, int, int>();
        foreach (var solid in Enum.GetValues<BaseSolid>())
            for (var b = 1; b <= 16; b++)
                for (var c = 0; c <= 16; c += c < 4 ? 1 : 3)
                    if (b * b + b * c + c * c <= 256) data.Add(solid, b, c);
        return data;
    }

    [Theory, MemberData(nameof(Lattices))]
    public void WholeSphere_WhenAnyLattice_HasTheCountsOfItsTriangulationNumber(BaseSolid solid, int b, int c)
    {
        var (nodes, struts, panels) = solid switch
        {
            BaseSolid.Icosahedron => (10, 30, 20),
            BaseSolid.Octahedron => (4, 12, 8),
            BaseSolid.Tetrahedron => (2, 6, 4),
        };
        foreach (var up in Enum.GetValues<Up>())
        {
            var dome = Designs.Dome(solid, new Lattice(b, c), up, "1/2");
            var frame = DomeFrame.WholeSphere(dome, 1000);
            var t = dome.Lattice.T;

            Assert.Equal((nodes * t + 2, struts * t, panels * t), (frame.Nodes.Length, frame.Struts.Length, frame.Panels.Length));
            FrameChecks.Holds(frame);
        }
    }

    static IEnumerable<(double Factor, int Count)> Factors(Frame frame) =>
        frame.Families.Select(f => (Math.Round(f.ChordFactor!.Value, 5), f.Count));
}
