namespace KitWorks.Drawings.Paper;

/// <summary>A place on paper in millimetres, y down.</summary>
readonly record struct Spot(double X, double Y)
{
    public double Length => Math.Sqrt(X * X + Y * Y);

    public double DistanceTo(Spot other) => (other - this).Length;

    public Spot Towards(Spot other, double share) => this + (other - this) * share;

    /// <summary>A quarter turn clockwise as seen on paper.</summary>
    public Spot Turned => new(-Y, X);

    public Spot Unit => Length is var length && length > 0 ? this * (1 / length) : new(1, 0);

    public static Spot operator +(Spot a, Spot b) => new(a.X + b.X, a.Y + b.Y);

    public static Spot operator -(Spot a, Spot b) => new(a.X - b.X, a.Y - b.Y);

    public static Spot operator *(Spot a, double factor) => new(a.X * factor, a.Y * factor);
}

/// <summary>A rectangle on paper that may be turned: its middle, its half sides and the unit direction of its long side.</summary>
readonly record struct Box(Spot Middle, double HalfLength, double HalfHeight, Spot Along)
{
    public Box Grown(double by) => this with { HalfLength = HalfLength + by, HalfHeight = HalfHeight + by };

    public Spot[] Corners =>
    [
        Middle + Along * HalfLength + Along.Turned * HalfHeight,
        Middle - Along * HalfLength + Along.Turned * HalfHeight,
        Middle - Along * HalfLength - Along.Turned * HalfHeight,
        Middle + Along * HalfLength - Along.Turned * HalfHeight,
    ];

    /// <summary>The extent in x and y.</summary>
    public (Spot Low, Spot High) Bounds
    {
        get
        {
            var dx = Math.Abs(Along.X) * HalfLength + Math.Abs(Along.Y) * HalfHeight;
            var dy = Math.Abs(Along.Y) * HalfLength + Math.Abs(Along.X) * HalfHeight;
            return (new(Middle.X - dx, Middle.Y - dy), new(Middle.X + dx, Middle.Y + dy));
        }
    }

    public bool Touches(Spot from, Spot to)
    {
        var (a, b) = (Local(from), Local(to));
        double start = 0, end = 1;
        return Clip(a.X, b.X, HalfLength, ref start, ref end) && Clip(a.Y, b.Y, HalfHeight, ref start, ref end);
    }

    public bool Touches(Spot centre, double radius)
    {
        var c = Local(centre);
        var (dx, dy) = (Math.Max(0, Math.Abs(c.X) - HalfLength), Math.Max(0, Math.Abs(c.Y) - HalfHeight));
        return dx * dx + dy * dy < radius * radius;
    }

    public bool Touches(Box other)
    {
        if (Touches(other.Middle, 0.001) || other.Touches(Middle, 0.001)) return true;
        var corners = other.Corners;
        for (var i = 0; i < 4; i++)
            if (Touches(corners[i], corners[(i + 1) % 4])) return true;
        return false;
    }

    Spot Local(Spot spot)
    {
        var d = spot - Middle;
        return new(d.X * Along.X + d.Y * Along.Y, d.Y * Along.X - d.X * Along.Y);
    }

    static bool Clip(double a, double b, double half, ref double start, ref double end)
    {
        var d = b - a;
        if (Math.Abs(d) < 1e-12) return Math.Abs(a) < half;
        var (t0, t1) = ((-half - a) / d, (half - a) / d);
        if (t0 > t1) (t0, t1) = (t1, t0);
        (start, end) = (Math.Max(start, t0), Math.Min(end, t1));
        return start < end;
    }
}
