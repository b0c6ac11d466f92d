using System.Collections.Immutable;

namespace KitWorks.Geometry;

/// <summary>A frame whose struts come in fewer lengths than its mathematics asks for.</summary>
/// <param name="Frame">
/// The frame with its nodes moved; its families are the strut types, and a strut's spacing is that of its type, from which the distance
/// between its nodes differs by <paramref name="WorstMisfitMm"/> at most.
/// </param>
/// <param name="WorstMisfitMm">The greatest difference between a strut's spacing and the distance that it spans, in millimetres.</param>
/// <param name="WorstMoveMm">How far the node that moved most has moved, in millimetres.</param>
/// <param name="WorkRanOut">Whether the search stopped at its limit of work: the answer closes, and a better one may exist.</param>
public sealed record FewerLengths(Frame Frame, double WorstMisfitMm, double WorstMoveMm, bool WorkRanOut = false);

/// <summary>Finds the fewest strut types that close a frame.</summary>
/// <remarks>
/// <para>A tied joint has some slack. Struts whose lengths differ by less than it allows can be cut alike; beyond that the nodes must move.
/// A shell that stands on its base is just rigid: any lengths near its own close it, so that a single length would do if the shell might
/// crumple. It may not: at every strut it keeps at least half of its turn (<see cref="KeptFold"/>).</para>
/// <para>Families are put into groups as narrow as can be; each family's distance becomes the one nearest to its own that its group's
/// length allows, and the nodes are moved to fit exactly. Deterministic. Where the nodes do not settle, that grouping counts as one that does not
/// close; every family by itself always closes, so there is always an answer.</para>
/// </remarks>
public static class FewestLengths
{
    /// <summary>
    /// The share of its turn that a shell keeps at every strut. A node whose surroundings are nearly flat can snap through under load.
    /// </summary>
    public const double KeptFold = 0.5;

    /// <summary>Where the shell hardly turns, a fold may shrink by this much all the same, in degrees.</summary>
    const double FreeFoldDegrees = 0.25;

    /// <summary>
    /// How many multiplications a search may take; about a second's work, counted and not timed, so that the answer is the same on every machine. Any
    /// dome of up to 16V takes less than a fifth of it.
    /// </summary>
    public const long WorkLimit = 1_000_000_000;

    /// <summary>How finely the smallest tolerance is found, in millimetres.</summary>
    const double ToleranceStepMm = 0.05;

    /// <summary>The fewest strut types that close within a tolerance.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="tolerance">How much longer or shorter than its strut a distance between nodes may be; at least a tenth of a millimetre.</param>
    /// <param name="workLimit">How many multiplications it may take.</param>
    public static Outcome<FewerLengths> Within(Frame frame, Length tolerance, long workLimit = WorkLimit)
    {
        ArgumentNullException.ThrowIfNull(frame);
        if (tolerance.Tenths < 1) return Refusal.OfField("lengths.tolerance", "tolerance", $"The tolerance is {tolerance}; it is 0.1 mm or more.");
        var search = new Search(frame, workLimit);
        // More types close whatever fewer do, but for a settling that fails: halve the range, keep the best that did close.
        int low = 1, high = frame.Families.Length;
        var best = search.Unchanged();
        while (low < high && !search.WorkRanOut)
        {
            var middle = (low + high) / 2;
            if (search.Try(middle, tolerance.Millimetres) is { } found) (high, best) = (middle, found);
            else low = middle + 1;
        }
        return best with { WorkRanOut = search.WorkRanOut };
    }

    /// <summary>A wanted number of strut types with the smallest tolerance that allows it, to a twentieth of a millimetre.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="types">How many types at most; 1 or more.</param>
    /// <param name="workLimit">How many multiplications it may take.</param>
    public static Outcome<FewerLengths> Of(Frame frame, int types, long workLimit = WorkLimit)
    {
        ArgumentNullException.ThrowIfNull(frame);
        if (types < 1) return Refusal.OfField("lengths.types", "types", $"There are {types} strut types; there is 1 or more.");
        var search = new Search(frame, workLimit);
        if (types >= frame.Families.Length) return search.Unchanged();
        // Without moving a node the widest group's half width is enough.
        var (best, high) = search.Unmoved(types);
        for (var low = 0.0; high - low > ToleranceStepMm && !search.WorkRanOut;)
        {
            var middle = (low + high) / 2;
            if (search.Try(types, middle) is { } found) (high, best) = (Math.Min(middle, found.WorstMisfitMm), found);
            else low = middle;
        }
        return best with { WorkRanOut = search.WorkRanOut };
    }

    sealed class Search(Frame frame, long workLimit)
    {
        readonly Closing closing = new(frame, workLimit);
        readonly ImmutableArray<double> spacings = [.. frame.Families.Select(f => f.SpacingMm)];
        readonly Hinge[] hinges = Hinge.Of(frame);

        public FewerLengths Unchanged() => new(frame, 0, 0);

        public bool WorkRanOut => closing.WorkRanOut;

        /// <summary>Families cut alike with every node where it is, and the tolerance that takes.</summary>
        public (FewerLengths, double) Unmoved(int types)
        {
            var groupOf = LengthGroups.Narrowest(spacings, types);
            var fewer = Regrouped.Of(frame, [.. frame.Nodes.Select(n => n.Position)], groupOf, Middles(groupOf));
            return (fewer, fewer.WorstMisfitMm);
        }

        public FewerLengths? Try(int types, double tolerance)
        {
            var groupOf = LengthGroups.Narrowest(spacings, types);
            var middles = Middles(groupOf);
            var distances = spacings.Select((s, f) => Math.Clamp(s, middles[groupOf[f]] - tolerance, middles[groupOf[f]] + tolerance)).ToArray();
            if (closing.At(distances) is not { } points) return null;
            return hinges.All(h => h.FoldDegrees(points) >= h.BeforeDegrees * (h.BeforeDegrees > 0 ? KeptFold : 1) - FreeFoldDegrees)
                ? Regrouped.Of(frame, points, groupOf, middles)
                : null;
        }

        double[] Middles(int[] groupOf) =>
            [.. Enumerable.Range(0, groupOf[^1] + 1).Select(g => (spacings[Array.IndexOf(groupOf, g)] + spacings[Array.LastIndexOf(groupOf, g)]) / 2)];
    }
}
