using System.Numerics;
using KitWorks.Geometry;

namespace KitWorks.Drawings.Models;

/// <summary>Triangles with normals, gathered in a model's own axes: metres, y up, z to the front.</summary>
sealed class Mesh3
{
    const int TubeSides = 10;

    static readonly (Vector3[] Corners, int[] Triangles) Ball = RoundedOctahedron();

    public List<Vector3> Positions { get; } = [];

    public List<Vector3> Normals { get; } = [];

    public List<int> Indices { get; } = [];

    /// <summary>An open tube; its ends lie inside hubs.</summary>
    public void AddTube(Point3 from, Point3 to, double radius)
    {
        var (a, b, r) = (Turned(from), Turned(to), (float)(radius / 1000));
        var axis = Vector3.Normalize(b - a);
        var side = Vector3.Normalize(Vector3.Cross(axis, Math.Abs(axis.Y) < 0.9f ? Vector3.UnitY : Vector3.UnitX));
        var other = Vector3.Cross(axis, side);
        var first = Positions.Count;
        for (var i = 0; i < TubeSides; i++)
        {
            var (sin, cos) = MathF.SinCos(MathF.Tau * i / TubeSides);
            var normal = Vector3.Normalize(side * cos + other * sin);
            Add(a + normal * r, normal);
            Add(b + normal * r, normal);
            var (here, next) = (first + 2 * i, first + 2 * ((i + 1) % TubeSides));
            Indices.AddRange([here, next, here + 1, here + 1, next, next + 1]);
        }
    }

    public void AddBall(Point3 centre, double radius)
    {
        var (c, r, first) = (Turned(centre), (float)(radius / 1000), Positions.Count);
        foreach (var corner in Ball.Corners) Add(c + corner * r, corner);
        Indices.AddRange(Ball.Triangles.Select(i => first + i));
    }

    /// <summary>A flat triangle, counter-clockwise from outside.</summary>
    public void AddTriangle(Point3 a, Point3 b, Point3 c)
    {
        var (p, q, r) = (Turned(a), Turned(b), Turned(c));
        var normal = Vector3.Normalize(Vector3.Cross(q - p, r - p));
        Indices.AddRange([Positions.Count, Positions.Count + 1, Positions.Count + 2]);
        Add(p, normal);
        Add(q, normal);
        Add(r, normal);
    }

    void Add(Vector3 position, Vector3 normal)
    {
        Positions.Add(position);
        Normals.Add(normal);
    }

    static Vector3 Turned(Point3 p) => new((float)(p.X / 1000), (float)(p.Z / 1000), (float)(-p.Y / 1000));

    /// <summary>An octahedron with each face split in four, pushed out to the unit sphere: 18 corners, 32 triangles.</summary>
    static (Vector3[], int[]) RoundedOctahedron()
    {
        List<Vector3> corners = [Vector3.UnitX, -Vector3.UnitX, Vector3.UnitY, -Vector3.UnitY, Vector3.UnitZ, -Vector3.UnitZ];
        var middles = new Dictionary<(int, int), int>();
        int Middle(int a, int b)
        {
            var side = (Math.Min(a, b), Math.Max(a, b));
            if (middles.TryGetValue(side, out var known)) return known;
            corners.Add(Vector3.Normalize(corners[a] + corners[b]));
            return middles[side] = corners.Count - 1;
        }
        var triangles = new List<int>();
        foreach (var (a, b, c) in new[] { (0, 2, 4), (2, 1, 4), (1, 3, 4), (3, 0, 4), (2, 0, 5), (1, 2, 5), (3, 1, 5), (0, 3, 5) })
        {
            var (ab, bc, ca) = (Middle(a, b), Middle(b, c), Middle(c, a));
            triangles.AddRange([a, ab, ca, ab, b, bc, ca, bc, c, ab, bc, ca]);
        }
        return ([.. corners], [.. triangles]);
    }
}
