using CsCheck;

namespace KitWorks.Geometry.Tests;

/// <summary>What holds for every design, over random ones.</summary>
public sealed class PropertyTests
{
    static readonly Gen<Dome> Domes =
        from solid in Gen.Enum<BaseSolid>()
        from up in Gen.Enum<Up>()
        from b in Gen.Int[1, 10]
        from c in Gen.Frequency((2, Gen.Const(0)), (1, Gen.Const(b)), (2, Gen.Int[0, 6]))
        where b * b + b * c + c * c is > 1 and <= 200
        from pick in Gen.Int[0, 1000]
        from flat in Gen.Bool
        from radius in Gen.Double[500, 20_000]
        let cuts = DomeCuts.Of(solid, new(b, c), up).Value
        where cuts.Length > 0
        select Designs.Dome(solid, new(b, c), up, cuts[pick % cuts.Length].Name, new Size.Radius(Designs.Mm(radius)), flat);

    [Fact]
    public void Build_WhenAnyDome_HoldsTogether() => Domes.Sample(dome =>
    {
        var built = Frame.Build(dome);
        if (built.Refusal is { } refusal)
        {
            // A ring far from level cannot always be flattened.
            Assert.Equal("shelter.flat-base", refusal.Code);
            return;
        }
        FrameChecks.Holds(built.Value);
        if (dome.FlatBase) Assert.Equal(0, built.Value.BaseSpreadMm);
    }, iter: 300, threads: 1);

    [Fact]
    public void Build_WhenAnyDome_HasTheSymmetryOfItsTop() => Domes.Sample(dome =>
    {
        if (!Frame.Build(dome).Succeeds(out var frame, out _)) return;
        var turns = dome.Up switch { Up.Vertex => Solid.Counts(dome.Solid).Ways, Up.Edge => 2, Up.Face => 3 };
        // Class 3 has no mirrors. (A cube and other small ones have more than their solid's.)
        Assert.Equal(0, new Symmetry(frame).Elements.Count % (dome.Lattice.Class == 3 ? turns : 2 * turns));
    }, iter: 100, threads: 1);

    [Fact]
    public void Build_WhenScaled_IsTheSameButForTheScale() => Domes.Sample(dome =>
    {
        var twice = dome with { Size = new Size.Radius(Length.FromTenths(((Size.Radius)dome.Size).Of.Tenths * 2)) };
        if (!Frame.Build(dome).Succeeds(out var one, out _)) return;
        var two = Frame.Build(twice).Value;
        Assert.Equal(one.Families.Select(f => f.Count), two.Families.Select(f => f.Count));
        Assert.Equal(one.Panels, two.Panels);
        foreach (var (a, b) in one.Nodes.Zip(two.Nodes)) Assert.True(b.Position.DistanceTo(a.Position * 2) < 1e-9 * b.Position.Norm + 1e-9);
        Assert.Equal(one.Dimensions.VolumeM3 * 8, two.Dimensions.VolumeM3, 1e-9 * two.Dimensions.VolumeM3);
    }, iter: 100, threads: 1);

    [Fact]
    public void Build_WhenLatticeIsMirrored_HasTheSameFamilies() => Domes.Where(d => d.Lattice.Class == 3 && !d.FlatBase).Sample(dome =>
    {
        var (b, c) = dome.Lattice;
        var mirrored = dome with { Lattice = new(c, b) };
        Frame one = Frame.Build(dome).Value, other = Frame.Build(mirrored).Value;
        Assert.Equal(one.Families.Select(f => f.Count), other.Families.Select(f => f.Count));
        foreach (var (f, g) in one.Families.Zip(other.Families)) Assert.Equal(f.SpacingMm, g.SpacingMm, 1e-8 * f.SpacingMm + 1e-9);
        Assert.Equal(one.Dimensions.FloorAreaM2, other.Dimensions.FloorAreaM2, 1e-9 * one.Dimensions.FloorAreaM2);
    }, iter: 50, threads: 1);

    [Fact]
    public void Build_WhenAnyOblong_HoldsTogether() => (
        from half in Gen.Int[2, 4]
        let fold = 2 * half
        from frequency in Gen.Int[1, 5]
        from bays in Gen.Int[-2, 3]
        from lengths in Gen.Int[fold == 8 ? 2 : 1, 4]
        from height in Gen.Double[1500, 5000]
        select new Oblong { Fold = fold, Frequency = frequency, Bays = bays, Lengths = lengths, Size = new Size.Height(Designs.Mm(height)) })
        .Sample(oblong => FrameChecks.Holds(Frame.Build(oblong).Value), iter: 40, threads: 1);
}
