using System.Collections.Immutable;
using System.Globalization;
using KitWorks.Geometry;

namespace KitWorks.Statics;

/// <summary>How a hub moves in a mechanism.</summary>
/// <param name="Node">The node.</param>
/// <param name="Direction">Its motion, over the largest of the mechanism.</param>
public readonly record struct NodeMotion(int Node, Point3 Direction);

/// <summary>One way in which hubs can move although no strut changes length.</summary>
/// <param name="Motions">The hubs that move, by node; the others stay.</param>
/// <param name="Detail">What moves, why, and what would stop it, in plain words.</param>
public sealed record Mechanism(ImmutableArray<NodeMotion> Motions, string Detail)
{
    /// <summary>A motion below this share of the largest is rounding.</summary>
    const double Noise = 1e-6;

    internal static Mechanism Of(TrussModel model, Point3[] shifts)
    {
        var most = shifts.Max(s => s.Norm);
        ImmutableArray<NodeMotion> motions =
            [.. shifts.Select((s, n) => new NodeMotion(n, s * (1 / most))).Where(m => m.Direction.Norm > Noise)];
        return new(motions, $"{Moves(model, motions)} {Why(model, motions)}".Trim());
    }

    /// <summary>What is answered where the forces in a loose frame are asked for: <c>statics.mechanism</c>.</summary>
    /// <param name="mechanisms">One or more.</param>
    public static Refusal RefusalOf(ImmutableArray<Mechanism> mechanisms) => new(RefusalKind.Impossible, "statics.mechanism",
        $"The frame cannot stand: {(mechanisms.Length == 1 ? "hubs can move" : $"there are {mechanisms.Length} ways for hubs to move")} without any strut changing length. {mechanisms[0].Detail}");

    static string Moves(TrussModel model, ImmutableArray<NodeMotion> motions)
    {
        var main = motions.MaxBy(m => m.Direction.Norm);
        var way = Math.Abs(main.Direction.Z) > 0.8 ? "up and down" : Math.Abs(main.Direction.Z) < 0.3 ? "sideways" : "aslant";
        var all = Enumerable.Range(0, model.Nodes.Length).Count(model.Has);
        if (motions.Length == all) return $"All {all} hubs move together, hub {main.Node} the most, {way}.";
        return motions.Length == 1
            ? $"Hub {main.Node} can move {way} while all others stay."
            : $"Hubs {Listed(motions.Select(m => m.Node))} move together, hub {main.Node} the most, {way}.";
    }

    static string Why(TrussModel model, ImmutableArray<NodeMotion> motions)
    {
        var few = motions.Where(m => Struts(model, m.Node).Count() is var n && n < 3 - Holds(model, m.Node)).Select(m => m.Node).ToList();
        if (few.Count > 0)
            return $"Hub {Listed(few)} has too few struts: a hub off the ground needs at least three, not all in one plane. Leave another strut in place there.";
        var flat = motions.Where(m => Holds(model, m.Node) == 0 && IsFlat(model, m.Node)).Select(m => m.Node).ToList();
        if (flat.Count > 0)
            return $"All struts of hub {Listed(flat)} lie in one plane, so nothing keeps it from moving out of that plane. Brace it.";
        return motions.Any(m => Holds(model, m.Node) > 0)
            ? "The base ring can change its shape. Stake the base hubs, or brace across the opening."
            : "Brace the opening, or leave more struts in place.";
    }

    static int Holds(TrussModel model, int node) => model.Supports.FirstOrDefault(s => s.Node == node, new(-1, false, false, false)) is var s
        ? (s.X ? 1 : 0) + (s.Y ? 1 : 0) + (s.Z ? 1 : 0)
        : 0;

    static IEnumerable<Point3> Struts(TrussModel model, int node) => model.Members
        .Where(m => m.From == node || m.To == node)
        .Select(m => model.Nodes[m.From == node ? m.To : m.From] - model.Nodes[node])
        .Select(d => d * (1 / d.Norm));

    static bool IsFlat(TrussModel model, int node)
    {
        var struts = Struts(model, node).ToList();
        var normals = struts.SelectMany((a, i) => struts.Skip(i + 1).Select(a.Cross)).ToList();
        var normal = normals.MaxBy(n => n.Norm);
        return struts.All(s => Math.Abs(s.Dot(normal)) <= 1e-4 * normal.Norm);
    }

    static string Listed(IEnumerable<int> nodes)
    {
        var all = nodes.Select(n => n.ToString(CultureInfo.InvariantCulture)).ToList();
        return all.Count <= 6 ? string.Join(", ", all) : $"{string.Join(", ", all.Take(6))} and {all.Count - 6} more";
    }
}
