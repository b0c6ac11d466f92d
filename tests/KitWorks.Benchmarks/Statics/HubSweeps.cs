using System.Diagnostics;
using BenchmarkDotNet.Attributes;
using KitWorks.Geometry;
using KitWorks.Statics;
using KitWorks.Statics.Loads;

namespace KitWorks.Benchmarks.Statics;

/// <summary>A hemisphere with every hub loaded in turn: one factorisation, then one solution a hub. Wanted at 6V: all hubs within 20 factorisations.</summary>
[MemoryDiagnoser]
public class HubSweeps
{
    static readonly Section Pvc = new() { AreaMm2 = 318.6, SecondMomentMm4 = 36355, ModulusMPa = 2900, MassKgPerM = 0.476 };

    TrussModel model = null!;
    TrussAnalysis analysis = null!;

    [Params(4, 6, 16)]
    public int Frequency { get; set; }

    [GlobalSetup]
    public void Build()
    {
        model = TrussModel.Of(Frame.Build(new Dome
        {
            Lattice = Lattice.Class1(Frequency),
            Cut = Cut.Fraction(1, 2),
            Size = new Size.FloorDiameter(Length.FromMillimetres(6000)),
        }).Value, BaseSupport.Pinned).Value;
        analysis = Truss.Of(model, Pvc).Value;
    }

    /// <summary>Order, assemble, factorise, count mechanisms.</summary>
    [Benchmark(Baseline = true)]
    public TrussAnalysis Factorise() => Truss.Of(model, Pvc).Value;

    /// <summary>Forces, displacements and reactions with each hub loaded; the least Euler factor is kept.</summary>
    [Benchmark]
    public double EachHub() => LoadCase.EachHub(model, new(0, 0, -1000)).Min(c => analysis.Solve(c.Loads).Value.Members.Min(m => m.EulerFactor ?? double.MaxValue));

    /// <summary>Prints both times and their ratio, the best of some runs, for the frequencies named or for 4, 6 and 16.</summary>
    public static int Print(string[] frequencies)
    {
        foreach (var frequency in frequencies.Length > 0 ? frequencies.Select(int.Parse) : [4, 6, 16])
        {
            var sweeps = new HubSweeps { Frequency = frequency };
            sweeps.Build();
            var (once, all) = (Best(sweeps.Factorise), Best(() => sweeps.EachHub()));
            Console.WriteLine($"{frequency}V: {sweeps.model.Nodes.Length} hubs, {sweeps.model.Members.Length} struts; one factorisation {once:f2} ms, every hub {all:f2} ms, ratio {all / once:f1}");
        }
        return 0;
    }

    static double Best<T>(Func<T> work)
    {
        var best = double.MaxValue;
        var all = Stopwatch.StartNew();
        for (var run = 0; run < 5 || (run < 200 && all.ElapsedMilliseconds < 2000); run++)
        {
            var watch = Stopwatch.StartNew();
            work();
            best = Math.Min(best, watch.Elapsed.TotalMilliseconds);
        }
        return best;
    }
}
