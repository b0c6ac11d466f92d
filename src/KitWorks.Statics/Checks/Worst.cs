using System.Collections.Immutable;

namespace KitWorks.Statics.Checks;

/// <summary>Keeps the worst of each kind of check under each named case, and what each base hub needs most.</summary>
sealed class Worst
{
    readonly Dictionary<(CheckKind, string), Check> checks = [];
    readonly SortedDictionary<int, Anchor> anchors = [];

    public void Keep(IEnumerable<Check> more)
    {
        foreach (var check in more)
            if (!checks.TryGetValue((check.Kind, check.LoadCase), out var old) || check.Utilisation > old.Utilisation) checks[(check.Kind, check.LoadCase)] = check;
    }

    public void Keep(Anchor anchor)
    {
        if (!anchors.TryGetValue(anchor.Node, out var old) || (anchor.Stakes, anchor.UpliftN + anchor.SlidingN).CompareTo((old.Stakes, old.UpliftN + old.SlidingN)) > 0)
            anchors[anchor.Node] = anchor;
    }

    /// <summary>What the ground must do at a base hub.</summary>
    public static Anchor Of(Reaction r, string name, Criteria criteria)
    {
        var uplift = Math.Max(0, -r.ZN);
        var sliding = Math.Max(0, Math.Sqrt(r.XN * r.XN + r.YN * r.YN) - criteria.Friction * Math.Max(0, r.ZN));
        var stakes = criteria.Stakes(uplift, sliding);
        return new(r.Node, uplift, sliding, stakes, stakes > 0 ? name : null);
    }

    /// <summary>The report. A load on one hub stands for the same load on those like it, so an anchor stands for those like it too.</summary>
    public ScreeningReport Report(int[]? like = null)
    {
        ImmutableArray<Check> sorted = [.. checks.Values.OrderByDescending(c => c.Utilisation).ThenBy(c => c.Kind).ThenBy(c => c.LoadCase, StringComparer.Ordinal)];
        if (like is null) return new() { Checks = sorted, Anchors = [.. anchors.Values] };
        var leading = new Worst();
        foreach (var anchor in anchors.Values) leading.Keep(anchor with { Node = like[anchor.Node] });
        return new() { Checks = sorted, Anchors = [.. anchors.Keys.Select(node => leading.anchors[like[node]] with { Node = node })] };
    }
}
