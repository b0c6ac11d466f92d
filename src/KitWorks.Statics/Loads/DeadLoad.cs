using KitWorks.Geometry;

namespace KitWorks.Statics.Loads;

/// <summary>What a shelter weighs. Every mass has a default, which is stated.</summary>
public sealed record DeadLoad
{
    /// <summary>Standard gravity, 9.80665 m/s² (ISO 80000-3).</summary>
    public const double Gravity = 9.80665;

    /// <summary>Mass of one hub with its ties, in kilograms: 0 to 1,000; 0.1 by default, an assumption.</summary>
    public double HubKg { get; init; } = 0.1;

    /// <summary>Mass of one square metre of cover, all layers, in kilograms: 0 to 1,000; 0.2 by default, an assumption (a woven tarpaulin).</summary>
    public double CoverKgPerM2 { get; init; } = 0.2;

    /// <summary>The weight of struts (half to each end), hubs and cover.</summary>
    /// <param name="model">The structure.</param>
    /// <param name="section">The section, whose <see cref="Section.MassKgPerM"/> must be known.</param>
    /// <returns>A lasting load, or a refusal with the field <c>section/massKgPerM</c>, <c>dead/hubKg</c> or <c>dead/coverKgPerM2</c>.</returns>
    public Outcome<LoadCase> On(TrussModel model, Section section)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(section);
        var (hub, cover) = (HubKg, CoverKgPerM2);
        if (Range.Fault(("dead/hubKg", hub, 0, 1000), ("dead/coverKgPerM2", cover, 0, 1000)) is { } refusal) return refusal;
        if (section.Fault() is { } wrong) return wrong;
        if (section.MassKgPerM is not { } kgPerM) return Refusal.OfField(Range.Code, "section/massKgPerM", "Self-weight needs the mass of one metre of strut, in kg.");
        var struts = model.Members.SelectMany(m =>
        {
            var half = -kgPerM * model.Nodes[m.From].DistanceTo(model.Nodes[m.To]) / 1000 * Gravity / 2;
            return new NodeLoad[] { new(m.From, 0, 0, half), new(m.To, 0, 0, half) };
        });
        var hubs = Enumerable.Range(0, model.Nodes.Length).Where(model.Has).Select(n => new NodeLoad(n, 0, 0, -hub * Gravity));
        var sheet = PanelForces.ToNodes(model, face => new(0, 0, -cover * face.AreaM2 * Gravity));
        return new LoadCase("self-weight", LoadDuration.Lasting, [.. struts, .. hubs, .. sheet]);
    }
}
