namespace KitWorks.Geometry;

/// <summary>A base solid on the unit sphere, turned so that what is asked for points up, with its faces and how they join.</summary>
sealed class Solid
{
    readonly int[] across;

    Solid(Point3[] vertices, (int A, int B, int C)[] faces, int ways)
    {
        (Vertices, Faces, Ways) = (vertices, faces, ways);
        across = new int[faces.Length * 3];
        EdgeOf = new int[faces.Length * 3];
        var sides = new Dictionary<(int, int), int>();
        for (var side = 0; side < across.Length; side++) sides[(Corner(side), Corner(NextSide(side)))] = side;
        for (var side = 0; side < across.Length; side++)
        {
            across[side] = sides[(Corner(NextSide(side)), Corner(side))];
            EdgeOf[side] = side < across[side] ? EdgeCount++ : EdgeOf[across[side]];
        }
    }

    /// <summary>The corners; the first is the top where a vertex is up.</summary>
    public Point3[] Vertices { get; }

    /// <summary>The faces, counter-clockwise from outside.</summary>
    public (int A, int B, int C)[] Faces { get; }

    /// <summary>How many faces meet at each vertex.</summary>
    public int Ways { get; }

    /// <summary>How many edges there are.</summary>
    public int EdgeCount { get; }

    /// <summary>
    /// The edge under each side. Side 3f + j of face f runs from its corner j to the next; of an edge's two sides the lower runs along it.
    /// </summary>
    public int[] EdgeOf { get; }

    /// <summary>The side of the neighbouring face that runs along the same edge, the other way.</summary>
    public int Across(int side) => across[side];

    /// <summary>The vertex where a side begins.</summary>
    public int Corner(int side)
    {
        var (a, b, c) = Faces[side / 3];
        return (side % 3) switch { 0 => a, 1 => b, _ => c };
    }

    static int NextSide(int side) => side % 3 == 2 ? side - 2 : side + 1;

    /// <summary>How many faces a solid has, and how many meet at a vertex.</summary>
    public static (int Faces, int Ways) Counts(BaseSolid solid) => solid switch
    {
        BaseSolid.Icosahedron => (20, 5),
        BaseSolid.Octahedron => (8, 4),
        BaseSolid.Tetrahedron => (4, 3),
    };

    static readonly Lazy<Solid>[] All =
    [
        .. from solid in Enum.GetValues<BaseSolid>() from up in Enum.GetValues<Up>() select new Lazy<Solid>(() => Make(solid, up)),
    ];

    /// <summary>The solid; it is made once.</summary>
    public static Solid Of(BaseSolid solid, Up up) => All[(int)solid * 3 + (int)up].Value;

    static Solid Make(BaseSolid solid, Up up)
    {
        var (vertices, faces) = solid switch
        {
            BaseSolid.Icosahedron => Icosahedron(),
            BaseSolid.Octahedron => Octahedron(),
            BaseSolid.Tetrahedron => Tetrahedron(),
        };
        var (a, b, c) = faces[0];
        var axis = up switch
        {
            Up.Vertex => vertices[a],
            Up.Edge => vertices[a] + vertices[b],
            Up.Face => vertices[a] + vertices[b] + vertices[c],
        };
        return new(up == Up.Vertex ? vertices : Turned(vertices, axis, vertices[b]), faces, Counts(solid).Ways);
    }

    // Only +, −, ×, ÷ and √ from here on: sines and cosines may differ from machine to machine in the last bit.
    static (Point3[], (int, int, int)[]) Icosahedron()
    {
        var root5 = Math.Sqrt(5);
        double z = 1 / root5, r = 2 / root5;
        double c36 = (root5 + 1) / 4, s36 = Math.Sqrt(10 - 2 * root5) / 4, c72 = (root5 - 1) / 4, s72 = Math.Sqrt(10 + 2 * root5) / 4;
        (double X, double Y)[] upper = [(1, 0), (c72, s72), (-c36, s36), (-c36, -s36), (c72, -s72)];
        (double X, double Y)[] lower = [(c36, s36), (-c72, s72), (-1, 0), (-c72, -s72), (c36, -s36)];
        var faces = new List<(int, int, int)>();
        for (var k = 0; k < 5; k++) faces.Add((0, 1 + k, 1 + (k + 1) % 5));
        for (var k = 0; k < 5; k++) faces.Add((1 + k, 6 + k, 1 + (k + 1) % 5));
        for (var k = 0; k < 5; k++) faces.Add((6 + k, 6 + (k + 1) % 5, 1 + (k + 1) % 5));
        for (var k = 0; k < 5; k++) faces.Add((11, 6 + (k + 1) % 5, 6 + k));
        return ([new(0, 0, 1), .. upper.Select(p => new Point3(r * p.X, r * p.Y, z)),
                 .. lower.Select(p => new Point3(r * p.X, r * p.Y, -z)), new(0, 0, -1)], [.. faces]);
    }

    static (Point3[], (int, int, int)[]) Octahedron() =>
        ([new(0, 0, 1), new(1, 0, 0), new(0, 1, 0), new(-1, 0, 0), new(0, -1, 0), new(0, 0, -1)],
         [(0, 1, 2), (0, 2, 3), (0, 3, 4), (0, 4, 1), (5, 2, 1), (5, 3, 2), (5, 4, 3), (5, 1, 4)]);

    static (Point3[], (int, int, int)[]) Tetrahedron()
    {
        double r = 2 * Math.Sqrt(2) / 3, s = Math.Sqrt(3) / 2;
        return ([new(0, 0, 1), new(r, 0, -1.0 / 3), new(-r / 2, r * s, -1.0 / 3), new(-r / 2, -r * s, -1.0 / 3)],
                [(0, 1, 2), (0, 2, 3), (0, 3, 1), (1, 3, 2)]);
    }

    /// <summary>The points seen from axes of which z is <paramref name="axis"/> and x leans to <paramref name="towards"/>.</summary>
    static Point3[] Turned(Point3[] points, Point3 axis, Point3 towards)
    {
        var z = axis * (1 / axis.Norm);
        var level = towards - z * towards.Dot(z);
        var x = level * (1 / level.Norm);
        var y = z.Cross(x);
        return [.. points.Select(p => new Point3(p.Dot(x), p.Dot(y), p.Dot(z)))];
    }
}
