using System.Collections.Immutable;

namespace KitWorks.Geometry;

/// <summary>How to cut the cover of one kind of panel: a triangle with a seam allowance all around.</summary>
/// <param name="Kind">The panel kind.</param>
/// <param name="Count">How many the frame has.</param>
/// <param name="SidesMm">The sides on the frame, between node centres, in the order of the kind's strut families.</param>
/// <param name="AnglesDegrees">The corners, each opposite to the side of the same place; they add up to 180°.</param>
/// <param name="SeamAllowance">How far the cut runs outside the sides.</param>
/// <param name="CutSidesMm">The sides of the cut triangle; its corners are those of the panel.</param>
/// <param name="CutAreaM2">Its area.</param>
public sealed record CoverNet(
    int Kind, int Count, ImmutableArray<double> SidesMm, ImmutableArray<double> AnglesDegrees, Length SeamAllowance, ImmutableArray<double> CutSidesMm, double CutAreaM2)
{
    /// <summary>The nets of all panel kinds.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="seamAllowance">How far the cut runs outside the sides.</param>
    public static ImmutableArray<CoverNet> Of(Frame frame, Length seamAllowance)
    {
        ArgumentNullException.ThrowIfNull(frame);
        return [.. frame.PanelKinds.Select(kind =>
        {
            double a = frame.Families[kind.Families[0]].SpacingMm, b = frame.Families[kind.Families[1]].SpacingMm, c = frame.Families[kind.Families[2]].SpacingMm;
            // Moving every side outwards by s scales a triangle from its incentre by (r + s) / r, with the inradius r = 2 · area / perimeter.
            var inradius = 2 * Triangle.Area(a, b, c) / (a + b + c);
            var grown = (inradius + seamAllowance.Millimetres) / inradius;
            return new CoverNet(kind.Index, kind.Count, [a, b, c], [Opposite(a, b, c), Opposite(b, c, a), Opposite(c, a, b)],
                seamAllowance, [a * grown, b * grown, c * grown], kind.AreaM2 * grown * grown);
        })];
    }

    // The law of cosines.
    static double Opposite(double side, double one, double other) =>
        Math.Acos(Math.Clamp((one * one + other * other - side * side) / (2 * one * other), -1, 1)) * (180 / Math.PI);
}
