using KitWorks.Statics.Loads;

namespace KitWorks.Statics.Checks;

/// <summary>The worst strut or hub of each kind of check under one load case.</summary>
static class MemberChecks
{
    public static IEnumerable<Check> Of(TrussAnalysis analysis, TrussResult result, LoadCase load, Criteria criteria)
    {
        Check Of(CheckKind kind, int at, double demand, double capacity) => new(kind, load.Name, load.Hub, at, demand, capacity);
        var section = analysis.Section;
        var lasting = load.Duration == LoadDuration.Lasting;

        var buckling = Enumerable.Range(0, result.Members.Length).MaxBy(i => -result.Members[i].ForceN * Math.Pow(analysis.LengthMm(i), 2));
        yield return Of(CheckKind.Buckling, result.Members[buckling].Strut, Math.Max(0, -result.Members[buckling].ForceN),
            section.EulerLoadN(analysis.LengthMm(buckling), criteria.EffectiveLengthFactor, lasting) / criteria.BucklingSafety);

        var pulled = result.Members.MaxBy(m => m.ForceN);
        if (criteria.TieLimitN(load.Duration) is { } limit) yield return Of(CheckKind.TieTension, pulled.Strut, Math.Max(0, pulled.ForceN), limit);

        var stressed = result.Members.MaxBy(m => Math.Abs(m.ForceN));
        if (section.StrengthMPa is { } strength)
            yield return Of(CheckKind.Stress, stressed.Strut, Math.Abs(stressed.ForceN) / section.AreaMm2, strength * criteria.Share(load.Duration) / criteria.StressSafety);

        var moved = result.Displacements.MaxBy(d => d.NormMm);
        yield return Of(CheckKind.Deflection, moved.Node, moved.NormMm, analysis.Model.SpanMm / criteria.SpanOverDeflection);
    }
}
