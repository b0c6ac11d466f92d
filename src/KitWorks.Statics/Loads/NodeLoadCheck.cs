using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Statics.Loads;

/// <summary>Whether forces can act on a model.</summary>
static class NodeLoadCheck
{
    const double MaxN = 1e9;

    public static Refusal? Fault(TrussModel model, IReadOnlyList<NodeLoad> loads)
    {
        if (loads.All(l => model.IsNode(l.Node) && model.Has(l.Node) && IsForce(l.XN) && IsForce(l.YN) && IsForce(l.ZN))) return null;
        ImmutableArray<FieldError> errors = [.. loads.SelectMany((l, i) => Errors(model, l, $"loads/{i}"))];
        return new(RefusalKind.Impossible, "statics.load-invalid", errors[0].Detail) { Errors = errors };
    }

    static IEnumerable<FieldError> Errors(TrussModel model, NodeLoad load, string at)
    {
        if (!model.IsNode(load.Node))
            yield return new($"{at}/node", $"There is no node {load.Node}; nodes are 0 to {model.Nodes.Length - 1}.");
        else if (!model.Has(load.Node))
            yield return new($"{at}/node", $"No strut is left at node {load.Node}; nothing there can bear a load.");
        foreach (var (name, value) in new[] { ("xN", load.XN), ("yN", load.YN), ("zN", load.ZN) })
            if (!IsForce(value))
                yield return new($"{at}/{name}", $"A force is −1,000,000,000 to 1,000,000,000 N, not {value}.");
    }

    static bool IsForce(double value) => Math.Abs(value) <= MaxN;
}
