using System.Diagnostics;
using System.Globalization;
using System.Text;
using KitWorks.Geometry;
using KitWorks.Kits.Cutting;
using static KitWorks.Kits.Tests.Cutting.Jobs;

namespace KitWorks.Kits.Tests.Cutting;

public class ExactnessTests
{
    [Fact]
    public void Plan_OnSmallJobs_AgreesWithGlpsolOverAllPatterns()
    {
        if (!HasGlpsol()) Assert.Skip("glpsol is not installed (Debian's glpk-utils).");
        var agreed = 0;
        for (var seed = 1; seed <= 30; seed++)
        {
            var job = SmallJob(new(seed));
            var plan = CutPlanChecker.Planned(job, TimeSpan.FromSeconds(10));
            if (ByGlpsol(job) is not { } best) continue;
            agreed++;
            Assert.True(plan.Proven && plan.Total == best, $"{seed}: {plan.Total}, bound {plan.LowerBound}, glpsol {best}");
        }
        Assert.True(agreed >= 20, $"glpsol came to an end on {agreed} of 30");
    }

    [Fact]
    public void Knapsack_OnSmallCases_IsAsGoodAsTryingEverything()
    {
        var random = new Random(7);
        for (var n = 0; n < 300; n++)
        {
            var types = random.Next(1, 5);
            int[] widths = [.. Enumerable.Range(0, types).Select(_ => random.Next(1, 30))];
            int[] values = [.. widths.Select(_ => random.Next(0, 50))];
            int[] bounds = [.. widths.Select(_ => random.Next(0, 6))];
            var capacity = random.Next(30, 90);
            var knapsack = new BoundedKnapsack(widths, capacity);
            knapsack.Solve(values, bounds);
            for (var c = 0; c <= capacity; c++)
            {
                var pattern = knapsack.PatternAt(c);
                Assert.Equal(BestByTrying(widths, values, bounds, c, 0), knapsack.Best(c));
                Assert.Equal(knapsack.Best(c), pattern.Zip(values, (a, v) => a * v).Sum());
                Assert.True(pattern.Zip(widths, (a, w) => a * w).Sum() <= c && pattern.Zip(bounds).All(x => x.First <= x.Second));
            }
        }
    }

    [Fact]
    public void StockMix_OnSmallCases_IsAsCheapAsTryingEverything()
    {
        var random = new Random(11);
        for (var n = 0; n < 500; n++)
        {
            var bars = Enumerable.Range(0, random.Next(1, 5)).Select(k => new Bar(100, random.Next(1, 30), random.Next(0, 9), k)).ToArray();
            var instance = new CutInstance([1], [100], [.. bars], 1, CutMeasure.Cost);
            var cuts = Enumerable.Range(0, random.Next(1, 4)).Select(_ => new StockCut([.. bars.Select(_ => (long)random.Next(0, 20))], random.Next(1, 150))).ToList();
            double[] hint = [.. bars.Select(_ => random.NextDouble() * 9)];
            Assert.Equal(CheapestByTrying(bars, cuts, [], 0), StockMix.Cheapest(instance, cuts, [], hint).Bound);
        }
    }

    static long BestByTrying(int[] widths, int[] values, int[] bounds, int room, int type)
    {
        if (type == widths.Length) return 0;
        var best = 0L;
        for (var n = 0; n <= bounds[type] && n * widths[type] <= room; n++)
            best = Math.Max(best, n * values[type] + BestByTrying(widths, values, bounds, room - n * widths[type], type + 1));
        return best;
    }

    static long CheapestByTrying(Bar[] bars, List<StockCut> cuts, List<int> mix, long cost)
    {
        if (mix.Count == bars.Length) return cuts.All(c => c.Worth.Zip(mix, (w, n) => w * n).Sum() >= c.Need) ? cost : long.MaxValue;
        return Enumerable.Range(0, bars[mix.Count].Available + 1).Min(n => CheapestByTrying(bars, cuts, [.. mix, n], cost + n * bars[mix.Count].Cost));
    }

    static CutJob SmallJob(Random random) => new()
    {
        Pieces = [.. Enumerable.Range(1, random.Next(2, 7)).Select(i => new CutPiece($"S{i}", Mm(400 + random.Next(1600)), random.Next(1, 15)))],
        Stock = [new("A", Mm(3000), 3.10m), new("B", Mm(4000), 3.95m, random.Next(3, 8))],
        Remnants = random.Next(2) == 0 ? [] : [new(Mm(1200), random.Next(1, 4))],
        Kerf = Mm(random.Next(4)),
    };

    static bool HasGlpsol() => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(p => File.Exists(Path.Combine(p, "glpsol")));

    /// <summary>The least cost, or null where glpsol takes long, by a programme over every pattern of every bar, written in the CPLEX LP format.</summary>
    static decimal? ByGlpsol(CutJob job)
    {
        var lengths = job.Pieces.GroupBy(p => p.CutLength.Tenths).Select(g => (Tenths: g.Key, Count: g.Sum(p => p.Count))).ToList();
        var bars = job.Stock.Select(s => (s.Length.Tenths, Cost: s.Cost!.Value, Available: s.Available)).Concat(job.Remnants.Select(r => (r.Length.Tenths, Cost: 0m, Available: (int?)r.Count))).ToList();
        var columns = bars.SelectMany((b, k) => Patterns([.. lengths.Select(l => l.Tenths)], job.Kerf.Tenths, b.Tenths + job.Kerf.Tenths, 0).Select(p => (Bar: k, Counts: p))).ToList();
        var lp = new StringBuilder("Minimize\n cost: ");
        lp.AppendJoin(" + ", columns.Select((c, p) => $"{bars[c.Bar].Cost.ToString(CultureInfo.InvariantCulture)} x{p}")).Append("\nSubject To\n");
        for (var i = 0; i < lengths.Count; i++)
            lp.Append($" d{i}: ").AppendJoin(" + ", columns.Select((c, p) => (c.Counts, p)).Where(x => x.Counts[i] > 0).Select(x => $"{x.Counts[i]} x{x.p}")).Append($" >= {lengths[i].Count}\n");
        for (var k = 0; k < bars.Count; k++)
            if (bars[k].Available is { } available && columns.Exists(c => c.Bar == k))
                lp.Append($" b{k}: ").AppendJoin(" + ", columns.Select((c, p) => (c.Bar, p)).Where(x => x.Bar == k).Select(x => $"x{x.p}")).Append($" <= {available}\n");
        lp.Append("General\n").AppendJoin("\n", columns.Select((_, p) => $" x{p}")).Append("\nEnd\n");
        return Solve(lp.ToString());
    }

    static IEnumerable<int[]> Patterns(int[] lengths, int kerf, int room, int type)
    {
        if (type == lengths.Length) return [new int[lengths.Length]];
        return Enumerable.Range(0, room / (lengths[type] + kerf) + 1).SelectMany(n =>
            Patterns(lengths, kerf, room - n * (lengths[type] + kerf), type + 1).Select(rest => { rest[type] = n; return rest; }));
    }

    static decimal? Solve(string programme)
    {
        var (model, answer) = (Path.GetTempFileName(), Path.GetTempFileName());
        try
        {
            File.WriteAllText(model, programme);
            using var glpsol = Process.Start(new ProcessStartInfo("glpsol", ["--lp", model, "--write", answer, "--cuts", "--tmlim", "2"]) { RedirectStandardOutput = true })!;
            glpsol.StandardOutput.ReadToEnd();
            glpsol.WaitForExit();
            // s mip <rows> <columns> <o: optimal> <objective>
            var words = File.ReadLines(answer).First(l => l.StartsWith("s mip", StringComparison.Ordinal)).Split(' ');
            return words[4] != "o" ? null : Math.Round(decimal.Parse(words[5], NumberStyles.Float, CultureInfo.InvariantCulture), 4);
        }
        finally
        {
            File.Delete(model);
            File.Delete(answer);
        }
    }
}
