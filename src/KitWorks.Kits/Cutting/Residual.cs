using System.Collections.Immutable;

namespace KitWorks.Kits.Cutting;

/// <summary>What is still to be cut, what there is to cut it from, and what has been decided.</summary>
sealed class Residual
{
    readonly CutInstance instance;

    public Residual(CutInstance instance, int[] bars)
    {
        this.instance = instance;
        (Demands, Bars, Decided) = ([.. instance.Demands], [.. bars], []);
    }

    Residual(Residual other)
    {
        instance = other.instance;
        (Demands, Bars, Decided) = ([.. other.Demands], [.. other.Bars], [.. other.Decided]);
    }

    /// <summary>Pieces still wanted.</summary>
    public int[] Demands { get; }

    /// <summary>Bars still there.</summary>
    public int[] Bars { get; }

    /// <summary>Patterns decided upon.</summary>
    public List<(Pattern Pattern, int Times)> Decided { get; }

    /// <summary>Whether nothing more is wanted.</summary>
    public bool IsDone => Demands.All(d => d == 0);

    public Residual Copy() => new(this);

    /// <summary>Decides to cut a pattern a number of times, less what is not wanted; how often it was cut in full or in part.</summary>
    public int Take(Pattern pattern, int times)
    {
        times = Math.Min(times, Bars[pattern.Bar]);
        var taken = 0;
        while (taken < times)
        {
            int[] counts = [.. pattern.Counts.Zip(Demands, Math.Min)];
            var repeats = times - taken;
            for (var i = 0; i < counts.Length; i++)
                if (counts[i] > 0) repeats = Math.Min(repeats, Demands[i] / counts[i]);
            if (counts.All(c => c == 0)) break;
            for (var i = 0; i < counts.Length; i++) Demands[i] -= repeats * counts[i];
            Decided.Add((pattern with { Counts = [.. counts] }, repeats));
            taken += repeats;
        }
        Bars[pattern.Bar] -= taken;
        return taken;
    }

    /// <summary>Finishes first-fit decreasing where that does it.</summary>
    public CutSolution? FinishGreedily()
    {
        if (IsDone) return Solution([]);
        var rest = instance with
        {
            Demands = [.. Demands],
            Bars = [.. instance.Bars.Select((b, k) => b with { Available = Bars[k] })],
        };
        return GreedyCutting.Best(rest) is { } solution ? Solution(solution.Uses) : null;
    }

    /// <summary>What has been decided, with the rest.</summary>
    public CutSolution Solution(IEnumerable<(Pattern Pattern, int Times)> rest) => new(Decided.Concat(rest)
        .GroupBy(u => u.Pattern, PatternEquality.Instance)
        .Select(g => (g.Key, g.Sum(u => u.Times)))
        .ToImmutableArray());
}
