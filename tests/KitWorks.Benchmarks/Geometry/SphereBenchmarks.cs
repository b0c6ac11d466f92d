using BenchmarkDotNet.Attributes;
using KitWorks.Geometry;

namespace KitWorks.Benchmarks.Geometry;

/// <summary>The frame of a whole class-1 sphere: nodes, struts, families, degrees, tiers, panels and their kinds, measures.</summary>
[MemoryDiagnoser]
public class SphereBenchmarks
{
    /// <summary>The frequency; a sphere has 30 v² struts.</summary>
    [Params(2, 4, 8, 16, 32)]
    public int Frequency { get; set; }

    Dome dome = null!;

    /// <summary>The design. Its cut and size do not matter to a whole sphere.</summary>
    [GlobalSetup]
    public void Design() =>
        dome = new() { Lattice = Lattice.Class1(Frequency), Cut = Cut.Fraction(1, 2), Size = new Size.Radius(Length.FromMillimetres(1000)) };

    /// <summary>The frame.</summary>
    [Benchmark]
    public Frame Sphere() => DomeFrame.WholeSphere(dome, 1000);
}

/// <summary>What a customer waits for.</summary>
[MemoryDiagnoser]
public class ShelterBenchmarks
{
    readonly Size sixMetres = new Size.FloorDiameter(Length.FromMillimetres(6000));

    /// <summary>The commonest dome.</summary>
    [Benchmark]
    public Frame Dome3VFiveEighths() => Frame.Build(new Dome { Lattice = Lattice.Class1(3), Cut = Cut.Fraction(5, 8), Size = sixMetres }).Value;

    /// <summary>The largest hemisphere.</summary>
    [Benchmark]
    public Frame Dome16VHemisphere() => Frame.Build(new Dome { Lattice = Lattice.Class1(16), Cut = Cut.Fraction(1, 2), Size = sixMetres }).Value;

    /// <summary>The fewest types of the largest hemisphere.</summary>
    [Benchmark]
    public FewerLengths Fewest16V() => FewestLengths.Within(Dome16VHemisphere(), Length.FromMillimetres(3)).Value;
}
