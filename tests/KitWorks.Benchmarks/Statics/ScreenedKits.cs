using System.Collections.Immutable;
using System.Diagnostics;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;
using Tie = KitWorks.Kits.Catalog.Tie;

namespace KitWorks.Benchmarks.Statics;

/// <summary>What screening adds to the making of a kit, with four pipes to recommend from: the same kit without load sets is the yardstick.</summary>
public static class ScreenedKits
{
    static StrutStock Pvc(string code, double outside, double wall, int gramsPerMetre) => new()
    {
        Code = code, Sku = code, Name = code, StockLength = Length.FromMillimetres(3048), OutsideDiameter = Length.FromMillimetres(outside),
        Wall = Length.FromMillimetres(wall), GramsPerMetre = gramsPerMetre, ModulusMPa = 2900, LongTermModulusMPa = 965, StrengthMPa = 48.3,
    };

    static readonly ShopCatalog Shop = new()
    {
        HubSystems =
        [
            new()
            {
                Code = "ring", Name = "Ring", Allowance = Length.FromMillimetres(15), TiesPerEnd = 1, TieSku = "tie", Stake = new("stake", "Stake", 1, 300),
                Hubs = [new("hub-5", "Hub", 5, 88), new("hub-6", "Hub", 6, 96)],
            },
        ],
        StrutStocks = [Pvc("pvc-33", 33.4, 3.4, 476), Pvc("pvc-27", 26.7, 2.9, 313), Pvc("pvc-42", 42.2, 3.6, 640), Pvc("pvc-48", 48.3, 3.7, 759)],
        Ties = [new Tie("tie", "Tie", 534, 6)],
        Covers = [],
        Palette = Palette.ColourBlindSafe,
        Prices = new() { Currency = "EUR", UnitCosts = ImmutableDictionary<string, decimal>.Empty },
        Workshop = new(),
    };

    /// <summary>Prints, for the frequencies named or for 3, 6 and 8, both times, the best of some runs, and what screening adds as a share of the bare kit.</summary>
    public static int Print(string[] frequencies)
    {
        foreach (var frequency in frequencies.Length > 0 ? frequencies.Select(int.Parse) : [3, 6, 8])
        {
            var design = new Design
            {
                Shelter = new Dome
                {
                    Lattice = Lattice.Class1(frequency), Cut = frequency % 2 == 0 ? Cut.Fraction(1, 2) : Cut.Fraction(5, 8), Size = new Size.FloorDiameter(Length.FromMillimetres(2000 * frequency)),
                },
                HubSystem = "ring", StrutStock = "pvc-33",
            };
            var bare = Best(() => Kit.Make(design, Shop with { Screening = new() { LoadSets = [] } }).Value);
            var screened = Best(() => Kit.Make(design, Shop).Value);
            Console.WriteLine($"{frequency}V: bare kit {bare:f3} ms, screened {screened:f3} ms; screening adds {(screened - bare) / bare:p0} of the bare kit");
        }
        return 0;
    }

    static double Best<T>(Func<T> work)
    {
        var best = double.MaxValue;
        var all = Stopwatch.StartNew();
        for (var run = 0; run < 20 || all.ElapsedMilliseconds < 3000; run++)
        {
            var watch = Stopwatch.StartNew();
            work();
            best = Math.Min(best, watch.Elapsed.TotalMilliseconds);
        }
        return best;
    }
}
