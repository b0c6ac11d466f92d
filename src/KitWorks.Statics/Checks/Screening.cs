using KitWorks.Geometry;
using KitWorks.Statics.Loads;

namespace KitWorks.Statics.Checks;

/// <summary>Holds a shelter against a set of loads.</summary>
public static class Screening
{
    /// <summary>
    /// Screens a frame both staked (<see cref="BaseSupport.Pinned"/>) and set down (<see cref="BaseSupport.Sliding"/>), since a stake may hold or give, and
    /// reports the worse of both. A frame that is firm only when staked is screened so, with a note. Of hubs that the frame's symmetry makes alike one is
    /// loaded for all, and each base hub is given what the worst of those like it needs, unless there are openings.
    /// </summary>
    /// <param name="frame">The frame.</param>
    /// <param name="section">The section of every strut, with its mass.</param>
    /// <param name="loads">The loads.</param>
    /// <param name="criteria">What it is held to.</param>
    /// <param name="without">Ids of struts that are taken out for an opening.</param>
    /// <param name="shut">Triangles that shut openings: what leans on them goes to the hubs around.</param>
    /// <returns>The report, or a refusal that names the field at fault. A mechanism is no refusal.</returns>
    public static Outcome<ScreeningReport> Of(
        Frame frame, Section section, LoadSet loads, Criteria criteria, IReadOnlyList<int>? without = null, IReadOnlyList<Panel>? shut = null)
    {
        ArgumentNullException.ThrowIfNull(loads);
        return Sweep.Of(frame, loads, without, shut).Then(sweep => sweep.Report(section, loads.Dead, criteria));
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
        var worst = new Worst();
        foreach (var load in cases)
        {
            if (!analysis.Solve(load.Loads, load.Duration == LoadDuration.Lasting).Succeeds(out var result, out var refusal)) return refusal;
            worst.Keep(MemberChecks.Of(analysis, analysis.Section, load, result.Response.Forces, result.Response.Shifts, criteria));
            foreach (var reaction in result.Reactions) worst.Keep(Worst.Of(reaction, load.Name, criteria));
        }
        return worst.Report();
    }
}
