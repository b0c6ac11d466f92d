namespace KitWorks.Geometry;

/// <summary>Triangles by their sides and by their corners.</summary>
static class Triangle
{
    /// <summary>The area, by Heron's formula in Kahan's form, which stays exact for thin triangles.</summary>
    public static double Area(double a, double b, double c)
    {
        if (a < b) (a, b) = (b, a);
        if (b < c) (b, c) = (c, b);
        if (a < b) (a, b) = (b, a);
        return Math.Sqrt(Math.Max(0, (a + (b + c)) * (c - (a - b)) * (c + (a - b)) * (a + (b - c)))) / 4;
    }

    /// <summary>
    /// By how much a surface turns at the edge from <paramref name="p"/> to <paramref name="q"/> between two triangles, in degrees: 0 where
    /// they lie in one plane (a dihedral angle of 180°), positive where the surface turns away from <paramref name="inside"/>, negative where inwards.
    /// </summary>
    public static double FoldDegrees(Point3 p, Point3 q, Point3 left, Point3 right, Point3 inside)
    {
        Point3 one = (q - p).Cross(left - p), other = (right - p).Cross(q - p);
        var turn = Math.Atan2(one.Cross(other).Norm, one.Dot(other)) * (180 / Math.PI);
        var outward = one.Dot(p - inside) < 0 ? one * -1 : one;
        return outward.Dot(right - p) <= 0 ? turn : -turn;
    }
}
