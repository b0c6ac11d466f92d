using System.Diagnostics;
using System.Diagnostics.Metrics;
using KitWorks.Geometry;
using MediatR;

namespace KitWorks.Shop.Counting;

/// <summary>What a module does when a command is done and the change safely kept: counts it, or forgets what is no longer so.</summary>
interface IAfterwards<in TRequest, in T>
{
    void After(TRequest request, T answer);
}

/// <summary>
/// Outermost around every command: how long it took and how it ended, and what its module does afterwards. A repeat of a
/// request is nothing new.
/// </summary>
sealed class Counted<TRequest, T>(IEnumerable<IAfterwards<TRequest, T>> afterwards, Call call) : IPipelineBehavior<TRequest, Outcome<T>>
    where TRequest : IRequest<Outcome<T>>
{
    static readonly string Name = typeof(TRequest).Name;

    public async Task<Outcome<T>> Handle(TRequest request, CancellationToken cancellationToken, RequestHandlerDelegate<Outcome<T>> next)
    {
        // What a command sends itself is part of it, and may yet be rolled back with it.
        if (call.AtWork is not null) return await next();
        call.AtWork = Name;
        using var activity = ShopMeter.Activities.StartActivity(Name);
        var start = Stopwatch.GetTimestamp();
        var ended = "failed";
        try
        {
            var outcome = await next();
            var done = outcome.Succeeds(out var answer, out var refusal);
            ended = call.Replayed ? "replayed" : done ? "done" : refusal!.Code;
            if (done && !call.Replayed)
                foreach (var one in afterwards) one.After(request, answer!);
            return outcome;
        }
        finally
        {
            call.AtWork = null;
            activity?.SetTag("kitworks.ended", ended);
            ShopMeter.Commands.Record(Stopwatch.GetElapsedTime(start).TotalSeconds, new("command", Name), new("ended", ended));
        }
    }
}

/// <summary>The shop's instruments, for whoever listens to the platform's meters and activities.</summary>
static class ShopMeter
{
    const string Source = "KitWorks.Shop";

    public static readonly ActivitySource Activities = new(Source);
    public static readonly Meter Meter = new(Source);

    /// <summary>Ended with <c>done</c>, <c>replayed</c>, <c>failed</c>, or the code of the refusal.</summary>
    public static readonly Histogram<double> Commands = Meter.CreateHistogram(
        "kitworks.command.duration", "s", "Commands, by name and how they ended", tags: null, new InstrumentAdvice<double>
        {
            HistogramBucketBoundaries = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10],
        });
}
