namespace KitWorks.Geometry;

/// <summary>
/// The unknowns of an oblong of frequency 1 and how its strut families hang on them. Its nodes stand in rings around the long axis; by
/// symmetry a ring is one x and one radius, and the rings at −x mirror those at +x.
/// </summary>
/// <remarks>
/// There are as many families as unknowns, 10 + 2 bays, so that any lengths within reason fix the shell. Straight lines (angles 0, 2, 4 …
/// half steps) carry 5 + bays nodes each, the lines between them 4 + bays; node i of a straight line comes before node i of its neighbours.
/// </remarks>
sealed class OblongRings
{
    readonly Ring[] straight, between;
    readonly List<Family> families = [];
    readonly List<(Ring Ring, int Nodes)> rings = [];

    public OblongRings(int fold, int bays)
    {
        Fold = fold;
        Angles = new(fold);
        End = new(Unknowns++, 1, -1);
        straight = Line(5 + bays);
        between = Line(4 + bays);
        rings.Add((End, 2));
        int on = fold / 2 + 1, off = fold / 2;
        families.Add(new(FamilyClass.EndSpoke, End, straight[0], 1, 2 * on, [(0, -1), (0, 0), (2, 0), (-2, 0)]));
        families.Add(new(FamilyClass.FirstRing, straight[0], straight[0], Angles.Cos(2), 2 * off, [(0, 0), (2, 0), (0, -1), (1, 0)]));
        for (var i = 0; i <= straight.Length - 2 - i; i++)
            families.Add(new(Along(i, FamilyClass.StraightFirst, FamilyClass.StraightSecond), straight[i], straight[i + 1], 1,
                i == straight.Length - 2 - i ? on : 2 * on, [(0, i), (0, i + 1), (1, i), (-1, i)]));
        for (var i = 0; i <= between.Length - 2 - i; i++)
            families.Add(new(Along(i, FamilyClass.Spoke, FamilyClass.BetweenSecond), between[i], between[i + 1], 1,
                i == between.Length - 2 - i ? off : 2 * off, [(1, i), (1, i + 1), (0, i + 1), (2, i + 1)]));
        for (var i = 0; i < between.Length; i++)
            families.Add(new(Across(i, between.Length), straight[i], between[i], Angles.Cos(1), 4 * off,
                [(0, i), (1, i), (0, i + 1), i == 0 ? (2, 0) : (1, i - 1)]));
    }

    /// <summary>A ring: which unknown is its x (−1: in the middle, x = 0), with which sign, and which is its radius (−1: on the axis).</summary>
    public readonly record struct Ring(int X, int Sign, int Radius);

    /// <summary>Struts that symmetry makes equal: the rings at their ends, the cosine of the angle between those ends, how many a half shell has.</summary>
    /// <param name="Class">Where on the shell it is.</param>
    /// <param name="A">One ring.</param>
    /// <param name="B">The other.</param>
    /// <param name="Cos">The cosine of the angle around the axis between the two ends.</param>
    /// <param name="Count">Struts of the half shell.</param>
    /// <param name="Diamond">One of its struts and the two nodes beside it, as line and place; place −1 is the end node.</param>
    public sealed record Family(FamilyClass Class, Ring A, Ring B, double Cos, int Count, (int Line, int Place)[] Diamond);

    public int Fold { get; }

    public HalfSteps Angles { get; }

    public int Unknowns { get; private set; }

    public Ring End { get; }

    public IReadOnlyList<Family> Families => families;

    /// <summary>The different rings with their nodes in the closed shell, both halves counted.</summary>
    public IReadOnlyList<(Ring Ring, int Nodes)> Rings => rings;

    public int NodesOn(int line) => line % 2 == 0 ? straight.Length : between.Length;

    public static double X(double[] unknowns, Ring ring) => ring.X < 0 ? 0 : ring.Sign * unknowns[ring.X];

    public static double Radius(double[] unknowns, Ring ring) => ring.Radius < 0 ? 0 : unknowns[ring.Radius];

    /// <summary>Where node <paramref name="place"/> of a line is; place −1 is the end node, one place past the last the other end.</summary>
    public Point3 Position(double[] unknowns, int line, int place)
    {
        if (place < 0) return new(X(unknowns, End), 0, 0);
        if (place == NodesOn(line)) return new(-X(unknowns, End), 0, 0);
        var ring = line % 2 == 0 ? straight[place] : between[place];
        var radius = Radius(unknowns, ring);
        return new(X(unknowns, ring), radius * Angles.Cos(line), radius * Angles.Sin(line));
    }

    /// <summary>Sets the place of a ring at +x or in the middle.</summary>
    public void Place(double[] unknowns, int line, int place, double x, double radius)
    {
        var ring = line % 2 == 0 ? straight[place] : between[place];
        if (ring.X >= 0) unknowns[ring.X] = x;
        unknowns[ring.Radius] = radius;
    }

    public static double Length(double[] unknowns, Family family)
    {
        double x = X(unknowns, family.A) - X(unknowns, family.B), a = Radius(unknowns, family.A), b = Radius(unknowns, family.B);
        return Math.Sqrt(x * x + a * a + b * b - 2 * a * b * family.Cos);
    }

    /// <summary>The derivatives of a family's length by the unknowns it hangs on, four at most; an unknown may come twice. Answers how many.</summary>
    public static int Gradient(double[] unknowns, Family family, Span<int> at, Span<double> by)
    {
        var over = 1 / Length(unknowns, family);
        double x = X(unknowns, family.A) - X(unknowns, family.B), a = Radius(unknowns, family.A), b = Radius(unknowns, family.B);
        var count = 0;
        if (family.A.X >= 0) (at[count], by[count++]) = (family.A.X, family.A.Sign * x * over);
        if (family.B.X >= 0) (at[count], by[count++]) = (family.B.X, -family.B.Sign * x * over);
        if (family.A.Radius >= 0) (at[count], by[count++]) = (family.A.Radius, (a - b * family.Cos) * over);
        if (family.B.Radius >= 0) (at[count], by[count++]) = (family.B.Radius, (b - a * family.Cos) * over);
        return count;
    }

    /// <summary>By how much the shell turns at a family's struts, in degrees; negative where it turns inwards.</summary>
    public double FoldDegrees(double[] unknowns, Family family)
    {
        Point3 At((int Line, int Place) p) => Position(unknowns, p.Line, p.Place);
        return Triangle.FoldDegrees(At(family.Diamond[0]), At(family.Diamond[1]), At(family.Diamond[2]), At(family.Diamond[3]), new(0, 0, 0));
    }

    /// <summary>The area of the floor, which a polygon through the end nodes and the straight lines on the ground bounds.</summary>
    public double FloorArea(double[] unknowns)
    {
        var area = 0.0;
        for (var place = -1; place < straight.Length; place++)
        {
            Point3 p = Position(unknowns, 0, place), q = Position(unknowns, 0, place + 1);
            area += (p.X - q.X) * (p.Y + q.Y);
        }
        return area;
    }

    Ring[] Line(int nodes)
    {
        var line = new Ring[nodes];
        for (var i = 0; i < nodes / 2; i++)
        {
            line[i] = new(Unknowns++, 1, Unknowns++);
            line[nodes - 1 - i] = line[i] with { Sign = -1 };
            rings.Add((line[i], 2 * Fold));
        }
        if (nodes % 2 == 1)
        {
            line[nodes / 2] = new(-1, 1, Unknowns++);
            rings.Add((line[nodes / 2], Fold));
        }
        return line;
    }

    static FamilyClass Along(int i, FamilyClass first, FamilyClass second) => i switch { 0 => first, 1 => second, _ => FamilyClass.AlongMiddle };

    // The last one across is the mirror image of a five-way node's second pair of struts.
    static FamilyClass Across(int i, int of) => i switch
    {
        0 => FamilyClass.Spoke,
        _ when i == of - 1 => FamilyClass.Spoke,
        1 => FamilyClass.AcrossFirst,
        _ when i == of - 2 => FamilyClass.AcrossSecond,
        _ => FamilyClass.AcrossMiddle,
    };
}

/// <summary>Where on an oblong a strut family is; families of one class always share a length, so that bays add no decisions.</summary>
enum FamilyClass
{
    EndSpoke, FirstRing, StraightFirst, StraightSecond, BetweenSecond, AlongMiddle, Spoke, AcrossFirst, AcrossSecond, AcrossMiddle,
}

/// <summary>Sines and cosines of the half steps of a fold, 180° / fold, by square roots alone: the same on every machine.</summary>
sealed class HalfSteps(int fold)
{
    readonly double[] quarter = fold switch
    {
        4 => [1, Math.Sqrt(0.5), 0],
        6 => [1, Math.Sqrt(3) / 2, 0.5, 0],
        _ => [1, Math.Sqrt(2 + Math.Sqrt(2)) / 2, Math.Sqrt(0.5), Math.Sqrt(2 - Math.Sqrt(2)) / 2, 0],
    };

    /// <summary>From −fold to fold half steps.</summary>
    public double Cos(int steps) => Math.Abs(steps) <= fold / 2 ? quarter[Math.Abs(steps)] : -quarter[fold - Math.Abs(steps)];

    /// <summary>From −fold to fold half steps.</summary>
    public double Sin(int steps)
    {
        var up = Math.Abs(steps) <= fold / 2 ? Math.Abs(steps) : fold - Math.Abs(steps);
        return Math.Sign(steps) * quarter[fold / 2 - up];
    }
}
