using System.Globalization;
using KitWorks.Kits.Cutting;
using KitWorks.Kits.Tests.Cutting;

namespace KitWorks.Benchmarks.Cutting;

/// <summary>How many plans of each set are proven: <c>cut-plans [seconds] [set] [first job] [jobs] [-v]</c>.</summary>
/// <remarks>Work is limited as for that many seconds, the clock is not, and times are of the processor: a busy machine counts the same.</remarks>
static class ProvenShares
{
    public static int Print(string[] args)
    {
        var words = args.Where(a => a != "-v").ToArray();
        var seconds = words.Length > 0 ? double.Parse(words[0], CultureInfo.InvariantCulture) : 1;
        var only = words.Length > 1 ? words[1] : "";
        var (first, count) = (words.Length > 2 ? int.Parse(words[2]) : 1, words.Length > 3 ? int.Parse(words[3]) : 128);
        CutPlanner.Plan(ShopJobs.Of(0), TimeSpan.FromSeconds(1));
        Console.WriteLine($"{"set",-6} {"jobs",5} {"proven",7} {"share",7} {"median ms",10} {"p90 ms",8} {"worst ms",9} {"patterns",9}");
        foreach (var (name, jobs) in Sets(first, count).Where(s => s.Name.StartsWith(only, StringComparison.Ordinal)))
        {
            var runs = jobs.Select(j => Run(j.Name, j.Job, seconds, args.Contains("-v"))).OrderBy(r => r.Ms).ToList();
            Console.WriteLine(
                $"{name,-6} {runs.Count,5} {runs.Count(r => r.Plan.Proven),7} {runs.Average(r => r.Plan.Proven ? 1.0 : 0),7:P1} " +
                $"{runs[runs.Count / 2].Ms,10:0.0} {runs[runs.Count * 9 / 10].Ms,8:0.0} {runs[^1].Ms,9:0.0} {runs.Average(r => r.Plan.Patterns.Length),9:0.0}");
        }
        return 0;
    }

    static (CutPlan Plan, double Ms) Run(string name, CutJob job, double seconds, bool isVerbose)
    {
        var start = Environment.CpuUsage.TotalTime;
        var plan = CutPlanner.Plan(job, new SearchBudget(TimeSpan.FromSeconds(20 * seconds), SearchBudget.Share * seconds)).Value;
        var ms = (Environment.CpuUsage.TotalTime - start).TotalMilliseconds;
        if (isVerbose && !plan.Proven)
            Console.WriteLine($"  {name}: {plan.Total} over {plan.LowerBound} {plan.Measure}; {job.Pieces.Length} lengths, {job.Pieces.Sum(p => p.Count)} pieces, {job.Stock.Length} stock lengths from {job.Stock.Min(s => s.Length)}, {job.Remnants.Length} remnants");
        return (plan, ms);
    }

    static IEnumerable<(string Name, IEnumerable<(string Name, CutJob Job)> Jobs)> Sets(int first, int count)
    {
        yield return ("kits", Enumerable.Range(first, count).Select(n => ($"kit {n}", ShopJobs.Kit(n))));
        yield return ("shop", Enumerable.Range(first, count).Select(n => ($"shop {n}", ShopJobs.Of(n))));
        if (OpenData.Folder is null) yield break;
        foreach (var (name, file) in new[] { ("u250", "binpack2.txt"), ("t60", "binpack5.txt"), ("t120", "binpack6.txt") })
            yield return (name, OpenData.Read(file).Select(x => (x.Name, x.Job)));
    }
}
