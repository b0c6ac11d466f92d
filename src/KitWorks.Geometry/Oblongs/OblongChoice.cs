using System.Collections.Concurrent;

namespace KitWorks.Geometry;

/// <summary>Chooses which families of an oblong share a length, and the lengths.</summary>
/// <remarks>
/// Of the ways to share n lengths it takes the one whose nodes lie near a capsule, whose shell turns outwards at every strut, and which then
/// opens the largest floor for its longest strut. No figure of any existing shelter goes into it. The struts around the five-way nodes,
/// which a smooth shell wants shortest, share a length where there are three or more.
/// </remarks>
static class OblongChoice
{
    // From the strictest: how far from the capsule, root mean square over its radius, and how far the flattest strut must turn, in degrees.
    // The first rung that any shape reaches decides. Few lengths or an uncommon fold reach a lower one; the middle of a long barrel is flat
    // along its lines, which rounding may make a last digit less than nothing.
    static readonly (double Rms, double FoldDegrees)[] Rungs = [(0.002, 5), (0.005, 3), (0.01, 2), (0.01, Flat), (0.03, 1), (0.03, Flat), (0.05, Flat)];

    const double Flat = -1e-6;

    /// <summary>Up to this many ways to share are all tried; beyond, the search climbs from the nearest lengths of the free shape.</summary>
    const int TryAll = 600;

    static readonly ConcurrentDictionary<(int, int, int), OblongShape?> Chosen = new();

    /// <summary>
    /// The shape, its longest strut of length 1; null where no shell closes in so few lengths. A pure function that remembers its answers.
    /// </summary>
    public static OblongShape? Of(int fold, int bays, int lengths) =>
        Chosen.GetOrAdd((fold, bays, lengths), key => Choose(new OblongRings(key.Item1, key.Item2), key.Item3));

    static OblongShape? Choose(OblongRings rings, int lengths)
    {
        var free = OblongShape.Free(rings);
        var (parts, apart) = Parts(rings, lengths);
        var ways = apart ? Ways(parts.Max(), lengths - 1) : Ways(parts.Max() + 1, lengths);
        var choice = ways <= TryAll ? BestOf(free, parts, lengths, apart) : Climb(free, parts, lengths, apart);
        return choice.Closes ? choice.Shape : null;
    }

    // What may take a length of its own: a class of families, the struts around the five-way nodes first and always by themselves; or for
    // one and two lengths, and where classes are too few, any single family.
    static (int[] PartOf, bool SpokesApart) Parts(OblongRings rings, int lengths)
    {
        var classes = rings.Families.Select(f => f.Class).Distinct().OrderBy(c => c != FamilyClass.Spoke).ToList();
        return lengths >= 3 && classes.Count >= lengths
            ? ([.. rings.Families.Select(f => classes.IndexOf(f.Class))], true)
            : ([.. Enumerable.Range(0, rings.Families.Count)], false);
    }

    // Stirling's numbers of the second kind.
    static double Ways(int parts, int lengths)
    {
        var ways = new double[lengths + 1];
        ways[0] = 1;
        for (var part = 0; part < parts; part++)
        {
            for (var n = lengths; n >= 1; n--) ways[n] = n * ways[n] + ways[n - 1];
            ways[0] = 0;
        }
        return ways[lengths];
    }

    static Candidate BestOf(OblongShape free, int[] parts, int lengths, bool apart)
    {
        Candidate? best = null;
        var groups = new int[parts.Max() + 1];
        void Share(int part, int used)
        {
            if (lengths - used > groups.Length - part) return;
            if (part == groups.Length)
            {
                best = Better(best, Try(free, parts, groups, lengths));
                return;
            }
            for (groups[part] = part > 0 && apart ? 1 : 0; groups[part] <= Math.Min(used, lengths - 1); groups[part]++) Share(part + 1, Math.Max(used, groups[part] + 1));
        }
        Share(0, 0);
        return best!;
    }

    static Candidate Climb(OblongShape free, int[] parts, int lengths, bool apart)
    {
        var groups = apart ? [0, .. Nearest(free, parts, 1, lengths - 1).Select(g => g + 1)] : Nearest(free, parts, 0, lengths);
        var best = Try(free, parts, groups, lengths);
        for (var (climbing, top) = (true, groups); climbing; groups = top)
        {
            climbing = false;
            for (var part = apart ? 1 : 0; part < groups.Length; part++)
                for (var group = apart ? 1 : 0; group < lengths; group++)
                {
                    if (groups[part] == group || groups.Count(g => g == groups[part]) == 1) continue;
                    var moved = (int[])groups.Clone();
                    moved[part] = group;
                    var candidate = Try(free, parts, moved, lengths);
                    if (Better(best, candidate) == best) continue;
                    (best, top, climbing) = (candidate, moved, true);
                }
        }
        return best;
    }

    // The free lengths in order, parted at the widest gaps.
    static int[] Nearest(OblongShape free, int[] parts, int first, int lengths)
    {
        var means = Enumerable.Range(first, parts.Max() + 1 - first)
            .Select(part => free.Rings.Families.Where((_, i) => parts[i] == part).Average(free.LengthOf)).ToArray();
        var order = Enumerable.Range(0, means.Length).OrderBy(part => means[part]).ToArray();
        var gaps = Enumerable.Range(1, order.Length - 1).OrderByDescending(i => means[order[i]] - means[order[i - 1]]).Take(lengths - 1).ToHashSet();
        var groups = new int[means.Length];
        for (int i = 0, group = 0; i < order.Length; i++)
        {
            if (gaps.Contains(i)) group++;
            groups[order[i]] = group;
        }
        return groups;
    }

    sealed record Candidate(OblongShape Shape, int Rung, double Roominess, double FoldDegrees)
    {
        public bool Closes => Rung < int.MaxValue;
    }

    static Candidate Try(OblongShape free, int[] parts, int[] groups, int lengths)
    {
        var place = free.Rings.Families.Select((family, i) => (family, i)).ToDictionary(f => f.family, f => f.i);
        int GroupOf(OblongRings.Family family) => groups[parts[place[family]]];
        var tied = free.Tied(GroupOf, lengths);
        var means = Enumerable.Range(0, lengths).Select(g => tied.Rings.Families.Where(f => GroupOf(f) == g).Average(tied.LengthOf)).ToArray();
        var scale = 1 / means.Max();
        var atScale = tied with { Unknowns = [.. tied.Unknowns.Select(u => u * scale)], Barrel = tied.Barrel * scale };
        // Scaled so that the longest is 1 to the last bit, then closed.
        if (atScale.Closed(f => means[GroupOf(f)] == means.Max() ? 1 : means[GroupOf(f)] * scale) is not { } shape)
            return new(atScale, int.MaxValue, 0, double.NegativeInfinity);
        var fold = shape.SmallestFoldDegrees;
        var rung = Array.FindIndex(Rungs, r => shape.Rms <= r.Rms && fold >= r.FoldDegrees);
        return new(shape, rung < 0 ? Rungs.Length : rung, shape.Roominess, fold);
    }

    static Candidate Better(Candidate? best, Candidate other) =>
        best is null || other.Rung < best.Rung
        || (other.Rung == best.Rung && (other.Rung < Rungs.Length ? other.Roominess > best.Roominess : other.FoldDegrees > best.FoldDegrees))
            ? other
            : best;
}
