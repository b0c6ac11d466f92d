using System.Collections.Immutable;

namespace KitWorks.Geometry;

/// <summary>The dihedral angles along a frame's struts: what a bevel is cut to.</summary>
public static class StrutDihedrals
{
    /// <summary>
    /// For each strut, by id, the angle inside the shell between the two panels that meet there, in degrees: 180 where they lie in one plane,
    /// less where the shell turns outwards, more where inwards. Null for struts on the ground, which have one panel.
    /// </summary>
    public static ImmutableArray<double?> Of(Frame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var angles = new double?[frame.Struts.Length];
        foreach (var hinge in Hinge.Of(frame)) angles[hinge.Strut] = 180 - hinge.BeforeDegrees;
        return [.. angles];
    }

    /// <summary>
    /// By how many degrees the shell turns at its flattest strut; negative where it turns inwards somewhere, so that a node could snap through.
    /// </summary>
    public static double FlattestTurn(Frame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        return Hinge.Of(frame).Min(h => h.BeforeDegrees);
    }
}
