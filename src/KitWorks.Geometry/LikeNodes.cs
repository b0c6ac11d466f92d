using System.Collections.Immutable;

namespace KitWorks.Geometry;

public sealed partial class Frame
{
    /// <summary>
    /// For each node, the lowest of the nodes that the frame's own turns about the vertical and upright mirrors exchange with it: what holds for one of
    /// them holds for all. A frame without symmetry gives each node itself.
    /// </summary>
    public ImmutableArray<int> LikeNodes() => [.. new Symmetry(this).Leader];
}
