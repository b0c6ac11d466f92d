namespace KitWorks.Geometry;

/// <summary>A triangle by its three sides.</summary>
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
}
