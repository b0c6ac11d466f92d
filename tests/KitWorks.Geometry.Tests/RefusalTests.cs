namespace KitWorks.Geometry.Tests;

public sealed class RefusalTests
{
    [Theory]
    [InlineData(0), InlineData(-1), InlineData(17), InlineData(int.MaxValue), InlineData(int.MinValue)]
    public void Build_WhenFrequencyIsOutOfRange_SaysSo(int frequency)
    {
        var refusal = Frame.Build(Designs.Dome(frequency, "1/2")).Refusal!;

        Assert.Equal(("shelter.frequency", "frequency"), (refusal.Code, refusal.Errors[0].Field));
        Assert.Contains(frequency.ToString(), refusal.Detail, StringComparison.Ordinal);
        Assert.Contains("1 to 16", refusal.Detail, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, -1), InlineData(0, 1), InlineData(30, 7), InlineData(int.MaxValue, 1), InlineData(1, int.MaxValue)]
    public void Build_WhenLatticeIsOutOfRange_SaysSo(int b, int c)
    {
        var refusal = Frame.Build(Designs.Dome(BaseSolid.Octahedron, new Lattice(b, c), Up.Vertex, "1/2")).Refusal!;

        Assert.Equal(("shelter.frequency", "lattice"), (refusal.Code, refusal.Errors[0].Field));
    }

    [Fact]
    public void Build_WhenEnumIsNoMember_SaysSo()
    {
        Assert.Equal("shelter.solid", Frame.Build(Designs.Dome((BaseSolid)9, Lattice.Class1(2), Up.Vertex, "1/2")).Refusal!.Code);
        Assert.Equal("shelter.up", DomeCuts.Of(BaseSolid.Octahedron, Lattice.Class1(2), (Up)9).Refusal!.Code);
    }

    public static TheoryData<Size, string> BadSizes() => new()
    {
        { new Size.Radius(Length.Zero), "size/radius" },
        { new Size.Radius(Length.Max), "size/radius" },
        { new Size.FloorDiameter(Designs.Mm(1)), "size/floorDiameter" },
        { new Size.Height(Length.Zero), "size/height" },
        { new Size.LongestStrut(Length.Zero), "size/longestStrut" },
        { new Size.LongSide(Designs.Mm(5000)), "size/length" },
        { new Size.ShortSide(Designs.Mm(5000)), "size/width" },
        { new Size.Fits(null, null, null), "size/fits" },
        { new Size.Fits(Designs.Mm(5000), Length.Zero, null), "size/fits/width" },
        { null!, "size" },
    };

    [Theory, MemberData(nameof(BadSizes))]
    public void Build_WhenSizeCannotBe_NamesTheField(Size size, string field)
    {
        var refusal = Frame.Build(Designs.Dome(3, "5/8") with { Size = size }, Designs.Mm(15)).Refusal!;

        Assert.Equal(("shelter.size", field), (refusal.Code, refusal.Errors[0].Field));
    }

    [Fact]
    public void Build_WhenHubsWouldTouch_SaysTheSmallestSize()
    {
        var refusal = Frame.Build(Designs.Dome(16, "1/2", new Size.Radius(Designs.Mm(400))), Designs.Mm(15)).Refusal!;

        Assert.Equal("The radius is 400 mm; for this design with a hub allowance of 15 mm it is 537 mm to 100000 mm.", refusal.Detail);
    }
}
