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
    readonly int cornerFamily, cornerKind;
    readonly double[] chords;
    readonly int[] families, kinds; // by lattice point and direction

    GeodesicSphere(Solid solid, Lattice of, Up up)
    {
        this.solid = solid;
        lattice = new(of);
        nodeAt = NumberNodes(out var count);
        var pointOf = GC.AllocateUninitializedArray<int>(count);
        var points = PlaceNodes(count, pointOf);
        var net = JoinNodes(points, pointOf);
        (families, chords, cornerFamily) = MeasureStruts(net);
        (kinds, var sorted, cornerKind) = SortPanels(net);
        (Net, RowStart, var family, var kind) = InRows(net, pointOf, up);
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

    int[] NumberNodes(out int count)
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
        count = firstInside + solid.Faces.Length * inside;
        return nodes;
    }

    // pointOf: each node's lattice point on the lowest face that has it.
    Point3[] PlaceNodes(int count, int[] pointOf)
    {
        var (a, b, c) = solid.Faces[0];
        var weights = new Point3[lattice.Count];
        for (var i = 0; i < weights.Length; i++)
        {
            var (p, q, r) = lattice.WeightsOf(i);
            var flat = solid.Vertices[a] * p + solid.Vertices[b] * q + solid.Vertices[c] * r;
            weights[i] = new Point3(p, q, r) * (1 / flat.Norm);
        }
        var points = GC.AllocateUninitializedArray<Point3>(count);
        for (var face = solid.Faces.Length - 1; face >= 0; face--)
        {
            (a, b, c) = solid.Faces[face];
            Point3 va = solid.Vertices[a], vb = solid.Vertices[b], vc = solid.Vertices[c];
            var nodes = nodeAt.AsSpan(face * weights.Length, weights.Length);
            for (var i = 0; i < nodes.Length; i++)
            {
                ref readonly var w = ref weights[i];
                points[nodes[i]] = new(w.X * va.X + w.Y * vb.X + w.Z * vc.X, w.X * va.Y + w.Y * vb.Y + w.Z * vc.Y, w.X * va.Z + w.Y * vb.Z + w.Z * vc.Z);
                pointOf[nodes[i]] = i;
            }
        }
        return points;
    }

    Triangulation JoinNodes(Point3[] points, int[] pointOf)
    {
        var corners = solid.Vertices.Length;
        var start = GC.AllocateUninitializedArray<int>(points.Length + 1);
        for (var node = 0; node <= points.Length; node++) start[node] = node <= corners ? node * solid.Ways : corners * solid.Ways + (node - corners) * 6;
        var around = GC.AllocateUninitializedArray<int>(start[^1]);
        var joined = new bool[points.Length];
        for (var face = 0; face < solid.Faces.Length; face++)
        {
            var nodes = nodeAt.AsSpan(face * lattice.Count, lattice.Count);
            for (var corner = 0; corner < 3; corner++)
                if (!joined[nodes[corner]]) JoinCorner(face, corner, around.AsSpan(nodes[corner] * solid.Ways, solid.Ways));
            for (var point = 0; point < nodes.Length; point++)
            {
                if (joined[nodes[point]]) continue;
                joined[nodes[point]] = true;
                if (point < 3) continue;
                var ways = lattice.Neighbours.AsSpan(point * 6, 6);
                var at = around.AsSpan(start[nodes[point]], 6);
                for (var k = 0; k < at.Length; k++) at[k] = ways[k] >= 0 ? nodes[ways[k]] : NodeAcross(face, ways[k]);
            }
        }
        return new(points, start, around);
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

    (int[], double[], int) MeasureStruts(Triangulation net)
    {
        var measured = new List<double>(2 * lattice.Count + 6);
        foreach (var (point, _, _) in Alike())
            for (var k = 0; k < 6; k++) measured.Add(net.Points[nodeAt[point]].DistanceTo(net.Points[OnFirstFace(lattice.Neighbours[point * 6 + k])]));
        measured.Add(net.Points[0].DistanceTo(net.Points[net.Around[0]]));
        var (familyOf, lengths) = Families.Group(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(measured));
        var byPlace = new int[lattice.Count * 6];
        var at = 0;
        foreach (var alike in Alike())
            for (var k = 0; k < 6; k++) CopyAlike(byPlace, alike, k, familyOf[at++]);
        return (byPlace, lengths, familyOf[at]);
    }

    (int[], (int, int, int)[], int) SortPanels(Triangulation net)
    {
        var found = new Dictionary<(int, int, int), int>();
        var byPlace = new int[lattice.Count * 6];
        int KindOf(int family, int next, int node, int nextNode)
        {
            var sides = MeasuredNet.Ascending(family, next, Families.Find(chords, net.Points[node].DistanceTo(net.Points[nextNode])));
            if (!found.TryGetValue(sides, out var kind)) found.Add(sides, kind = found.Count);
            return kind;
        }
        foreach (var alike in Alike())
            for (var k = 0; k < 6; k++)
            {
                int place = alike.First * 6 + k, next = alike.First * 6 + (k + 1) % 6;
                CopyAlike(byPlace, alike, k, KindOf(families[place], families[next], OnFirstFace(lattice.Neighbours[place]), OnFirstFace(lattice.Neighbours[next])));
            }
        var corner = KindOf(cornerFamily, cornerFamily, net.Around[0], net.Around[1]);
        var order = found.Keys.Order().ToArray();
        var rank = new int[order.Length];
        for (var i = 0; i < order.Length; i++) rank[found[order[i]]] = i;
        for (var i = 18; i < byPlace.Length; i++) byPlace[i] = rank[byPlace[i]];
        return (byPlace, order, rank[corner]);
    }

    static void CopyAlike(int[] byPlace, (int First, int Second, int Third) alike, int direction, int value)
    {
        byPlace[alike.Third * 6 + (direction + 4) % 6] = value;
        byPlace[alike.Second * 6 + (direction + 2) % 6] = value;
        byPlace[alike.First * 6 + direction] = value;
    }

    // Numbers the nodes anew, breadth first from the top. Each node hands on its neighbours counter-clockwise from the one that found it,
    // which keeps every row in order around the axis.
    (Triangulation, int[], ushort[], ushort[]) InRows(Triangulation net, int[] pointOf, Up up)
    {
        var order = new int[net.Count];
        var rank = new int[net.Count];
        var from = new int[net.Count];
        Array.Fill(rank, -1);
        var found = 0;
        var top = lattice.Top(up).Select(OnFirstFace).ToArray();
        foreach (var node in top)
        {
            // Of two or three nodes, each begins at the one before it around the top.
            var place = top.Length == 1 ? net.Start[node] : net.PlaceOf(top[(found + top.Length - 1) % top.Length], node);
            (order[found], from[found], rank[node]) = (node, place, found);
            found++;
        }
        var rowStart = new List<int> { 0, found };
        for (var next = 0; next < found; next++)
        {
            if (next == rowStart[^1]) rowStart.Add(found);
            int node = order[next], start = net.Start[node], end = net.Start[node + 1], i = from[next];
            for (var turn = start; turn < end; turn++, i = i + 1 == end ? start : i + 1)
            {
                var w = net.Around[i];
                if (rank[w] >= 0) continue;
                (order[found], from[found], rank[w]) = (w, net.PlaceOf(node, w), found);
                found++;
            }
        }
        return Renumbered(net, pointOf, order, rank, rowStart);
    }

    (Triangulation, int[], ushort[], ushort[]) Renumbered(Triangulation net, int[] pointOf, int[] order, int[] rank, List<int> rowStart)
    {
        var points = GC.AllocateUninitializedArray<Point3>(net.Count);
        var start = GC.AllocateUninitializedArray<int>(net.Count + 1);
        var (around, family, kind) = (GC.AllocateUninitializedArray<int>(net.Around.Length), GC.AllocateUninitializedArray<ushort>(net.Around.Length), GC.AllocateUninitializedArray<ushort>(net.Around.Length));
        var at = 0;
        for (var node = 0; node < order.Length; node++)
        {
            var was = order[node];
            points[node] = net.Points[was];
            start[node] = at;
            var corner = was < solid.Vertices.Length;
            var place = pointOf[was] * 6;
            for (var i = net.Start[was]; i < net.Start[was + 1]; i++, at++, place++)
            {
                around[at] = rank[net.Around[i]];
                family[at] = (ushort)(corner ? cornerFamily : families[place]);
                kind[at] = (ushort)(corner ? cornerKind : kinds[place]);
            }
        }
        start[^1] = at;
        return (new(points, start, around), [.. rowStart], family, kind);
    }
}
