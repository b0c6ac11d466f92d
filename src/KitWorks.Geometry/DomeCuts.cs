using System.Collections.Immutable;

namespace KitWorks.Geometry;

/// <summary>One valid cut of a dome's sphere.</summary>
/// <param name="Name">Its name: a trade fraction where there is one, else rows kept over rows in the whole sphere.</param>
/// <param name="Rows">Rows of struts kept, from the top.</param>
/// <param name="HeightOverRadius">The height kept, from the mean base plane to the top, over the radius.</param>
public sealed record DomeCut(string Name, int Rows, double HeightOverRadius);

/// <summary>The valid cuts of dome designs.</summary>
public static class DomeCuts
{
    /// <summary>Every valid cut of a dome, from the smallest; its own cut and size do not matter.</summary>
    public static Outcome<ImmutableArray<DomeCut>> Of(BaseSolid solid, Lattice lattice, Up up) => throw new NotImplementedException();
}
