using KitWorks.Geometry;
using static KitWorks.Kits.Tests.ExampleShop;

namespace KitWorks.Kits.Tests;

public sealed class CoverCuttingTests
{
    // The cap of the plain icosahedron is five equilateral triangles; one of side a grown by s all round is one of side a + 2 √3 s.
    [Theory]
    [InlineData(1), InlineData(3)]
    public void Make_WhenPanelsAreEquilateral_TakesTrianglesGrownByTheSeam(int layers)
    {
        var kit = Made(Dome(1, "rows:1", new Size.LongestStrut(Mm(1970))) with { Cover = new(layers) });
        var side = 2.0 + 2 * Math.Sqrt(3) * 0.040;

        Assert.Equal(5 * layers * Math.Sqrt(3) / 4 * side * side, kit.Totals.CoverMaterialM2, 1e-9);
        var panel = Assert.Single(kit.PanelTypes);
        Assert.Equal(5, panel.Count);
        Assert.Equal(Math.Sqrt(3), panel.AreaM2, 1e-9);
    }

    // Any triangle grown by s keeps its angles, and its inradius r = 2A / P grows to r + s. The corners of an equilateral triangle, once
    // taken for those of every panel, are the smallest there are.
    [Fact]
    public void Make_WhenPanelsAreNotEquilateral_TakesEveryCornerOfTheSeam()
    {
        var kit = Made(Of(new Dome { Solid = BaseSolid.Tetrahedron, Lattice = Lattice.Class1(3), Cut = CutOf("rows:3"), Size = new Size.LongestStrut(Mm(1000)) }) with { Cover = new(1) });
        var expected = kit.Frame.Panels.Sum(p =>
        {
            Point3 a = At(p.A), b = At(p.B), c = At(p.C);
            double area = (b - a).Cross(c - a).Norm / 2, inradius = 2 * area / (a.DistanceTo(b) + b.DistanceTo(c) + c.DistanceTo(a));
            return area * (1 + 40 / inradius) * (1 + 40 / inradius);
        });

        Assert.Equal(expected / 1e6, kit.Totals.CoverMaterialM2, 1e-9);

        Point3 At(int node) => kit.Frame.Nodes[node].Position;
    }

    [Fact]
    public void Make_WhenMaterialHasNoSeam_TakesTheNetAreaOnce()
    {
        var kit = Made(SixMetreDome() with { Cover = new(2, "bare") });

        Assert.Equal(2 * kit.Frame.Dimensions.CoverAreaM2, kit.Totals.CoverMaterialM2, 1e-9);
        Assert.Equal((int)Math.Ceiling(kit.Totals.CoverMaterialM2), kit.Parts.Single(p => p.Sku == "bare-sku").Quantity);
    }
}
