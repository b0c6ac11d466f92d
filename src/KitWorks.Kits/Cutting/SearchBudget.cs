using System.Diagnostics;

namespace KitWorks.Kits.Cutting;

/// <summary>
/// How long to look. Work is counted in steps that are the same on every machine, so that a plan does not depend on how busy
/// the machine is; the clock is the last resort on a machine too slow for its share of work.
/// </summary>
/// <param name="limit">The clock's limit.</param>
/// <param name="work">The work allowed, in seconds of the machine it was measured on.</param>
sealed class SearchBudget(TimeSpan limit, double work)
{
    /// <summary>The share of the limit that counted work may take on the machine it was measured on.</summary>
    public const double Share = 0.8;

    /// <summary>The budget for a time limit.</summary>
    public SearchBudget(TimeSpan limit) : this(limit, limit.TotalSeconds * Share) { }

    readonly long start = Stopwatch.GetTimestamp();
    double left = work;

    /// <summary>Whether to stop.</summary>
    public bool IsSpent => left <= 0 || Stopwatch.GetElapsedTime(start) >= limit;

    /// <summary>Work left, in seconds of the machine it was measured on.</summary>
    public double WorkLeft => Math.Max(0, left);

    /// <summary>Clock left, in seconds.</summary>
    public double ClockLeft => Math.Max(0, (limit - Stopwatch.GetElapsedTime(start)).TotalSeconds);

    /// <summary>Counts work, in seconds of the machine it was measured on.</summary>
    public void Spend(double seconds) => left -= seconds;
}
