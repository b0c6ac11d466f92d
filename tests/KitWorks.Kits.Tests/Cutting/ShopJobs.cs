using KitWorks.Geometry;
using KitWorks.Kits.Cutting;

namespace KitWorks.Kits.Tests.Cutting;

/// <summary>
/// Random jobs of a shop's size: 10 to 60 lengths, 100 to 5,000 pieces (as often small as large), kerf, trim, one to four
/// stock lengths with or without costs, some of them few, and remnants. The same seed gives the same job.
/// </summary>
static class ShopJobs
{
    static readonly double[] Lengths = [2500, 3000, 3048, 4000, 5000, 6000, 6096, 6500];
    static readonly double[] Kerfs = [0, 1.6, 2, 3, 3.2];

    public static CutJob Of(int seed)
    {
        var random = new Random(seed);
        var lengths = Lengths.OrderBy(_ => random.Next()).Take(random.Next(1, 5)).ToList();
        var longest = lengths.Max();
        var hasCosts = random.Next(2) == 0;
        var isScarce = lengths.Count > 1 && random.Next(3) == 0;
        return new()
        {
            Pieces = Pieces(random, longest),
            Stock =
            [
                .. lengths.Select((mm, k) => new StockLength(
                    $"STOCK-{mm}", Length.FromMillimetres(mm),
                    hasCosts ? Math.Round((decimal)(mm / 1000 * (1.8 + random.NextDouble() * 0.5)), 2) : null,
                    isScarce && mm < longest ? random.Next(1, 40) : null)),
            ],
            Remnants =
            [
                .. Enumerable.Range(0, random.Next(2) * random.Next(1, 9))
                    .Select(_ => new Remnant(Length.FromTenths(random.Next(3000, 25000)), random.Next(1, 7))),
            ],
            Kerf = Length.FromMillimetres(Kerfs[random.Next(Kerfs.Length)]),
            EndTrim = Length.FromMillimetres(random.Next(3) * 5),
        };
    }

    /// <summary>The job of a single kit: 2 to 10 strut types, 30 to 300 struts of much the same length, one stock length.</summary>
    public static CutJob Kit(int seed)
    {
        var random = new Random(seed);
        var longest = 700 + random.NextDouble() * 1000;
        return new()
        {
            Pieces =
            [
                .. Enumerable.Range(1, random.Next(2, 11)).Select(i => new CutPiece(
                    $"S{i}", Length.FromTenths((int)(longest * (0.8 + 0.02 * i + 0.01 * random.NextDouble()) * 2) * 5), random.Next(2, 13) * 5)),
            ],
            Stock = [new("PIPE", Length.FromMillimetres(random.Next(2) == 0 ? 3048 : 6096))],
            Kerf = Length.FromMillimetres(3),
        };
    }

    /// <summary>Lengths spread over the whole stock length, or, as a frame's struts are, over a band.</summary>
    static System.Collections.Immutable.ImmutableArray<CutPiece> Pieces(Random random, double longest)
    {
        var types = random.Next(10, 61);
        var pieces = (int)Math.Round(100 * Math.Pow(50, random.NextDouble()));
        var (low, high) = random.Next(2) == 0 ? (150.0, longest * 0.7) : Band(150 + random.NextDouble() * longest * 0.4);
        var tenths = new HashSet<int>();
        while (tenths.Count < types) tenths.Add((int)((low + random.NextDouble() * (high - low)) * 10));
        var weights = tenths.Select(_ => random.NextDouble() + 0.1).ToList();
        return
        [
            .. tenths.Select((t, i) => new CutPiece(
                $"S{i + 1}", Length.FromTenths(t), Math.Max(1, (int)Math.Round(pieces * weights[i] / weights.Sum())))),
        ];

        static (double, double) Band(double low) => (low, low * 1.5);
    }
}
