using System.Diagnostics;
using KitWorks.Labels;

namespace KitWorks.Benchmarks.Labels;

/// <summary>
/// Labels a second on one thread, beside bare Skia drawing the same bars and text in the same run, and the memory that a
/// long run holds: <c>labels [count] [rounds]</c>.
/// </summary>
static class LabelRates
{
    public static int Print(string[] args)
    {
        var count = args.Length > 0 ? int.Parse(args[0]) : 1000;
        var rounds = args.Length > 1 ? int.Parse(args[1]) : 5;
        var press = LabelPress.Open().Value;
        var labels = ManyLabels.Of(count);
        var bare = new BareSkia();
        Press(press, labels);
        bare.Write(Stream.Null, labels, encode: true);
        bare.Write(Stream.Null, labels, encode: false);
        List<double> pressed = [], encoded = [], drawn = [];
        for (var i = 0; i < rounds; i++)
        {
            pressed.Add(Rate(count, () => Press(press, labels)));
            encoded.Add(Rate(count, () => bare.Write(Stream.Null, labels, encode: true)));
            drawn.Add(Rate(count, () => bare.Write(Stream.Null, labels, encode: false)));
        }
        Console.WriteLine($"{count} labels a document, median of {rounds}, one thread");
        Console.WriteLine($"press                      {Median(pressed),8:0} labels/s");
        Console.WriteLine($"bare Skia, codes encoded   {Median(encoded),8:0} labels/s   press / bare {Median(pressed) / Median(encoded):0.00}");
        Console.WriteLine($"bare Skia, codes ready     {Median(drawn),8:0} labels/s   press / bare {Median(pressed) / Median(drawn):0.00}");
        foreach (var n in new[] { 1_000, 10_000, 30_000 })
            Console.WriteLine($"peak over start, {n,6} labels: bare {PeakMiB(() => bare.Write(Stream.Null, new MadeOnDemand(n), encode: true)):0.0} MiB, then press {PeakMiB(() => Press(press, new MadeOnDemand(n))):0.0} MiB");
        return 0;
    }

    static void Press(LabelPress press, IReadOnlyList<Label> labels)
    {
        if (press.WritePdf(Stream.Null, labels, LabelStock.Page100x150) is { } refusal) throw new InvalidOperationException(refusal.Detail);
    }

    static double Rate(int count, Action action)
    {
        var start = Stopwatch.GetTimestamp();
        action();
        return count / Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);

    static double PeakMiB(Action action)
    {
        GC.Collect();
        using var process = Process.GetCurrentProcess();
        long start = process.WorkingSet64, peak = start;
        using var done = new CancellationTokenSource();
        var watch = Task.Run(async () =>
        {
            while (!done.IsCancellationRequested)
            {
                using var now = Process.GetCurrentProcess();
                peak = Math.Max(peak, now.WorkingSet64);
                await Task.Delay(20);
            }
        });
        action();
        done.Cancel();
        watch.GetAwaiter().GetResult();
        return (peak - start) / 1048576.0;
    }

    /// <summary>Labels that exist only while they are looked at.</summary>
    sealed class MadeOnDemand(int count) : IReadOnlyList<BundleLabel>
    {
        public BundleLabel this[int index] => ManyLabels.Make(index);
        public int Count => count;
        public IEnumerator<BundleLabel> GetEnumerator() => Enumerable.Range(0, count).Select(ManyLabels.Make).GetEnumerator();
        System.Collections.IEnumerator System.Collections.IEnumerable.GetEnumerator() => GetEnumerator();
    }
}
