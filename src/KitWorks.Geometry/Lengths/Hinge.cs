namespace KitWorks.Geometry;

/// <summary>A strut between two panels, and by how much the shell turns there.</summary>
/// <param name="Strut">The strut's id.</param>
/// <param name="From">One end.</param>
/// <param name="To">The other.</param>
/// <param name="Left">The third node of the panel on the left of the way from <paramref name="From"/> to <paramref name="To"/>, seen from outside.</param>
/// <param name="Right">The third node of the other.</param>
/// <param name="BeforeDegrees">The turn in the frame that it was made from; negative where inwards.</param>
readonly record struct Hinge(int Strut, int From, int To, int Left, int Right, double BeforeDegrees)
{
    public static Hinge[] Of(Frame frame)
    {
        var third = new Dictionary<(int, int), int>(frame.Panels.Length * 3);
        foreach (var (a, b, c, _) in frame.Panels) (third[(a, b)], third[(b, c)], third[(c, a)]) = (c, a, b);
        Point3[] points = [.. frame.Nodes.Select(n => n.Position)];
        var hinges = new List<Hinge>(frame.Struts.Length);
        foreach (var s in frame.Struts)
            if (third.TryGetValue((s.From, s.To), out var left) && third.TryGetValue((s.To, s.From), out var right))
            {
                var hinge = new Hinge(s.Id, s.From, s.To, left, right, 0);
                hinges.Add(hinge with { BeforeDegrees = hinge.FoldDegrees(points) });
            }
        return [.. hinges];
    }

    /// <summary>The turn at other positions, in degrees; panels are counter-clockwise from outside, which tells out from in.</summary>
    public double FoldDegrees(Point3[] points)
    {
        Point3 p = points[From], along = points[To] - p, left = points[Left] - p, right = points[Right] - p;
        Point3 one = along.Cross(left), other = right.Cross(along);
        var turn = Math.Atan2(one.Cross(other).Norm, one.Dot(other)) * (180 / Math.PI);
        return one.Dot(right) <= 0 ? turn : -turn;
    }
}
