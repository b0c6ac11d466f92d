using System.Collections.Immutable;

namespace KitWorks.Geometry;

/// <summary>Takes out of a frame what its openings leave out, puts in what frames them, and numbers it anew.</summary>
sealed class OpenedFraming
{
    /// <summary>Lengths within this many millimetres are one family; struts of a frame are told apart by far more.</summary>
    const double SameLengthMm = 1e-6;

    readonly Frame frame;
    readonly IReadOnlyList<OpeningPlace> places;
    readonly int[] renumbered;
    readonly List<Point3> points = [];
    readonly Dictionary<(int, int), int> struts = [];
    readonly List<(int From, int To, double SpacingMm, double? ChordFactor)> kept = [];
    readonly List<(int A, int B, int C)> panels = [];

    public OpenedFraming(Frame frame, IReadOnlyList<OpeningPlace> places)
    {
        (this.frame, this.places, renumbered) = (frame, places, new int[frame.Nodes.Length]);
        var leftOut = places.Where(p => p.Hub is not null).Select(p => p.Hub!.Value).ToHashSet();
        var vents = places.Where(p => p.Opening is Vent).Select(p => p.Number).ToHashSet();
        foreach (var node in frame.Nodes)
        {
            renumbered[node.Id] = leftOut.Contains(node.Id) ? -1 : points.Count;
            if (!leftOut.Contains(node.Id)) points.Add(node.Position);
        }
        var lintels = places.Where(p => p.Peak is not null).Select(p => Key(p.Nodes[1], p.Nodes[2])).ToHashSet();
        foreach (var s in frame.Struts)
            if (renumbered[s.From] >= 0 && renumbered[s.To] >= 0 && !lintels.Contains((s.From, s.To)))
                Add(renumbered[s.From], renumbered[s.To], s.SpacingMm, frame.Families[s.Family].ChordFactor);
        foreach (var (i, (a, b, c, _)) in frame.Panels.Index())
            if (!vents.Contains(i) && renumbered[a] >= 0 && renumbered[b] >= 0 && renumbered[c] >= 0
                && !lintels.Contains(Key(a, b)) && !lintels.Contains(Key(b, c)) && !lintels.Contains(Key(c, a)))
                panels.Add((renumbered[a], renumbered[b], renumbered[c]));
    }

    public OpenedFrame Open()
    {
        var openings = places.Select(p => p.Opening is Door ? DoorOf(p) : VentOf(p)).ToImmutableArray();
        return new(Numbered(openings), openings);
    }

    FramedOpening DoorOf(OpeningPlace place)
    {
        int right = Now(place.Nodes[0]), rightHead = Now(place.Nodes[1]), leftHead = Now(place.Nodes[2]), left = Now(place.Nodes[3]);
        var ground = frame.Nodes[place.Hub!.Value].Position.Z;
        int leftFoot = Foot(leftHead, ground), rightFoot = Foot(rightHead, ground);
        int[] posts = [Join(leftHead, leftFoot), Join(rightHead, rightFoot)], sills = [Join(left, leftFoot), Join(right, rightFoot)];
        panels.Add((left, leftFoot, leftHead));
        panels.Add((rightFoot, right, rightHead));
        int? peak = place.Peak is { } p ? Now(p) : null;
        var (a, b) = (points[leftFoot], points[rightFoot]);
        var top = peak is { } over ? points[over].Z : Math.Min(points[leftHead].Z, points[rightHead].Z);
        return new()
        {
            Opening = place.Opening,
            Edge = peak is { } u ? [leftFoot, rightFoot, rightHead, u, leftHead] : [leftFoot, rightFoot, rightHead, leftHead],
            StrutsLeftOut = peak is null ? 4 : 5,
            HubsLeftOut = 1,
            PanelsLeftOut = peak is null ? 3 : 4,
            Posts = [.. posts],
            Sills = [.. sills],
            Doubled = peak is { } v ? [struts[Key(leftHead, v)], struts[Key(rightHead, v)]] : [struts[Key(leftHead, rightHead)]],
            Shut =
            [
                new(leftFoot, rightFoot, rightHead, -1), new(leftFoot, rightHead, leftHead, -1),
                .. peak is { } w ? [new Panel(leftHead, rightHead, w, -1)] : Array.Empty<Panel>(),
            ],
            ClearWidthMm = a.DistanceTo(b),
            ClearHeightMm = top - ground,
        };
    }

    FramedOpening VentOf(OpeningPlace place)
    {
        int a = Now(place.Nodes[0]), b = Now(place.Nodes[1]), c = Now(place.Nodes[2]);
        var (p, q, r) = (points[a], points[b], points[c]);
        // The inscribed circle of a triangle is four times its area over its perimeter across.
        var across = 2 * (q - p).Cross(r - p).Norm / (p.DistanceTo(q) + q.DistanceTo(r) + r.DistanceTo(p));
        return new()
        {
            Opening = place.Opening,
            Edge = [a, b, c],
            StrutsLeftOut = 0,
            HubsLeftOut = 0,
            PanelsLeftOut = 1,
            Doubled = [struts[Key(a, b)], struts[Key(b, c)], struts[Key(c, a)]],
            Shut = [new(a, b, c, -1)],
            ClearWidthMm = across,
            ClearHeightMm = across,
        };
    }

    int Now(int node) => renumbered[node];

    int Foot(int head, double ground)
    {
        points.Add(new(points[head].X, points[head].Y, ground));
        return points.Count - 1;
    }

    int Join(int node, int other)
    {
        var spacing = points[node].DistanceTo(points[other]);
        return Add(Math.Min(node, other), Math.Max(node, other), spacing, frame.RadiusMm is { } r ? spacing / r : null);
    }

    int Add(int from, int to, double spacing, double? chordFactor)
    {
        kept.Add((from, to, spacing, chordFactor));
        return struts[Key(from, to)] = kept.Count - 1;
    }

    static (int, int) Key(int a, int b) => a < b ? (a, b) : (b, a);

    Frame Numbered(ImmutableArray<FramedOpening> openings)
    {
        ImmutableArray<int> ring = [.. frame.Base.SelectMany(n => Now(n) >= 0 ? [Now(n)] : openings[places.Index().First(p => p.Item.Hub == n).Index].Edge.Take(2))];
        var tiers = Tiers(ring);
        var (familyOf, families) = Families();
        var sides = panels.ConvertAll(p => Sides(p, familyOf));
        var kinds = sides.CountBy(s => s).OrderBy(k => k.Key).ToList();
        var kindOf = kinds.Select((k, i) => (k.Key, i)).ToDictionary(k => k.Key, k => k.i);
        ImmutableArray<PanelKind> panelKinds =
        [
            .. kinds.Select((k, i) => new PanelKind(i, [k.Key.Item1, k.Key.Item2, k.Key.Item3],
                Triangle.Area(families[k.Key.Item1].SpacingMm, families[k.Key.Item2].SpacingMm, families[k.Key.Item3].SpacingMm) / 1e6, k.Value)),
        ];
        var degrees = new int[points.Count];
        foreach (var (from, to, _, _) in kept) (degrees[from], degrees[to]) = (degrees[from] + 1, degrees[to] + 1);
        return new()
        {
            Shelter = frame.Shelter,
            RadiusMm = frame.RadiusMm,
            Nodes = [.. points.Select((p, i) => new Node(i, p, degrees[i], tiers[i]))],
            Struts = [.. kept.Select((s, i) => new Strut(i, s.From, s.To, familyOf[i], families[familyOf[i]].SpacingMm, Math.Max(tiers[s.From], tiers[s.To])))],
            Panels = [.. panels.Select((p, i) => new Panel(p.A, p.B, p.C, kindOf[sides[i]]))],
            Families = families,
            PanelKinds = panelKinds,
            Base = ring,
            // The room inside is measured as if the openings were shut.
            Dimensions = frame.Dimensions with { CoverAreaM2 = panelKinds.Sum(k => k.AreaM2 * k.Count) },
            BaseSpreadMm = frame.BaseSpreadMm,
        };
    }

    (int, int, int) Sides((int A, int B, int C) p, int[] familyOf) =>
        MeasuredNet.Ascending(familyOf[struts[Key(p.A, p.B)]], familyOf[struts[Key(p.B, p.C)]], familyOf[struts[Key(p.C, p.A)]]);

    (int[] FamilyOf, ImmutableArray<StrutFamily> Families) Families()
    {
        var familyOf = new int[kept.Count];
        var families = new List<StrutFamily>();
        foreach (var (strut, place) in kept.Select((s, i) => (s, i)).OrderBy(s => s.s.SpacingMm).ThenBy(s => s.i))
        {
            if (families.Count == 0 || strut.SpacingMm - families[^1].SpacingMm > SameLengthMm) families.Add(new(families.Count, strut.SpacingMm, strut.ChordFactor, 0));
            families[^1] = families[^1] with { Count = families[^1].Count + 1 };
            familyOf[place] = families.Count - 1;
        }
        return (familyOf, [.. families]);
    }

    int[] Tiers(ImmutableArray<int> ring)
    {
        var neighbours = kept.SelectMany(s => new[] { (s.From, s.To), (From: s.To, To: s.From) }).ToLookup(s => s.From, s => s.To);
        var tiers = new int[points.Count];
        Array.Fill(tiers, -1);
        foreach (var node in ring) tiers[node] = 0;
        var queue = new Queue<int>(ring);
        while (queue.TryDequeue(out var node))
            foreach (var w in neighbours[node])
                if (tiers[w] < 0)
                {
                    tiers[w] = tiers[node] + 1;
                    queue.Enqueue(w);
                }
        return tiers;
    }
}
