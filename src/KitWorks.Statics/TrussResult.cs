using System.Collections.Immutable;
using System.Runtime.InteropServices;
using KitWorks.Geometry;
using KitWorks.Statics.Solving;

namespace KitWorks.Statics;

/// <summary>The force in one member.</summary>
/// <param name="Strut">The member's strut id.</param>
/// <param name="ForceN">The axial force in newtons: tension positive, compression negative.</param>
/// <param name="EulerFactor">Euler's load for hinged ends over the compression: below 1 the strut buckles. Null in tension and where there is no force.</param>
public readonly record struct MemberForce(int Strut, double ForceN, double? EulerFactor);

/// <summary>How far one node moves, in millimetres.</summary>
/// <param name="Node">The node.</param>
/// <param name="XMm">Along x.</param>
/// <param name="YMm">Along y.</param>
/// <param name="ZMm">Along z: sinking is negative.</param>
public readonly record struct Displacement(int Node, double XMm, double YMm, double ZMm)
{
    /// <summary>The distance moved.</summary>
    public double NormMm => new Point3(XMm, YMm, ZMm).Norm;
}

/// <summary>What the ground does to one node that stands on it, in newtons: a push up is positive, a pull down (the node would lift) negative.</summary>
/// <param name="Node">The node.</param>
/// <param name="XN">Along x.</param>
/// <param name="YN">Along y.</param>
/// <param name="ZN">Along z.</param>
public readonly record struct Reaction(int Node, double XN, double YN, double ZN);

/// <summary>What a set of forces does to a truss.</summary>
public sealed class TrussResult
{
    /// <summary>A force below this share of the largest in the frame is rounding.</summary>
    const double Noise = 1e-9;

    internal TrussResult(TrussAnalysis analysis, double softer, Response response)
    {
        Response = response;
        Members = Struts(analysis, softer, response.Forces);
        var displacements = ImmutableArray.CreateBuilder<Displacement>(response.Shifts.Length);
        for (var n = 0; n < response.Shifts.Length; n++)
            if (analysis.Model.Has(n)) displacements.Add(new(n, response.Shifts[n].X, response.Shifts[n].Y, response.Shifts[n].Z));
        Displacements = displacements.ToImmutable();
        Reactions = ImmutableCollectionsMarshal.AsImmutableArray(response.Ground);
    }

    internal Response Response { get; }

    /// <summary>One force a member, in the structure's order.</summary>
    public ImmutableArray<MemberForce> Members { get; }

    /// <summary>One displacement a node that a member reaches, by node.</summary>
    public ImmutableArray<Displacement> Displacements { get; }

    /// <summary>One reaction a node that is held and that a member reaches.</summary>
    public ImmutableArray<Reaction> Reactions { get; }

    /// <inheritdoc cref="Truss.Caution"/>
    public string Caution { get; } = Truss.Caution;

    static ImmutableArray<MemberForce> Struts(TrussAnalysis analysis, double softer, double[] forces)
    {
        double most = 0;
        foreach (var force in forces) most = Math.Max(most, Math.Abs(force));
        var members = new MemberForce[forces.Length];
        for (var i = 0; i < forces.Length; i++)
            members[i] = new(analysis.Model.Members[i].Strut, forces[i], forces[i] < -Noise * most ? analysis.EulerLoadN(i) / softer / -forces[i] : null);
        return ImmutableCollectionsMarshal.AsImmutableArray(members);
    }
}
