using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Statics.Loads;

/// <summary>A force on one node, in newtons, z up.</summary>
/// <param name="Node">The node.</param>
/// <param name="XN">The part along x; each part within ±1e9 N.</param>
/// <param name="YN">The part along y.</param>
/// <param name="ZN">The part along z: a weight is negative.</param>
public readonly record struct NodeLoad(int Node, double XN, double YN, double ZN);

/// <summary>How long a load stays.</summary>
public enum LoadDuration
{
    /// <summary>Minutes or hours: a person, a gust. The short-term modulus holds.</summary>
    Brief,

    /// <summary>Weeks or more: self-weight, snow. The long-term modulus holds.</summary>
    Lasting,
}

/// <summary>Forces that act together.</summary>
/// <param name="Name">What people call it; cases of one name are reported as one, by their worst.</param>
/// <param name="Duration">How long it stays.</param>
/// <param name="Loads">The forces; several on one node add up.</param>
public sealed record LoadCase(string Name, LoadDuration Duration, ImmutableArray<NodeLoad> Loads)
{
    /// <summary>The one hub that is loaded, where each hub is loaded in turn; otherwise null.</summary>
    public int? Hub { get; init; }

    /// <summary>This case and <paramref name="other"/> times <paramref name="factor"/>, together, under this one's name and duration.</summary>
    public LoadCase With(LoadCase other, double factor = 1) => this with
    {
        Loads = [.. Loads, .. other.Loads.Select(l => new NodeLoad(l.Node, l.XN * factor, l.YN * factor, l.ZN * factor))],
    };

    /// <summary>This case, every force times <paramref name="factor"/>.</summary>
    public LoadCase Times(double factor) => (this with { Loads = [] }).With(this, factor);

    /// <summary>The same force on each hub off the ground in turn.</summary>
    /// <param name="model">The model.</param>
    /// <param name="forceN">The force, in newtons; a pull or weight of a person is straight down.</param>
    /// <param name="name">The name of all the cases.</param>
    /// <param name="hubs">The hubs to load, where some stand for others that are like them; null for all.</param>
    public static ImmutableArray<LoadCase> EachHub(TrussModel model, Point3 forceN, string name = "one person at a hub", IEnumerable<int>? hubs = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        var stood = model.Supports.Select(s => s.Node).ToHashSet();
        return
        [
            .. (hubs ?? Enumerable.Range(0, model.Nodes.Length)).Where(n => model.IsNode(n) && model.Has(n) && !stood.Contains(n))
                .Select(n => new LoadCase(name, LoadDuration.Brief, [new(n, forceN.X, forceN.Y, forceN.Z)]) { Hub = n }),
        ];
    }
}
