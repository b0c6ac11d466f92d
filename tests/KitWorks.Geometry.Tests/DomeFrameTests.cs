namespace KitWorks.Geometry.Tests;

public sealed class DomeFrameTests
{
    public static TheoryData<int> Frequencies() => [.. Enumerable.Range(1, 16)];

    [Theory, MemberData(nameof(Frequencies))]
    public void Build_WhenAnyValidCut_HoldsTogetherOnTheSphere(int frequency)
    {
        foreach (var cut in DomeCuts.Of(BaseSolid.Icosahedron, Lattice.Class1(frequency), Up.Vertex).Value)
        {
            var frame = Frame.Build(Designs.Dome(frequency, cut.Name, new Size.Radius(Designs.Mm(3000)))).Value;
            FrameChecks.Holds(frame);
            var centre = new Point3(0, 0, frame.Nodes[0].Position.Z - 3000);
            Assert.DoesNotContain(frame.Nodes, n => Math.Abs(n.Position.DistanceTo(centre) - 3000) > 1e-8);
            Assert.Equal(cut.BaseNodes, frame.Base.Length);
            Assert.Equal(cut.BaseSpreadOverRadius * 3000, frame.BaseSpreadMm, 1e-6);
            Assert.Equal(cut.HeightOverRadius * 3000, frame.Nodes[0].Position.Z, 1e-6);
        }
    }

    [Fact]
    public void Build_WhenSizedByFloorDiameter_StandsOnIt()
    {
        var frame = Frame.Build(Designs.Dome(3, "5/8", new Size.FloorDiameter(Designs.Mm(6000)))).Value;

        Assert.Equal(3000, frame.Base.Average(n => Math.Sqrt(Math.Pow(frame.Nodes[n].Position.X, 2) + Math.Pow(frame.Nodes[n].Position.Y, 2))), 1e-9);
        Assert.Equal(0.01595, frame.BaseSpreadMm / frame.RadiusMm!.Value, 5e-6);
    }

    [Fact]
    public void Build_WhenSizedByHeight_IsThatHigh() =>
        Assert.Equal(2500, Frame.Build(Designs.Dome(4, "1/2", new Size.Height(Designs.Mm(2500)))).Value.Dimensions.HeightMm, 1e-9);

    [Fact]
    public void Build_WhenSizedByLongestStrut_AddsTheHubAllowances()
    {
        var frame = Frame.Build(Designs.Dome(2, "1/2", new Size.LongestStrut(Designs.Mm(1524))), Designs.Mm(15)).Value;

        Assert.Equal(1554, frame.Families[^1].SpacingMm, 1e-9);
    }

    [Fact]
    public void Build_WhenSizedToFit_TouchesTheTightestLimitOnly()
    {
        var frame = Frame.Build(Designs.Dome(3, "5/8", new Size.Fits(Designs.Mm(9000), Designs.Mm(6000), Designs.Mm(5000)))).Value;

        Assert.Equal(6000, frame.Dimensions.WidthMm, 1e-9);
        Assert.True(frame.Dimensions is { LengthMm: < 9000, HeightMm: < 5000 });
    }

    [Fact]
    public void Build_WhenFlatBase_StandsInOnePlaneOnTheSphereWithMoreFamilies()
    {
        var frame = Frame.Build(Designs.Dome(3, "5/8", flatBase: true)).Value;

        FrameChecks.Holds(frame);
        Assert.Equal(0, frame.BaseSpreadMm);
        Assert.All(frame.Base, n => Assert.Equal(0, frame.Nodes[n].Position.Z, 1e-9));
        Assert.True(frame.Families.Length > 3);
        Assert.Equal(165, frame.Struts.Length);
    }

    [Fact]
    public void Build_When1VLastRow_IsTheIcosahedronWithoutItsFoot()
    {
        // By hand: the icosahedron of edge a has radius a · sin 72° and volume 5 (3 + √5) a³ / 12; its five lowest faces and what is
        // under them make a pyramid of height a · √((5 − √5) / 10) on a pentagon of area a² √(25 + 10 √5) / 4.
        var frame = Frame.Build(Designs.Dome(1, "2/3", new Size.Radius(Designs.Mm(1000)))).Value;
        var a = 1 / Math.Sin(2 * Math.PI / 5);
        var pentagon = a * a * Math.Sqrt(25 + 10 * Math.Sqrt(5)) / 4;

        Assert.Equal(pentagon, frame.Dimensions.FloorAreaM2, 1e-12);
        Assert.Equal(5 * (3 + Math.Sqrt(5)) * a * a * a / 12 - pentagon * a * Math.Sqrt((5 - Math.Sqrt(5)) / 10) / 3, frame.Dimensions.VolumeM3, 1e-12);
        Assert.Equal(15 * Math.Sqrt(3) / 4 * a * a, frame.Dimensions.CoverAreaM2, 1e-12);
        Assert.Equal(1000 * (1 + 1 / Math.Sqrt(5)), frame.Dimensions.HeightMm, 1e-9);
    }

    [Fact]
    public void Build_WhenTwice_GivesTheSame()
    {
        Frame one = Frame.Build(Designs.Dome(7, "8/21")).Value, two = Frame.Build(Designs.Dome(7, "8/21")).Value;

        Assert.Equal(one.Nodes, two.Nodes);
        Assert.Equal(one.Struts, two.Struts);
        Assert.Equal(one.Panels, two.Panels);
    }
}
