using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Statics.Loads;
using KitWorks.Statics.Solving;

namespace KitWorks.Statics;

/// <summary>A truss, its stiffness factorised once, ready for any number of loads. It does not change, and threads may share it.</summary>
public sealed class TrussAnalysis
{
    readonly Unknowns unknowns;
    readonly EnvelopeCholesky factor;
    readonly GroundFriction friction;
    readonly double[] lengths;
    readonly Point3[] directions;
    readonly double[] eulerLoads;
    readonly bool[] stands;

    internal TrussAnalysis(TrussModel model, Section section, Unknowns unknowns, EnvelopeCholesky factor)
    {
        (Model, Section, this.unknowns, this.factor, friction) = (model, section, unknowns, factor, new(model));
        lengths = [.. model.Members.Select(m => model.Nodes[m.From].DistanceTo(model.Nodes[m.To]))];
        directions = [.. model.Members.Select((m, i) => (model.Nodes[m.To] - model.Nodes[m.From]) * (1 / lengths[i]))];
        eulerLoads = [.. lengths.Select(l => section.EulerLoadN(l))];
        stands = new bool[model.Nodes.Length];
        foreach (var node in model.Stood) stands[node] = true;
        Mechanisms = [.. factor.Motions.Select(x => Mechanism.Of(model, unknowns.Scatter(x)))];
    }

    /// <summary>The structure analysed.</summary>
    public TrussModel Model { get; }

    /// <summary>The section of its members.</summary>
    public Section Section { get; }

    /// <summary>
    /// The independent ways in which hubs can move although no strut changes length; empty for a frame that can stand. As many as the unknown
    /// displacements exceed the rank of the stiffness matrix.
    /// </summary>
    public ImmutableArray<Mechanism> Mechanisms { get; }

    /// <inheritdoc cref="Truss.Caution"/>
    public string Caution { get; } = Truss.Caution;

    /// <summary>What a set of forces does.</summary>
    /// <param name="loads">The forces; several on one node add up.</param>
    /// <param name="longTerm">Whether the long-term modulus is taken.</param>
    /// <returns>
    /// The forces and displacements, or a refusal: <c>statics.load-invalid</c> with the field <c>loads/0/node</c> or <c>loads/0/xN</c>, or
    /// <c>statics.mechanism</c> where the frame is loose.
    /// </returns>
    public Outcome<TrussResult> Solve(IReadOnlyList<NodeLoad> loads, bool longTerm = false)
    {
        ArgumentNullException.ThrowIfNull(loads);
        if (NodeLoadCheck.Fault(Model, loads) is { } refusal) return refusal;
        if (!Mechanisms.IsEmpty) return Mechanism.RefusalOf(Mechanisms);
        return Result(Respond(loads), longTerm);
    }

    TrussResult Result(Response response, bool longTerm)
    {
        // All members have one modulus, so a softer one stretches the displacements and leaves the forces.
        var softer = Section.ModulusMPa / Section.Modulus(longTerm);
        if (softer > 1) response.Stretch(softer);
        return new(this, softer, response);
    }

    internal Response Respond(IEnumerable<NodeLoad> loads)
    {
        var applied = new Point3[Model.Nodes.Length];
        foreach (var (node, x, y, z) in loads) applied[node] += new Point3(x, y, z);
        return Respond(applied);
    }

    /// <summary>The answer to one force a node, for a frame that is no mechanism.</summary>
    internal Response Respond(Point3[] applied)
    {
        var met = Model.Slides ? [.. applied] : applied;
        friction.Meet(met);
        var b = unknowns.Gather(met);
        factor.Solve(b);
        var shifts = unknowns.Scatter(b);
        friction.Settle(shifts);
        var forces = Forces(shifts);
        return new(forces, shifts, Ground(forces, applied));
    }

    /// <summary>N = E·A/L·d·(u₂ − u₁).</summary>
    double[] Forces(Point3[] shifts)
    {
        var forces = new double[lengths.Length];
        var stiffness = Section.ModulusMPa * Section.AreaMm2;
        for (var i = 0; i < forces.Length; i++)
        {
            var (_, from, to) = Model.Members[i];
            forces[i] = stiffness / lengths[i] * directions[i].Dot(shifts[to] - shifts[from]);
        }
        return forces;
    }

    /// <summary>What the members and the loads leave unbalanced at a node, the ground bears.</summary>
    Reaction[] Ground(double[] forces, Point3[] applied)
    {
        var sums = new Point3[applied.Length];
        for (var i = 0; i < forces.Length; i++)
        {
            var (_, from, to) = Model.Members[i];
            if (!stands[from] && !stands[to]) continue;
            var pull = directions[i] * forces[i];
            sums[from] += pull;
            sums[to] -= pull;
        }
        var ground = new Reaction[Model.Stood.Length];
        for (var i = 0; i < ground.Length; i++)
        {
            var s = Model.Supports[Model.StoodSupports[i]];
            var sum = sums[s.Node] + applied[s.Node];
            ground[i] = new(s.Node, s.X || Model.Slides ? -sum.X : 0, s.Y || Model.Slides ? -sum.Y : 0, s.Z ? -sum.Z : 0);
        }
        return ground;
    }

    /// <summary>The length of the member at a place in <see cref="TrussModel.Members"/>, in millimetres.</summary>
    public double LengthMm(int member) => lengths[member];

    internal double EulerLoadN(int member) => eulerLoads[member];
}
