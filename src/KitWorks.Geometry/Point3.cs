namespace KitWorks.Geometry;

/// <summary>A point in space, or the vector to it from the origin; three <see cref="double"/>s whose unit the owner states.</summary>
public readonly record struct Point3(double X, double Y, double Z)
{
    /// <summary>The distance from the origin.</summary>
    public double Norm => Math.Sqrt(Dot(this));

    /// <summary>The scalar product.</summary>
    public double Dot(Point3 other) => X * other.X + Y * other.Y + Z * other.Z;

    /// <summary>The vector product.</summary>
    public Point3 Cross(Point3 other) => new(Y * other.Z - Z * other.Y, Z * other.X - X * other.Z, X * other.Y - Y * other.X);

    /// <summary>The distance to another point.</summary>
    public double DistanceTo(Point3 other) => (this - other).Norm;

    /// <summary>The sum.</summary>
    public static Point3 operator +(Point3 a, Point3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>The difference.</summary>
    public static Point3 operator -(Point3 a, Point3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>The multiple.</summary>
    public static Point3 operator *(Point3 a, double factor) => new(a.X * factor, a.Y * factor, a.Z * factor);
}
