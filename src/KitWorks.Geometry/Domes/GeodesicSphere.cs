namespace KitWorks.Geometry;

/// <summary>
/// A whole geodesic sphere of radius 1: a solid's faces subdivided by a lattice and projected on the sphere. Nodes come row by row from the
/// top, each row counter-clockwise seen from above, so that a cut keeps the first so many.
/// </summary>
/// <remarks>
/// Everything that a face's symmetry repeats (weights, chords, families, kinds of panel) is computed for one face and copied to the rest.
/// </remarks>
sealed class GeodesicSphere
{
    readonly Solid solid;
    readonly FaceLattice lattice;
    readonly int[] nodeAt; // nodes by face and lattice point
    readonly int[] faceOf, pointOf; // of each node, the lowest face that has it
    readonly Point3[] weights; // of a face's corners, by lattice point; what they weigh lies on the sphere
    readonly ushort cornerFamily, cornerKind;
    readonly double[] chords;
    readonly ushort[] families, kinds; // by lattice point and direction

    GeodesicSphere(Solid solid, Lattice of, Up up)
    {
        this.solid = solid;
        lattice = new(of);
        (nodeAt, faceOf, pointOf) = NumberNodes();
        weights = Weigh();
        (families, chords, cornerFamily) = MeasureStruts();
        (kinds, var sorted, cornerKind) = SortPanels();
        (Net, RowStart, var family, var kind) = InRows(up);
        Measured = new(Net, family, chords, kind, sorted);
    }

    /// <summary>The nodes and their neighbours.</summary>
    public Triangulation Net { get; }

    /// <summary>The first node of each row, with one more entry for the end.</summary>
    public int[] RowStart { get; }

    /// <summary>The same with the families of struts, whose lengths are chord factors, and the kinds of panel.</summary>
    public MeasuredNet Measured { get; }

    /// <summary>The number of the last row; the top is row 0.</summary>
    public int Rows => RowStart.Length - 2;

    public static GeodesicSphere Of(BaseSolid solid, Lattice lattice, Up up) => new(Solid.Of(solid, up), lattice, up);

    (int[] NodeAt, int[] FaceOf, int[] PointOf) NumberNodes()
    {
        int points = lattice.Count, onSide = lattice.OnSide, inside = points - lattice.Inside;
        var firstInside = solid.Vertices.Length + solid.EdgeCount * onSide;
        var nodes = GC.AllocateUninitializedArray<int>(solid.Faces.Length * points);
        for (int face = 0, at = 0; face < solid.Faces.Length; face++)
        {
            for (var corner = 0; corner < 3; corner++) nodes[at++] = solid.Corner(face * 3 + corner);
            for (var side = face * 3; side < face * 3 + 3; side++)
            {
                var first = solid.Vertices.Length + solid.EdgeOf[side] * onSide;
                var along = side < solid.Across(side);
                for (var i = 0; i < onSide; i++) nodes[at++] = along ? first + i : first + onSide - 1 - i;
            }
            for (var i = 0; i < inside; i++) nodes[at++] = firstInside + face * inside + i;
        }
        var count = firstInside + solid.Faces.Length * inside;
        var (faces, lattices) = (GC.AllocateUninitializedArray<int>(count), GC.AllocateUninitializedArray<int>(count));
        for (var face = solid.Faces.Length - 1; face >= 0; face--)
            for (var i = 0; i < points; i++) (faces[nodes[face * points + i]], lattices[nodes[face * points + i]]) = (face, i);
        return (nodes, faces, lattices);
    }

    Point3[] Weigh()
    {
        var (a, b, c) = solid.Faces[0];
        var weighed = new Point3[lattice.Count];
        for (var i = 0; i < weighed.Length; i++)
        {
            var (p, q, r) = lattice.WeightsOf(i);
            var flat = solid.Vertices[a] * p + solid.Vertices[b] * q + solid.Vertices[c] * r;
            weighed[i] = new Point3(p, q, r) * (1 / flat.Norm);
        }
        return weighed;
    }

    Point3 Place(int node)
    {
        var (a, b, c) = solid.Faces[faceOf[node]];
        ref readonly Point3 va = ref solid.Vertices[a], vb = ref solid.Vertices[b], vc = ref solid.Vertices[c], w = ref weights[pointOf[node]];
        return new(w.X * va.X + w.Y * vb.X + w.Z * vc.X, w.X * va.Y + w.Y * vb.Y + w.Z * vc.Y, w.X * va.Z + w.Y * vb.Z + w.Z * vc.Z);
    }

    bool IsCorner(int node) => node < solid.Vertices.Length;

    // A node's neighbours, counter-clockwise, as many as there is room for: six, at a corner the solid's ways.
    void Join(int node, Span<int> around)
    {
        int face = faceOf[node], point = pointOf[node];
        if (point < 3)
        {
            JoinCorner(face, point, around);
            return;
        }
        var nodes = nodeAt.AsSpan(face * lattice.Count, lattice.Count);
        var ways = lattice.Neighbours.AsSpan(point * 6, around.Length);
        for (var k = 0; k < around.Length; k++) around[k] = ways[k] >= 0 ? nodes[ways[k]] : NodeAcross(face, ways[k]);
    }

    void JoinCorner(int face, int corner, Span<int> around)
    {
        for (var i = 0; i < around.Length; i++)
        {
            around[i] = nodeAt[face * lattice.Count + lattice.CornerNeighbours[corner]];
            (face, corner) = Math.DivRem(solid.Across(face * 3 + (corner + 2) % 3), 3);
        }
    }

    int NodeAcross(int face, int neighbour)
    {
        var (side, point) = lattice.AcrossSide(neighbour);
        var (next, corner) = Math.DivRem(solid.Across(face * 3 + side), 3);
        for (; corner > 0; corner--) point = lattice.Turn[point];
        return nodeAt[next * lattice.Count + point];
    }

    // The node of a point of face 0, or across one of its sides.
    int OnFirstFace(int point) => point >= 0 ? nodeAt[point] : NodeAcross(0, point);

    // One of the three points that a face's own turning makes equal, with the two others.
    IEnumerable<(int First, int Second, int Third)> Alike()
    {
        for (var point = 3; point < lattice.Count; point++)
        {
            var second = lattice.Turn[point];
            var third = lattice.Turn[second];
            if (point <= second && point <= third) yield return (point, second, third);
        }
    }

    (ushort[], double[], ushort) MeasureStruts()
    {
        var measured = new List<double>(2 * lattice.Count + 6);
        foreach (var (point, _, _) in Alike())
        {
            var from = Place(nodeAt[point]);
            for (var k = 0; k < 6; k++) measured.Add(from.DistanceTo(Place(OnFirstFace(lattice.Neighbours[point * 6 + k]))));
        }
        measured.Add(Place(0).DistanceTo(Place(nodeAt[lattice.CornerNeighbours[0]])));
        var (familyOf, lengths) = Families.Group(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(measured));
        var byPlace = new ushort[lattice.Count * 6];
        var at = 0;
        foreach (var alike in Alike())
            for (var k = 0; k < 6; k++) CopyAlike(byPlace, alike, k, (ushort)familyOf[at++]);
        return (byPlace, lengths, (ushort)familyOf[at]);
    }

    (ushort[], (int, int, int)[], ushort) SortPanels()
    {
        var found = new Dictionary<(int, int, int), ushort>();
        var byPlace = new ushort[lattice.Count * 6];
        ushort KindOf(int family, int next, int node, int nextNode)
        {
            var sides = MeasuredNet.Ascending(family, next, Families.Find(chords, Place(node).DistanceTo(Place(nextNode))));
            if (!found.TryGetValue(sides, out var kind)) found.Add(sides, kind = (ushort)found.Count);
            return kind;
        }
        foreach (var alike in Alike())
            for (var k = 0; k < 6; k++)
            {
                int place = alike.First * 6 + k, next = alike.First * 6 + (k + 1) % 6;
                CopyAlike(byPlace, alike, k, KindOf(families[place], families[next], OnFirstFace(lattice.Neighbours[place]), OnFirstFace(lattice.Neighbours[next])));
            }
        Span<int> first = stackalloc int[solid.Ways];
        Join(0, first);
        var corner = KindOf(cornerFamily, cornerFamily, first[0], first[1]);
        var order = found.Keys.Order().ToArray();
        var rank = new ushort[order.Length];
        for (var i = 0; i < order.Length; i++) rank[found[order[i]]] = (ushort)i;
        for (var i = 18; i < byPlace.Length; i++) byPlace[i] = rank[byPlace[i]];
        return (byPlace, order, rank[corner]);
    }

    static void CopyAlike(ushort[] byPlace, (int First, int Second, int Third) alike, int direction, ushort value)
    {
        byPlace[alike.Third * 6 + (direction + 4) % 6] = value;
        byPlace[alike.Second * 6 + (direction + 2) % 6] = value;
        byPlace[alike.First * 6 + direction] = value;
    }

    // Numbers the nodes anew, breadth first from the top. Each node hands on its neighbours counter-clockwise from the one that found it,
    // which keeps every row in order around the axis.
    (Triangulation, int[], ushort[], ushort[]) InRows(Up up)
    {
        int count = pointOf.Length, ends = count * 6 - solid.Vertices.Length * (6 - solid.Ways);
        var (points, start) = (GC.AllocateUninitializedArray<Point3>(count), GC.AllocateUninitializedArray<int>(count + 1));
        var (around, family, kind) = (GC.AllocateUninitializedArray<int>(ends), GC.AllocateUninitializedArray<ushort>(ends), GC.AllocateUninitializedArray<ushort>(ends));
        var (order, finder, rank) = (GC.AllocateUninitializedArray<int>(count), GC.AllocateUninitializedArray<int>(count), GC.AllocateUninitializedArray<int>(count));
        Array.Fill(rank, -1);
        var (found, at) = (0, 0);
        var top = lattice.Top(up).Select(OnFirstFace).ToArray();
        // Of two or three nodes at the top, each begins at the one before it.
        foreach (var node in top)
        {
            (order[found], finder[found], rank[node]) = (node, top.Length == 1 ? -1 : top[(found + top.Length - 1) % top.Length], found);
            found++;
        }
        var rowStart = new List<int> { 0, found };
        for (var next = 0; next < count; next++)
        {
            if (next == rowStart[^1]) rowStart.Add(found);
            var node = order[next];
            var corner = IsCorner(node);
            var ways = around.AsSpan(at, corner ? solid.Ways : 6);
            Join(node, ways);
            (points[next], start[next]) = (Place(node), at);
            if (corner)
            {
                family.AsSpan(at, ways.Length).Fill(cornerFamily);
                kind.AsSpan(at, ways.Length).Fill(cornerKind);
            }
            else
            {
                families.AsSpan(pointOf[node] * 6, 6).CopyTo(family.AsSpan(at));
                kinds.AsSpan(pointOf[node] * 6, 6).CopyTo(kind.AsSpan(at));
            }
            at += ways.Length;
            for (int turn = 0, i = Math.Max(0, ways.IndexOf(finder[next])); turn < ways.Length; turn++, i = i + 1 == ways.Length ? 0 : i + 1)
            {
                var w = ways[i];
                if (rank[w] >= 0) continue;
                (order[found], finder[found], rank[w]) = (w, node, found);
                found++;
            }
        }
        start[count] = at;
        foreach (ref var w in around.AsSpan()) w = rank[w];
        return (new(points, start, around), [.. rowStart], family, kind);
    }
}
