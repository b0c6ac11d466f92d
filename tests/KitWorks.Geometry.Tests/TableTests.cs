namespace KitWorks.Geometry.Tests;

public sealed class TableTests
{
    static readonly Frame ThreeV = Frame.Build(Designs.Dome(3, "5/8", new Size.Radius(Designs.Mm(3000)))).Value;
    static readonly Frame Oblong = Frame.Build(new Oblong { Fold = 6, Size = new Size.Height(Designs.Mm(2600)) }).Value;

    [Fact]
    public void HubAngles_WhenOnASphere_TiltByHalfTheArc()
    {
        // By hand: a chord leaves the plane that touches the sphere at its end by the angle whose sine is half the chord factor.
        foreach (var hub in HubAngles.Of(ThreeV))
            foreach (var s in hub.Struts)
                Assert.Equal(Math.Asin(ThreeV.Families[ThreeV.Struts[s.Strut].Family].ChordFactor!.Value / 2) * 180 / Math.PI, s.TiltDegrees, 1e-9);
    }

    [Fact]
    public void HubAngles_WhenAnyFrame_GoAroundOnce()
    {
        foreach (var frame in new[] { ThreeV, Oblong })
            foreach (var hub in HubAngles.Of(frame))
            {
                Assert.Equal(frame.Nodes[hub.Node].Degree, hub.Struts.Length);
                Assert.Equal(360, hub.Struts.Sum(s => s.TurnDegrees), 1e-9);
                Assert.Equal(frame.Base.Contains(hub.Node) ? 1 : 0, hub.Struts.Count(s => s.FaceDegrees is null));
                Assert.All(hub.Struts, s => Assert.True(hub.Node == frame.Struts[s.Strut].From || hub.Node == frame.Struts[s.Strut].To));
                Assert.Equal(1, hub.Axis.Norm, 1e-12);
            }
        // Every corner of every panel is counted once.
        Assert.Equal(180.0 * ThreeV.Panels.Length, HubAngles.Of(ThreeV).Sum(h => h.Struts.Sum(s => s.FaceDegrees ?? 0)), 1e-6);
    }

    [Fact]
    public void Dihedrals_WhenIcosahedron_AreItsOwn()
    {
        // In print everywhere: 138.1897°, the arc cosine of −√5 / 3.
        var frame = Frame.Build(Designs.Dome(1, "2/3")).Value;
        var dihedrals = StrutDihedrals.Of(frame);

        Assert.Equal(5, dihedrals.Count(d => d is null));
        Assert.All(dihedrals.OfType<double>(), d => Assert.Equal(Math.Acos(-Math.Sqrt(5) / 3) * 180 / Math.PI, d, 1e-9));
        Assert.Equal(180 - 138.189685, StrutDihedrals.FlattestTurn(frame), 1e-6);
    }

    [Fact]
    public void Dihedrals_WhenOctahedron2V_AreByHand()
    {
        // By hand: at 2V the octahedron's edge midpoints are at (1, 1, 0) / √2 and so on; the middle panel of each face is equilateral with
        // normal (1, 1, 1), a corner panel at (0, 0, 1) has normal (1, 1, 1 + √2).
        var frame = Frame.Build(Designs.Dome(BaseSolid.Octahedron, Lattice.Class1(2), Up.Vertex, "1/2")).Value;
        Assert.Equal(2, frame.Families.Length);
        Assert.Equal(1000 * Math.Sqrt(2 - Math.Sqrt(2)), frame.Families[0].SpacingMm, 1e-9);
        Assert.Equal(1000, frame.Families[1].SpacingMm, 1e-9);
        var expected = 180 - Math.Acos((3 + Math.Sqrt(2)) / Math.Sqrt(3 * (2 + Math.Pow(1 + Math.Sqrt(2), 2)))) * 180 / Math.PI;
        var inner = frame.Struts.Where(s => s.Family == 1).Select(s => StrutDihedrals.Of(frame)[s.Id]).OfType<double>();

        Assert.All(inner, d => Assert.Equal(expected, d, 1e-9));
    }

    [Fact]
    public void CoverNets_WhenSeamed_AddTheSeamAllAround()
    {
        var nets = CoverNet.Of(ThreeV, Designs.Mm(20));

        Assert.Equal(ThreeV.PanelKinds.Length, nets.Length);
        foreach (var net in nets)
        {
            double a = net.CutSidesMm[0], b = net.CutSidesMm[1], c = net.CutSidesMm[2];
            Assert.Equal(180, net.AnglesDegrees.Sum(), 1e-9);
            // By hand: a strip of 20 mm around a triangle adds perimeter × 20 and, at its three pointed corners, 20² Σ cot(corner / 2).
            var corners = net.AnglesDegrees.Sum(d => 1 / Math.Tan(d * Math.PI / 360));
            Assert.Equal(Triangle.Area(net.SidesMm[0], net.SidesMm[1], net.SidesMm[2]) + net.SidesMm.Sum() * 20 + 400 * corners, Triangle.Area(a, b, c), 1e-3);
            Assert.Equal(net.CutAreaM2 * 1e6, Triangle.Area(a, b, c), 1e-3);
        }
        Assert.Equal(ThreeV.Dimensions.CoverAreaM2, CoverNet.Of(ThreeV, Length.Zero).Sum(n => n.CutAreaM2 * n.Count), 1e-9);
    }

    [Fact]
    public void StakeOut_WhenOblong_ChecksItsWidthsFromTheMiddle()
    {
        var stakes = StakeOut.Of(Oblong);

        Assert.Equal(12, stakes.Stakes.Length);
        Assert.Equal(5, stakes.Widths.Length);
        Assert.Equal(Oblong.Dimensions.WidthMm, stakes.Widths[0].Mm, 1e-9);
        Assert.Equal(stakes.Widths[1].Mm, stakes.Widths[2].Mm, 1e-9);
        Assert.True(stakes.Widths[4].Mm < stakes.Widths[0].Mm);
    }

    [Fact]
    public void StakeOut_WhenTaped_PutsEveryStakeInItsPlace()
    {
        foreach (var frame in new[] { ThreeV, Oblong })
        {
            var stakes = StakeOut.Of(frame);
            var n = stakes.Stakes.Length;
            Assert.Equal(n, stakes.Sides.Length);
            var taped = stakes.Diagonals.Concat(stakes.Sides).SelectMany(t => new[] { (t.From, t.To), (t.To, t.From) }).ToHashSet();
            int first = stakes.Stakes[0].Node, half = stakes.Stakes[n / 2].Node;
            foreach (var s in stakes.Stakes.Where(s => s.Node != first && s.Node != half)) Assert.True(taped.Contains((first, s.Node)) && taped.Contains((half, s.Node)));
            Assert.All(stakes.Stakes, s => Assert.InRange(s.HeightMm, 0, frame.BaseSpreadMm + 1e-9));
            Assert.All(stakes.Checks, c => Assert.DoesNotContain((c.From, c.To), taped));
        }
    }
}
