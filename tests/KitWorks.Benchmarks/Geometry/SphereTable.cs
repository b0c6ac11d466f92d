using System.Diagnostics;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace KitWorks.Benchmarks.Geometry;

/// <summary>
/// Frames of whole spheres, and beside them in the same run the bare triangles of the same spheres by three's geometry
/// under Node (npm ci in this folder; without it the column stays empty).
/// </summary>
static class SphereTable
{
    public static int Print(string[] args)
    {
        var quick = Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance);
        var summary = BenchmarkRunner.Run<SphereBenchmarks>(DefaultConfig.Instance.AddJob(quick), args);
        var theirs = Three();
        Console.WriteLine($"{"frequency",9} {"ours ms",10} {"ns a strut",10} {"B a strut",10} {"three ms",10} {"three / ours",12}");
        foreach (var report in summary.Reports)
        {
            var frequency = (int)report.BenchmarkCase.Parameters["Frequency"];
            var struts = 30.0 * frequency * frequency;
            var median = report.ResultStatistics!.Median;
            var bytes = report.GcStats.GetBytesAllocatedPerOperation(report.BenchmarkCase) ?? 0;
            var three = theirs.GetValueOrDefault(frequency, double.NaN);
            Console.WriteLine($"{frequency,9} {median / 1e6,10:F4} {median / struts,10:F1} {bytes / struts,10:F0} {three,10:F4} {three * 1e6 / median,12:F1}");
        }
        return 0;
    }

    static Dictionary<int, double> Three()
    {
        var script = Path.Combine(AppContext.BaseDirectory, "../../../Geometry/three-spheres.mjs");
        try
        {
            using var node = Process.Start(new ProcessStartInfo("node", script) { RedirectStandardOutput = true })!;
            var lines = node.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
            return lines.Select(l => l.Split(' ')).ToDictionary(l => int.Parse(l[0]), l => double.Parse(l[1]));
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Console.WriteLine("Node is not installed: three's column stays empty.");
            return [];
        }
    }
}
