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
        if ((section.Fault() ?? Fault(section)) is { } refusal) return refusal;
        var (struts, hubs, cover) = Units(model);
        var loads = Enumerable.Range(0, model.Nodes.Length)
            .Select(n => new NodeLoad(n, 0, 0, struts[n].Z * section.MassKgPerM!.Value + hubs[n].Z * HubKg + cover[n].Z * CoverKgPerM2))
            .Where(l => l.ZN != 0);
        return new LoadCase("self-weight", LoadDuration.Lasting, [.. loads]);
    }

    internal Refusal? Fault(Section section) =>
        Range.Fault(("dead/hubKg", HubKg, 0, 1000), ("dead/coverKgPerM2", CoverKgPerM2, 0, 1000)) is { } refusal
            ? refusal
            : section.MassKgPerM is null ? Refusal.OfField(Range.Code, "section/massKgPerM", "Self-weight needs the mass of one metre of strut, in kg.") : null;

    /// <summary>The forces of struts of 1 kg/m, of hubs of 1 kg and of a cover of 1 kg/m², for each node.</summary>
    internal static (Point3[] Struts, Point3[] Hubs, Point3[] Cover) Units(TrussModel model)
    {
        var (struts, hubs, cover) = (new Point3[model.Nodes.Length], new Point3[model.Nodes.Length], new Point3[model.Nodes.Length]);
        foreach (var m in model.Members)
        {
            var half = new Point3(0, 0, -model.Nodes[m.From].DistanceTo(model.Nodes[m.To]) / 1000 * Gravity / 2);
            struts[m.From] += half;
            struts[m.To] += half;
        }
        for (var n = 0; n < hubs.Length; n++) if (model.Has(n)) hubs[n] = new(0, 0, -Gravity);
        foreach (var load in PanelForces.ToNodes(model, face => new(0, 0, -face.AreaM2 * Gravity))) cover[load.Node] = new(0, 0, load.ZN);
        return (struts, hubs, cover);
    }
}
