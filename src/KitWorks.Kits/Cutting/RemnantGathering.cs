namespace KitWorks.Kits.Cutting;

/// <summary>
/// Longer remnants at the same cost and with no more patterns: of two bars that are each cut once, one is filled from the
/// pieces of both as far as it can be, so that what is left over is in one piece.
/// </summary>
sealed class RemnantGathering
{
    /// <summary>Steps in one plan at the most, a millisecond or so.</summary>
    const int MostSteps = 50_000;

    /// <summary>Rounds over all pairs at the most; each makes what is left over more uneven.</summary>
    const int MostRounds = 5;

    readonly CutInstance instance;
    readonly List<(Pattern Pattern, int Times)> uses;
    int steps = MostSteps;

    RemnantGathering(CutInstance instance, CutSolution solution) => (this.instance, uses) = (instance, [.. solution.Uses]);

    /// <summary>The same plan, or one whose remnants are longer.</summary>
    public static CutSolution Of(CutInstance instance, CutSolution solution)
    {
        var gathering = new RemnantGathering(instance, solution);
        int[] singles = [.. Enumerable.Range(0, gathering.uses.Count).Where(u => gathering.uses[u].Times == 1)];
        var goesOn = true;
        for (var round = 0; round < MostRounds && goesOn; round++)
        {
            goesOn = false;
            foreach (var a in singles)
                foreach (var b in singles)
                    if (a != b && gathering.steps > 0) goesOn |= gathering.Gather(a, b);
        }
        return new([.. gathering.uses]);
    }

    /// <summary>Fills the first bar from the pieces of both where that leaves the second with more than either has now.</summary>
    bool Gather(int full, int rest)
    {
        steps -= instance.Types;
        var (a, b) = (uses[full].Pattern, uses[rest].Pattern);
        int[] pieces = [.. a.Counts.Zip(b.Counts, (x, y) => x + y)];
        int Left(Pattern p) => instance.Bars[p.Bar].Capacity - p.Width(instance);
        var total = a.Width(instance) + b.Width(instance);
        var most = Fullest(pieces, instance.Bars[a.Bar].Capacity);
        if (most is null) return false;
        var first = new Pattern(a.Bar, [.. most]);
        var second = new Pattern(b.Bar, [.. pieces.Zip(most, (p, m) => p - m)]);
        if (second.Width(instance) == 0 || total - first.Width(instance) > instance.Bars[b.Bar].Capacity) return false;
        if (Math.Max(Left(first), Left(second)) <= Math.Max(Left(a), Left(b))) return false;
        (uses[full], uses[rest]) = ((first, 1), (second, 1));
        return true;
    }

    int[]? Fullest(int[] pieces, int capacity)
    {
        int[]? best = null;
        var bestRoom = int.MaxValue;
        var counts = new int[pieces.Length];
        Fill(0, capacity);
        return best;

        void Fill(int type, int room)
        {
            if (--steps < 0 || bestRoom == 0) return;
            while (type < pieces.Length && pieces[type] == 0) type++;
            if (type == pieces.Length)
            {
                if (room < bestRoom) (best, bestRoom) = ([.. counts], room);
                return;
            }
            for (var n = Math.Min(pieces[type], room / instance.Widths[type]); n >= 0; n--)
            {
                counts[type] = n;
                Fill(type + 1, room - n * instance.Widths[type]);
            }
            counts[type] = 0;
        }
    }
}
