using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Statics.Loads;
using KitWorks.Statics.Solving;

namespace KitWorks.Statics.Checks;

/// <summary>
/// A frame under every case of a load set, solved once for any strut: with one section throughout, the forces do not depend on it but for its weight, and
/// displacements are as 1/(E·A). Each further section costs a sum over the cases. It does not change, and threads may share it.
/// </summary>
public sealed class Sweep
{
    /// <summary>E·A = 1 N.</summary>
    static readonly Section Unit = new() { AreaMm2 = 1, SecondMomentMm4 = 1, ModulusMPa = 1 };

    readonly LoadSet loads;
    readonly int[] like;
    readonly ImmutableArray<Mechanism> mechanisms;
    readonly ImmutableArray<string> notes = [];
    readonly List<Stand> stands = [];
    readonly double scale = 1;

    Sweep(TrussAnalysis pinned, LoadSet loads, ImmutableArray<SetCase> cases, int[] like)
    {
        (this.loads, this.like, mechanisms) = (loads, like, pinned.Mechanisms);
        if (!mechanisms.IsEmpty) return;
        stands.Add(new(pinned, cases));
        var sliding = Truss.Of(pinned.Model.Sliding(), Unit).Value;
        if (sliding.Mechanisms.IsEmpty) stands.Add(new(sliding, cases));
        else notes = [$"Stakes are part of the frame: set down without them it is loose. {sliding.Mechanisms[0].Detail}"];
    }

    Sweep(Sweep of, double scale) => (loads, like, mechanisms, notes, stands, this.scale) = (of.loads, of.like, of.mechanisms, of.notes, of.stands, of.scale * scale);

    /// <summary>Numbers that it keeps, of eight bytes.</summary>
    public long Room => stands.Sum(s => s.Room);

    /// <summary>
    /// The sweep of a frame of the same shape, so many times larger: a person and a hub weigh the same, struts as the scale, and snow, wind and cover as its
    /// square; forces do not depend on the scale otherwise, and displacements are as it.
    /// </summary>
    public Sweep Scaled(double by)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(by);
        return new(this, by);
    }

    /// <summary>
    /// Solves a frame both staked (<see cref="BaseSupport.Pinned"/>) and set down (<see cref="BaseSupport.Sliding"/>), since a stake may hold or give.
    /// Of hubs that the frame's symmetry makes alike one is loaded for all, unless there are openings.
    /// </summary>
    /// <param name="frame">The frame.</param>
    /// <param name="loads">The loads, their dead load left aside.</param>
    /// <param name="without">Ids of struts that are taken out.</param>
    /// <param name="shut">Triangles that shut openings: what leans on them goes to the hubs around.</param>
    /// <param name="doubled">Ids of struts beside which a second lies.</param>
    /// <returns>The sweep, or a refusal that names the field at fault. A mechanism is no refusal.</returns>
    public static Outcome<Sweep> Of(Frame frame, LoadSet loads, IReadOnlyList<int>? without = null, IReadOnlyList<Panel>? shut = null, IEnumerable<int>? doubled = null)
    {
        ArgumentNullException.ThrowIfNull(loads);
        if (!TrussModel.Of(frame, BaseSupport.Pinned, without, shut, doubled).Succeeds(out var model, out var refusal)) return refusal;
        var asBuilt = without is null or [] && shut is null or [];
        int[] like = asBuilt ? [.. frame.LikeNodes()] : [.. Enumerable.Range(0, frame.Nodes.Length)];
        if (!loads.Live(model, like.Distinct()).Succeeds(out var cases, out refusal)) return refusal;
        return new Sweep(Truss.Of(model, Unit).Value, loads, cases, like);
    }

    /// <summary>Holds the frame, made of one section, against the criteria: the worse of staked and set down.</summary>
    /// <returns>The report, or a refusal with fields such as <c>section/massKgPerM</c>, <c>dead/hubKg</c> or <c>criteria/tieSafety</c>. A mechanism is no refusal.</returns>
    public Outcome<ScreeningReport> Report(Section section, DeadLoad dead, Criteria criteria)
    {
        ArgumentNullException.ThrowIfNull(section);
        ArgumentNullException.ThrowIfNull(dead);
        ArgumentNullException.ThrowIfNull(criteria);
        if ((section.Fault() ?? dead.Fault(section) ?? criteria.Fault()) is { } fault) return fault;
        if (!mechanisms.IsEmpty) return new ScreeningReport { Mechanisms = mechanisms };
        var worst = new Worst();
        foreach (var stand in stands) stand.Check(worst, section, dead, criteria, loads.DeadAgainstUplift, scale);
        return worst.Report(like) with { Notes = notes };
    }

    /// <summary>A frame on its supports, and what it answers to each case and to each part of the dead load.</summary>
    sealed class Stand
    {
        readonly TrussAnalysis analysis;
        readonly ImmutableArray<SetCase> cases;
        readonly Response[] live;
        readonly Response struts, hubs, cover;

        public Stand(TrussAnalysis analysis, ImmutableArray<SetCase> cases)
        {
            (this.analysis, this.cases) = (analysis, cases);
            var unit = DeadLoad.Units(analysis.Model);
            (struts, hubs, cover) = (analysis.Respond(unit.Struts), analysis.Respond(unit.Hubs), analysis.Respond(unit.Cover));
            live = [.. cases.Select(c => analysis.Respond(c.Live.Loads))];
        }

        public long Room => (live.Length + 3L) * (analysis.Model.Members.Length + 3 * analysis.Model.Nodes.Length + 4 * analysis.Model.Stood.Length);

        public void Check(Worst worst, Section section, DeadLoad dead, Criteria criteria, double deadAgainstUplift, double scale)
        {
            var own = new Response(analysis.Model);
            own.Add(struts, section.MassKgPerM!.Value * scale);
            own.Add(hubs, dead.HubKg);
            own.Add(cover, dead.CoverKgPerM2 * scale * scale);
            var all = new Response(analysis.Model);
            for (var i = 0; i < cases.Length; i++)
            {
                all.Clear();
                all.Add(live[i], cases[i].IsByArea ? scale * scale : 1);
                all.Add(own, cases[i].LightDead ? deadAgainstUplift : 1);
                var load = cases[i].Live;
                all.Stretch(scale / (section.Modulus(load.Duration == LoadDuration.Lasting) * section.AreaMm2));
                worst.Keep(MemberChecks.Of(analysis, section, load, all.Forces, all.Shifts, criteria, scale));
                for (var s = 0; s < all.Ground.Length; s++) worst.Keep(Worst.Of(all.Ground[s], load.Name, criteria));
            }
        }
    }
}
