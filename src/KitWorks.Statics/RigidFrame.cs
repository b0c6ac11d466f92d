using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Statics.Loads;
using KitWorks.Statics.Solving;

namespace KitWorks.Statics;

/// <summary>One strut of a frame with stiff hubs.</summary>
/// <param name="Strut">The strut id.</param>
/// <param name="ForceN">The axial force in newtons, tension positive.</param>
/// <param name="MomentNMm">The larger bending moment at its two ends, in N·mm; 0 or more.</param>
/// <param name="TorqueNMm">The twist along it, in N·mm.</param>
public readonly record struct BeamForce(int Strut, double ForceN, double MomentNMm, double TorqueNMm);

/// <summary>What a set of forces does to a frame with stiff hubs.</summary>
/// <param name="Members">One entry a member, in the structure's order.</param>
/// <param name="Displacements">One entry a node that a member reaches, by node.</param>
public sealed record RigidFrameResult(ImmutableArray<BeamForce> Members, ImmutableArray<Displacement> Displacements)
{
    /// <inheritdoc cref="Truss.Caution"/>
    public string Caution { get; } = Truss.Caution;
}

/// <summary>
/// The same frame with hubs that do not turn against their struts, to compare with <see cref="Truss"/>: how much of the load bending
/// would bear if hubs were stiff. Straight round beams after Euler and Bernoulli, supports hinged to the ground, small displacements.
/// </summary>
/// <remarks>
/// A beam's energy is that of six ways to deform (J. H. Argyris, natural modes): stretch E·A/L, twist G·J/L, and in each of two planes an even bend E·I/L
/// and an odd one 3·E·I/L; J = 2·I, G = E/(2(1 + ν)).
/// Turns are counted as arcs at the arm of the mean strut, so that all unknowns are millimetres.
/// </remarks>
public sealed class RigidFrame
{
    readonly TrussModel model;
    readonly ImmutableArray<Beam> beams;
    readonly Unknowns unknowns;
    readonly EnvelopeCholesky factor;
    readonly GroundFriction friction;

    RigidFrame(TrussModel model, ImmutableArray<Beam> beams)
    {
        (this.model, this.beams, unknowns, friction) = (model, beams, new(model, 6), new(model));
        factor = new(unknowns.Size, [.. model.Members.Select((m, i) => new Element(unknowns.Of(m.From, m.To), beams[i].Stiffness()))]);
        // Bending is softer than stretching by the square of slenderness, and no mechanism for that.
        factor.Factor(unknowns.Groups(), looseness: 1e-12);
    }

    /// <summary>Makes a structure with stiff hubs ready to be loaded.</summary>
    /// <param name="model">The structure.</param>
    /// <param name="section">The section of every member, round: the second moment holds about any axis.</param>
    /// <param name="poissonRatio">ν: 0 to 0.5; 0.38 by default, PVC.</param>
    /// <returns>The frame, or a refusal: a field such as <c>section/areaMm2</c> or <c>poissonRatio</c>, or <c>statics.mechanism</c>.</returns>
    public static Outcome<RigidFrame> Of(TrussModel model, Section section, double poissonRatio = 0.38)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(section);
        if (section.Fault() is { } refusal) return refusal;
        if (Loads.Range.Fault(("poissonRatio", poissonRatio, 0, 0.5)) is { } wrong) return wrong;
        var arm = model.Members.Average(m => model.Nodes[m.From].DistanceTo(model.Nodes[m.To]));
        var frame = new RigidFrame(model, [.. model.Members.Select(m => new Beam(model.Nodes[m.To] - model.Nodes[m.From], section, poissonRatio, arm))]);
        return frame.factor.Motions.Count == 0
            ? frame
            : new Refusal(RefusalKind.Impossible, "statics.mechanism", "Even with stiff hubs the frame, or a strut about its own axis, can move freely. Hold it at more nodes.");
    }

    /// <summary>What a set of forces does.</summary>
    /// <returns>The result, or a refusal with fields such as <c>loads/0/node</c>.</returns>
    public Outcome<RigidFrameResult> Solve(IReadOnlyList<NodeLoad> loads)
    {
        ArgumentNullException.ThrowIfNull(loads);
        if (NodeLoadCheck.Fault(model, loads) is { } refusal) return refusal;
        var applied = new Point3[model.Nodes.Length];
        foreach (var (node, x, y, z) in loads) applied[node] += new Point3(x, y, z);
        friction.Meet(applied);
        var b = unknowns.Gather(applied);
        factor.Solve(b);
        var shifts = unknowns.Scatter(b);
        friction.Settle(shifts);
        return new RigidFrameResult(
            [.. model.Members.Select((m, i) => beams[i].Force(m.Strut, [.. unknowns.Of(m.From, m.To).Select(u => u >= 0 ? b[u] : 0)]))],
            [.. shifts.Select((s, n) => new Displacement(n, s.X, s.Y, s.Z)).Where(d => model.Has(d.Node))]);
    }
}
