using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Statics.Loads;

namespace KitWorks.Statics.Checks;

/// <summary>Holds a shelter against a set of loads.</summary>
public static class Screening
{
    /// <summary>
    /// Screens a frame both staked (<see cref="BaseSupport.Pinned"/>) and set down (<see cref="BaseSupport.Sliding"/>), since a stake may hold or give, and
    /// reports the worse of both. A frame that is firm only when staked is screened so, with a note. Of hubs that the frame's symmetry makes alike one is
    /// loaded for all, and each base hub is given what the worst of those like it needs, unless struts are taken out.
    /// </summary>
    /// <param name="frame">The frame.</param>
    /// <param name="section">The section of every strut, with its mass.</param>
    /// <param name="loads">The loads.</param>
    /// <param name="criteria">What it is held to.</param>
    /// <param name="without">Ids of struts that are taken out for an opening.</param>
    /// <returns>The report, or a refusal that names the field at fault. A mechanism is no refusal.</returns>
    public static Outcome<ScreeningReport> Of(Frame frame, Section section, LoadSet loads, Criteria criteria, IReadOnlyList<int>? without = null)
    {
        ArgumentNullException.ThrowIfNull(loads);
        if (!Truss.Of(frame, section, BaseSupport.Pinned, without).Succeeds(out var pinned, out var refusal)) return refusal;
        int[] like = without is null or [] ? [.. frame.LikeNodes()] : [.. frame.Nodes.Select(n => n.Id)];
        if (!loads.On(pinned.Model, section, like.Distinct()).Succeeds(out var cases, out refusal)) return refusal;
        if (!Of(pinned, cases, criteria).Succeeds(out var staked, out refusal)) return refusal;
        if (!staked.Mechanisms.IsEmpty) return staked;
        var sliding = Truss.Of(pinned.Model.Sliding(), section).Value;
        if (!sliding.Mechanisms.IsEmpty)
            return Alike(staked, like) with { Notes = [$"Stakes are part of the frame: set down without them it is loose. {sliding.Mechanisms[0].Detail}"] };
        return Of(sliding, cases, criteria).Select(set => Alike(Worse(staked, set), like));
    }

    /// <summary>A load on one hub stands for the same load on those like it, so an anchor stands for those like it too.</summary>
    static ScreeningReport Alike(ScreeningReport report, int[] like)
    {
        var worst = new SortedDictionary<int, Anchor>();
        foreach (var anchor in report.Anchors) Keep(worst, anchor with { Node = like[anchor.Node] });
        return report with { Anchors = [.. report.Anchors.Select(a => worst[like[a.Node]] with { Node = a.Node })] };
    }

    /// <summary>Screens one analysis under load cases.</summary>
    /// <returns>The report, or a refusal with fields such as <c>criteria/tieSafety</c>. A mechanism is no refusal.</returns>
    public static Outcome<ScreeningReport> Of(TrussAnalysis analysis, IEnumerable<LoadCase> cases, Criteria criteria)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(cases);
        ArgumentNullException.ThrowIfNull(criteria);
        if (criteria.Fault() is { } fault) return fault;
        if (!analysis.Mechanisms.IsEmpty) return new ScreeningReport { Mechanisms = analysis.Mechanisms };
        var checks = new Dictionary<(CheckKind, string), Check>();
        var anchors = new SortedDictionary<int, Anchor>();
        foreach (var load in cases)
        {
            if (!analysis.Solve(load.Loads, load.Duration == LoadDuration.Lasting).Succeeds(out var result, out var refusal)) return refusal;
            foreach (var check in MemberChecks.Of(analysis, result, load, criteria)) Keep(checks, check);
            foreach (var reaction in result.Reactions) Keep(anchors, Ground(reaction, load.Name, criteria));
        }
        return new ScreeningReport { Checks = Sorted(checks), Anchors = [.. anchors.Values] };
    }

    static Anchor Ground(Reaction r, string name, Criteria criteria)
    {
        var uplift = Math.Max(0, -r.ZN);
        var sliding = Math.Max(0, Math.Sqrt(r.XN * r.XN + r.YN * r.YN) - criteria.Friction * Math.Max(0, r.ZN));
        var stakes = criteria.Stakes(uplift, sliding);
        return new(r.Node, uplift, sliding, stakes, stakes > 0 ? name : null);
    }

    static ScreeningReport Worse(ScreeningReport one, ScreeningReport other)
    {
        var checks = new Dictionary<(CheckKind, string), Check>();
        var anchors = new SortedDictionary<int, Anchor>();
        foreach (var check in one.Checks.Concat(other.Checks)) Keep(checks, check);
        foreach (var anchor in one.Anchors.Concat(other.Anchors)) Keep(anchors, anchor);
        return new() { Checks = Sorted(checks), Anchors = [.. anchors.Values] };
    }

    static void Keep(Dictionary<(CheckKind, string), Check> worst, Check check)
    {
        if (!worst.TryGetValue((check.Kind, check.LoadCase), out var old) || check.Utilisation > old.Utilisation) worst[(check.Kind, check.LoadCase)] = check;
    }

    static void Keep(SortedDictionary<int, Anchor> worst, Anchor anchor)
    {
        if (!worst.TryGetValue(anchor.Node, out var old) || (anchor.Stakes, anchor.UpliftN + anchor.SlidingN).CompareTo((old.Stakes, old.UpliftN + old.SlidingN)) > 0)
            worst[anchor.Node] = anchor;
    }

    static ImmutableArray<Check> Sorted(Dictionary<(CheckKind, string), Check> checks) =>
        [.. checks.Values.OrderByDescending(c => c.Utilisation).ThenBy(c => c.Kind).ThenBy(c => c.LoadCase, StringComparer.Ordinal)];
}
