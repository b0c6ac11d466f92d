namespace KitWorks.Geometry.Tests;

/// <summary>What is true of every frame.</summary>
static class FrameChecks
{
    public static void Holds(Frame frame)
    {
        int v = frame.Nodes.Length, e = frame.Struts.Length, f = frame.Panels.Length, n = frame.Base.Length;
        Assert.Equal(n == 0 ? 2 : 1, v - e + f);
        if (n > 0) Assert.Equal((3 * v - 3 - n, 2 * v - 2 - n), (e, f));
        StrutsClose(frame);
        PanelsFaceOut(frame);
        BaseIsOneRing(frame);
        TiersCountFromTheGround(frame);
        CountsAddUp(frame);
    }

    static void StrutsClose(Frame frame)
    {
        var degrees = new int[frame.Nodes.Length];
        var seen = new HashSet<(int, int)>();
        foreach (var s in frame.Struts)
        {
            if (!(s.From < s.To && seen.Add((s.From, s.To)))) Assert.Fail($"strut {s.Id} is out of order or twice there");
            degrees[s.From]++;
            degrees[s.To]++;
            var closes = Math.Abs(s.SpacingMm - frame.Nodes[s.From].Position.DistanceTo(frame.Nodes[s.To].Position)) <= 1e-9 * Span(frame);
            if (!closes || frame.Families[s.Family].SpacingMm != s.SpacingMm || s.Tier != Math.Max(frame.Nodes[s.From].Tier, frame.Nodes[s.To].Tier))
                Assert.Fail($"{s} does not close, or has another family's length or another tier");
        }
        Assert.Equal(degrees, frame.Nodes.Select(node => node.Degree));
        Assert.Equal(2 * frame.Struts.Length, degrees.Sum());
    }

    static void PanelsFaceOut(Frame frame)
    {
        var families = frame.Struts.ToDictionary(s => (s.From, s.To), s => s.Family);
        var middle = new Point3(0, 0, frame.Nodes.Average(n => n.Position.Z) / 2);
        var volume = 0.0;
        foreach (var p in frame.Panels)
        {
            Point3 a = frame.Nodes[p.A].Position - middle, b = frame.Nodes[p.B].Position - middle, c = frame.Nodes[p.C].Position - middle;
            volume += a.Dot(b.Cross(c)) / 6;
            int[] sides = [Side(p.A, p.B), Side(p.B, p.C), Side(p.C, p.A)];
            Array.Sort(sides);
            var areaIsRight = Math.Abs(frame.PanelKinds[p.Kind].AreaM2 * 1e6 - (b - a).Cross(c - a).Norm / 2) <= 1e-8 * Span(frame) * Span(frame);
            if (!areaIsRight || !frame.PanelKinds[p.Kind].Families.SequenceEqual(sides)) Assert.Fail($"{p} is of another kind or area");
        }
        Assert.True(volume > 0);
        int Side(int p, int q) => families[(Math.Min(p, q), Math.Max(p, q))];
    }

    static void BaseIsOneRing(Frame frame)
    {
        if (frame.Base.Length == 0) return;
        var struts = frame.Struts.Select(s => (s.From, s.To)).ToHashSet();
        var uses = new Dictionary<(int, int), int>();
        foreach (var p in frame.Panels)
            foreach (var side in new[] { (p.A, p.B), (p.B, p.C), (p.C, p.A) }) uses[side] = uses.GetValueOrDefault(side) + 1;
        var rim = uses.Keys.Where(s => !uses.ContainsKey((s.Item2, s.Item1))).ToHashSet();
        Assert.Equal(1, uses.Values.Max());
        Assert.Equal(frame.Base.Length, frame.Base.Distinct().Count());
        Assert.Equal(rim, frame.Base.Select((node, i) => (node, frame.Base[(i + 1) % frame.Base.Length])).ToHashSet());
        Assert.Equal(0, frame.Base.Average(n => frame.Nodes[n].Position.Z), 1e-9 * Span(frame));
        Assert.True(frame.Dimensions.FloorAreaM2 > 0 && frame.Dimensions.VolumeM3 > 0);
    }

    static void TiersCountFromTheGround(Frame frame)
    {
        Assert.Equal(frame.Base.Order(), frame.Base.Length == 0 ? [] : frame.Nodes.Where(n => n.Tier == 0).Select(n => n.Id));
        var lowest = frame.Nodes.Select(n => n.Tier == 0 ? -1 : int.MaxValue).ToArray();
        foreach (var s in frame.Struts)
        {
            if (Math.Abs(frame.Nodes[s.From].Tier - frame.Nodes[s.To].Tier) > 1) Assert.Fail($"{s} skips a tier");
            lowest[s.From] = Math.Min(lowest[s.From], frame.Nodes[s.To].Tier);
            lowest[s.To] = Math.Min(lowest[s.To], frame.Nodes[s.From].Tier);
        }
        Assert.DoesNotContain(frame.Nodes, n => n.Tier != 0 && lowest[n.Id] != n.Tier - 1);
    }

    static void CountsAddUp(Frame frame)
    {
        Assert.Equal(frame.Families.Select(f => f.Count), frame.Struts.CountBy(s => s.Family).OrderBy(c => c.Key).Select(c => c.Value));
        Assert.Equal(frame.PanelKinds.Select(k => k.Count), frame.Panels.CountBy(p => p.Kind).OrderBy(c => c.Key).Select(c => c.Value));
        Assert.Equal(frame.Families.OrderBy(f => f.SpacingMm), frame.Families);
        Assert.Equal(frame.PanelKinds.Length, frame.PanelKinds.Select(k => string.Join(' ', k.Families)).Distinct().Count());
        Assert.Equal(Enumerable.Range(0, frame.Nodes.Length), frame.Nodes.Select(n => n.Id));
        Assert.Equal(Enumerable.Range(0, frame.Struts.Length), frame.Struts.Select(s => s.Id));
    }

    static double Span(Frame frame) => Math.Max(frame.Dimensions.LengthMm, frame.Dimensions.HeightMm);
}
