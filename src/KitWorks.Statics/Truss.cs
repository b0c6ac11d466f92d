using KitWorks.Geometry;
using KitWorks.Statics.Solving;

namespace KitWorks.Statics;

/// <summary>
/// Trusses in space: straight members hinged at their nodes, small displacements, linear material, by the direct stiffness method
/// (M. J. Turner and others 1956; any textbook of matrix structural analysis). A member adds E·A/L·(d·dᵀ) between its ends, d its direction.
/// </summary>
public static class Truss
{
    /// <summary>What every answer says of itself.</summary>
    public const string Caution =
        "This is a screening of an ideal frame with hinged hubs, perfect members and small displacements. It is not a certificate. It does not see the hubs " +
        "themselves, cracks, heat, sunlight, fatigue, poor ground, or the snap-through of shallow shells. Local building codes and a licensed engineer decide whether a shelter may stand.";

    /// <summary>Makes a frame ready to be loaded.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="section">The section of every strut.</param>
    /// <param name="support">How the base hubs stand.</param>
    /// <param name="without">Ids of struts that are taken out for an opening.</param>
    /// <returns>The analysis, or a refusal with fields such as <c>section/areaMm2</c> and <c>without/0</c>. A frame that is a mechanism is no refusal.</returns>
    public static Outcome<TrussAnalysis> Of(Frame frame, Section section, BaseSupport support, IEnumerable<int>? without = null) =>
        TrussModel.Of(frame, support, without).Then(s => Of(s, section));

    /// <summary>Makes a structure ready to be loaded: assembles and factorises its stiffness once.</summary>
    /// <returns>The analysis, or a refusal with fields such as <c>section/areaMm2</c>.</returns>
    public static Outcome<TrussAnalysis> Of(TrussModel model, Section section)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(section);
        if (section.Fault() is { } refusal) return refusal;
        var unknowns = new Unknowns(model, 3);
        return new TrussAnalysis(model, section, unknowns, Stiffness(model, section, unknowns));
    }

    static EnvelopeCholesky Stiffness(TrussModel model, Section section, Unknowns unknowns)
    {
        var matrix = new EnvelopeCholesky(unknowns.Size, [.. model.Members.Select(m => new Element(unknowns.Of(m.From, m.To), Stiffness(model, section, m)))]);
        matrix.Factor(unknowns.Groups());
        return matrix;
    }

    static double[,] Stiffness(TrussModel model, Section section, Member member)
    {
        var along = model.Nodes[member.To] - model.Nodes[member.From];
        var stiffness = section.ModulusMPa * section.AreaMm2 / Math.Pow(along.Norm, 3);
        double[] d = [-along.X, -along.Y, -along.Z, along.X, along.Y, along.Z];
        var k = new double[6, 6];
        for (var i = 0; i < 6; i++)
            for (var j = 0; j < 6; j++) k[i, j] = stiffness * d[i] * d[j];
        return k;
    }
}
