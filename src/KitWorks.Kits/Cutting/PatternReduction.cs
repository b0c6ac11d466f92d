namespace KitWorks.Kits.Cutting;

/// <summary>
/// Fewer patterns at the same cost: two patterns of one bar become one, or three become two, where the same pieces can be cut
/// that way. Bars and pieces stay as they are, so that the plan's cost does.
/// </summary>
sealed class PatternReduction
{
    /// <summary>Steps in one plan at the most, a few milliseconds.</summary>
    const int MostSteps = 100_000;

    /// <summary>Splits of three patterns' bars over two are tried up to so many for the smaller part.</summary>
    const int SmallPart = 8;

    readonly CutInstance instance;
    readonly List<(Pattern Pattern, int Times)> uses;
    int steps = MostSteps;

    PatternReduction(CutInstance instance, CutSolution solution) =>
        (this.instance, uses) = (instance, [.. solution.Uses.OrderBy(u => u.Times)]);

    /// <summary>The same plan, or one with fewer patterns.</summary>
    public static CutSolution Of(CutInstance instance, CutSolution solution)
    {
        var reduction = new PatternReduction(instance, solution);
        while (reduction.steps > 0 && reduction.Reduce()) { }
        return new([.. reduction.uses]);
    }

    bool Reduce()
    {
        for (var a = 0; a < uses.Count; a++)
            for (var b = a + 1; b < uses.Count && steps > 0; b++)
                if (uses[a].Pattern.Bar == uses[b].Pattern.Bar && Joined([a, b]) is { } joined) return Replace([a, b], joined);
        for (var a = 0; a < uses.Count; a++)
            for (var b = a + 1; b < uses.Count; b++)
                for (var c = b + 1; c < uses.Count && steps > 0; c++)
                    if (uses[a].Pattern.Bar == uses[b].Pattern.Bar && uses[a].Pattern.Bar == uses[c].Pattern.Bar && Joined([a, b, c]) is { } joined)
                        return Replace([a, b, c], joined);
        return false;
    }

    bool Replace(int[] old, List<(Pattern, int)> joined)
    {
        foreach (var index in old.Reverse()) uses.RemoveAt(index);
        uses.InsertRange(0, joined);
        return true;
    }

    /// <summary>The pieces of two patterns in one, or of three in two.</summary>
    List<(Pattern, int)>? Joined(int[] members)
    {
        steps -= instance.Types;
        var bar = uses[members[0]].Pattern.Bar;
        var total = members.Sum(m => uses[m].Times);
        var pieces = new int[instance.Types];
        foreach (var m in members)
            for (var i = 0; i < pieces.Length; i++) pieces[i] += uses[m].Times * uses[m].Pattern.Counts[i];
        if (members.Length == 2) return Split(bar, pieces, total, 0);
        foreach (var part in members.Select(m => uses[m].Times).Concat(Enumerable.Range(1, SmallPart)).Where(p => p < total).Distinct())
            if (Split(bar, pieces, total - part, part) is { } split) return split;
        return null;
    }

    /// <summary>The pieces over two patterns cut so many times, the second perhaps not at all.</summary>
    List<(Pattern, int)>? Split(int bar, int[] pieces, int first, int second)
    {
        steps -= instance.Types;
        var counts = (First: new int[pieces.Length], Second: new int[pieces.Length]);
        var capacity = instance.Bars[bar].Capacity;
        if (!Place(0, capacity, second == 0 ? 0 : capacity)) return null;
        List<(Pattern, int)> split = [(new(bar, [.. counts.First]), first)];
        if (second > 0) split.Add((new(bar, [.. counts.Second]), second));
        return split;

        bool Place(int type, int room, int secondRoom)
        {
            if (room < 0 || secondRoom < 0 || --steps < 0) return false;
            while (type < pieces.Length && pieces[type] == 0) type++;
            if (type == pieces.Length) return true;
            for (var n = pieces[type] / first; n >= 0; n--)
            {
                var rest = pieces[type] - n * first;
                if (second == 0 ? rest != 0 : rest % second != 0) continue;
                counts.First[type] = n;
                counts.Second[type] = second == 0 ? 0 : rest / second;
                if (Place(type + 1, room - n * instance.Widths[type], secondRoom - counts.Second[type] * instance.Widths[type])) return true;
            }
            counts.First[type] = counts.Second[type] = 0;
            return false;
        }
    }
}
