using System.Diagnostics;
using System.Diagnostics.Metrics;

namespace KitWorks.Kits;

/// <summary>
/// How long making kits and cut plans takes, for whoever listens to the platform's meters and activities. It changes
/// nothing in what is made, and costs next to nothing while nobody listens.
/// </summary>
readonly struct Timing : IDisposable
{
    /// <summary>The name that listeners know the instruments by.</summary>
    const string Source = "KitWorks.Kits";

    static readonly ActivitySource Activities = new(Source);
    static readonly Meter Meter = new(Source);

    /// <summary>From a quarter of a millisecond, a small dome, to the ten seconds after which no plan is sought any longer.</summary>
    static readonly InstrumentAdvice<double> Bounds = new()
    {
        HistogramBucketBoundaries = [0.00025, 0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10],
    };

    static readonly Histogram<double> Kits = Meter.CreateHistogram("kitworks.kit.duration", "s", "Making a kit, its cut plan included", tags: null, Bounds);
    static readonly Histogram<double> CutPlans = Meter.CreateHistogram("kitworks.cut_plan.duration", "s", "Making a cut plan", tags: null, Bounds);

    readonly Histogram<double> into;
    readonly long start;
    readonly Activity? activity;

    Timing(string what, Histogram<double> into)
    {
        this.into = into;
        start = Stopwatch.GetTimestamp();
        activity = Activities.StartActivity(what);
    }

    /// <summary>From here until disposal a kit is made.</summary>
    public static Timing Kit() => new("make kit", Kits);

    /// <summary>From here until disposal a cut plan is made.</summary>
    public static Timing CutPlan() => new("plan cuts", CutPlans);

    /// <inheritdoc/>
    public void Dispose()
    {
        into.Record(Stopwatch.GetElapsedTime(start).TotalSeconds);
        activity?.Dispose();
    }
}
