using KitWorks.Geometry;
using KitWorks.Statics.Loads;

namespace KitWorks.Statics.Checks;

/// <summary>The worst strut or hub of each kind of check under one load case.</summary>
static class MemberChecks
{
    /// <summary>Of struts that are asked for equally much the first is named: rounding, which differs between machines, does not choose.</summary>
    const double Equal = 1e-9;

    /// <summary>The checks of one case.</summary>
    /// <param name="analysis">The frame.</param>
    /// <param name="section">The section of its members.</param>
    /// <param name="load">The case.</param>
    /// <param name="forces">The force in each member, in newtons.</param>
    /// <param name="shifts">The displacement of each node, in millimetres.</param>
    /// <param name="criteria">What they are held to.</param>
    /// <param name="scale">How many times larger the frame is than the one analysed.</param>
    public static IEnumerable<Check> Of(TrussAnalysis analysis, Section section, LoadCase load, double[] forces, Point3[] shifts, Criteria criteria, double scale = 1)
    {
        var anyDoubled = !analysis.Model.Doubled.IsEmpty;
        int buckling = 0, pulled = 0, stressed = 0, moved = -1;
        double buckles = 0, pulls = double.NegativeInfinity, stresses = 0, moves = 0;
        for (var i = 0; i < forces.Length; i++)
        {
            var force = forces[i];
            var towardsEuler = -force * analysis.LengthMm(i) * analysis.LengthMm(i) / Pipes(i);
            if (towardsEuler > buckles * (1 + Equal)) (buckling, buckles) = (i, towardsEuler);
            if (force > pulls + Math.Abs(pulls) * Equal || i == 0) (pulled, pulls) = (i, force);
            if (Math.Abs(force) > stresses * (1 + Equal)) (stressed, stresses) = (i, Math.Abs(force));
        }
        for (var n = 0; n < shifts.Length; n++)
            if (analysis.Model.Has(n) && (moved < 0 || shifts[n].Dot(shifts[n]) > moves * (1 + Equal))) (moved, moves) = (n, shifts[n].Dot(shifts[n]));

        Check Of(CheckKind kind, int at, double demand, double capacity) => new(kind, load.Name, load.Hub, at, demand, capacity);
        int Strut(int member) => analysis.Model.Members[member].Strut;
        int Pipes(int member) => anyDoubled && analysis.Model.Doubled.Contains(Strut(member)) ? 2 : 1;
        yield return Of(CheckKind.Buckling, Strut(buckling), Math.Max(0, -forces[buckling]),
            section.EulerLoadN(analysis.LengthMm(buckling) * scale, criteria.EffectiveLengthFactor, load.Duration == LoadDuration.Lasting) * Pipes(buckling) / criteria.BucklingSafety);
        if (criteria.TieLimitN(load.Duration) is { } limit) yield return Of(CheckKind.TieTension, Strut(pulled), Math.Max(0, forces[pulled]), limit);
        if (section.StrengthMPa is { } strength)
            yield return Of(CheckKind.Stress, Strut(stressed), Math.Abs(forces[stressed]) / section.AreaMm2, strength * criteria.Share(load.Duration) / criteria.StressSafety);
        yield return Of(CheckKind.Deflection, moved, Math.Sqrt(moves), analysis.Model.SpanMm * scale / criteria.SpanOverDeflection);
    }
}
