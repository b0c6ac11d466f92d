namespace KitWorks.Geometry;

/// <summary>
/// The lattice points of one face of a solid, and where each one's six neighbours are: on the face, or across one of its sides.
/// </summary>
/// <remarks>
/// The face's corners are at (0, 0), (b, c) and (−c, b + c), in steps along two directions 60° apart. Points come in this order: the
/// three corners, the points inside side 0, side 1 and side 2, each along its side, then the points inside the face.
/// </remarks>
sealed class FaceLattice
{
    // Counter-clockwise, 60° apart.
    static readonly (int X, int Y)[] Directions = [(1, 0), (0, 1), (-1, 1), (-1, 0), (0, -1), (1, -1)];

    readonly int b, c;
    readonly int[] index;
    readonly List<(int X, int Y)> points = [];

    public FaceLattice(Lattice lattice)
    {
        (b, c) = (lattice.B, lattice.C);
        T = lattice.T;
        var parts = (int)System.Numerics.BigInteger.GreatestCommonDivisor(b, c);
        OnSide = parts - 1;
        index = new int[Stride * Stride];
        Array.Fill(index, -1);
        for (var corner = 0; corner < 3; corner++) Add(Corner(corner));
        for (var side = 0; side < 3; side++)
            for (var i = 1; i < parts; i++) Add(FromCorner(side, (b / parts * i, c / parts * i)));
        for (var y = 0; y <= b + c; y++)
            for (var x = -c; x <= b; x++)
            {
                var (p, q, r) = Weights((x, y));
                if (p > 0 && q > 0 && r > 0) Add((x, y));
            }
        Neighbours = new int[Count * 6];
        for (var i = 3; i < Count; i++)
            for (var k = 0; k < 6; k++) Neighbours[i * 6 + k] = PlaceOf((points[i].X + Directions[k].X, points[i].Y + Directions[k].Y));
        Turn = [.. points.Select(p => IndexOf(FromCorner(1, p)))];
        CornerNeighbours = [.. Enumerable.Range(0, 3).Select(corner => IndexOf(FromCorner(corner, Directions[c == 0 ? 0 : 1])))];
    }

    /// <summary>The triangulation number.</summary>
    public int T { get; }

    /// <summary>How many points there are, corners and sides included.</summary>
    public int Count => points.Count;

    /// <summary>How many points lie inside one side.</summary>
    public int OnSide { get; }

    /// <summary>How many points precede those inside the face.</summary>
    public int Inside => 3 + 3 * OnSide;

    /// <summary>
    /// For each point but the corners and each of the six directions, counter-clockwise, the neighbour: a point of the face or, where that
    /// lies across a side, what <see cref="AcrossSide"/> reads.
    /// </summary>
    public int[] Neighbours { get; }

    /// <summary>For each corner its one neighbour in the face, the side that comes next counter-clockwise left out.</summary>
    public int[] CornerNeighbours { get; }

    /// <summary>Where each point comes to lie when the face is turned by one corner; a direction k then becomes k + 2.</summary>
    public int[] Turn { get; }

    /// <summary>Reads a negative neighbour: the side it lies across, and the point it is on the next face, were that face's side 0 the common one.</summary>
    public (int Side, int Point) AcrossSide(int neighbour) => Math.DivRem(~neighbour, Count);

    /// <summary>A point's weights of the three corners, in T-ths; they add up to T.</summary>
    public (int P, int Q, int R) WeightsOf(int point) => Weights(points[point]);

    /// <summary>
    /// The points nearest to what is up: the first corner, the middle of side 0 or the middle of the face. One point, the two ends of a
    /// strut or the three corners of a panel, counter-clockwise; written as neighbours are.
    /// </summary>
    public int[] Top(Up up) => up switch
    {
        Up.Vertex => [0],
        Up.Edge => [.. MiddleOfSide().Select(PlaceOf)],
        Up.Face => [.. MiddleOfFace().Select(PlaceOf)],
    };

    int Stride => b + c + 1;

    (int X, int Y) Corner(int corner) => corner switch { 0 => (0, 0), 1 => (b, c), _ => (-c, b + c) };

    // A quarter of the way around is not a lattice turn, a sixth is: (x, y) → (−y, x + y). Corners are two sixths apart.
    (int X, int Y) FromCorner(int corner, (int X, int Y) p)
    {
        var (x, y) = Corner(corner);
        return corner switch
        {
            0 => (x + p.X, y + p.Y),
            1 => (x - p.X - p.Y, y + p.X),
            _ => (x + p.Y, y - p.X - p.Y),
        };
    }

    (int X, int Y) SeenFromCorner(int corner, (int X, int Y) p)
    {
        var (x, y) = (p.X - Corner(corner).X, p.Y - Corner(corner).Y);
        return corner switch { 0 => (x, y), 1 => (y, -x - y), _ => (-x - y, x) };
    }

    (int P, int Q, int R) Weights((int X, int Y) p)
    {
        var q = (b + c) * p.X + c * p.Y;
        var r = b * p.Y - c * p.X;
        return (T - q - r, q, r);
    }

    // A point of the face, or of the next one where it lies across a side.
    int PlaceOf((int X, int Y) at)
    {
        var (p, q, r) = Weights(at);
        if (p >= 0 && q >= 0 && r >= 0) return IndexOf(at);
        var side = r < 0 ? 0 : p < 0 ? 1 : 2;
        // Seen from the far end of the common side the lattice beyond it is this one turned by half a turn.
        var (x, y) = SeenFromCorner(side, at);
        return ~(side * Count + IndexOf((b - x, c - y)));
    }

    (int X, int Y)[] MiddleOfSide() => (b % 2, c % 2) switch
    {
        (0, 0) => [(b / 2, c / 2)],
        (1, 1) => [(b / 2 + 1, c / 2), (b / 2, c / 2 + 1)],
        var (x, y) => [(b / 2, c / 2), (b / 2 + x, c / 2 + y)],
    };

    // The middle is at thirds of steps, equally far from whole steps in both directions: on a point, in a panel like △ or in one like ▽.
    (int X, int Y)[] MiddleOfFace()
    {
        var (x, y) = ((b + 2 * c) / 3 - c, (b + 2 * c) / 3);
        return ((b + 2 * c) % 3) switch
        {
            0 => [(x, y)],
            1 => [(x, y), (x + 1, y), (x, y + 1)],
            _ => [(x + 1, y), (x + 1, y + 1), (x, y + 1)],
        };
    }

    void Add((int X, int Y) p)
    {
        index[p.Y * Stride + p.X + c] = points.Count;
        points.Add(p);
    }

    int IndexOf((int X, int Y) p) => index[p.Y * Stride + p.X + c];
}
