using KitWorks.Geometry;
using static KitWorks.Kits.Tests.ExampleShop;

namespace KitWorks.Kits.Tests;

public sealed class DesignIdTests
{
    static string IdOf(Design design) => Made(design).DesignId;

    static Design Cut(string cut) => Dome(3, cut, new Size.FloorDiameter(Mm(6000)));

    [Fact]
    public void Make_WhenAnyDesign_NamesItInSixteenHexadecimalDigits() => Assert.Matches("^[0-9a-f]{16}$", SixMetreKit.DesignId);

    [Theory]
    [InlineData("rows:5"), InlineData("5/9"), InlineData("10/18")]
    public void Make_WhenTheCutIsWrittenOtherwise_HasTheSameDesignId(string cut) => Assert.Equal(IdOf(Cut("5/8")), IdOf(Cut(cut)));

    [Fact]
    public void Make_WhenTheBaseIsFlatAndTheCutWrittenOtherwise_HasTheSameDesignId() =>
        Assert.Equal(IdOf(Flat("5/8")), IdOf(Flat("rows:5")));

    [Fact]
    public void Make_WhenTheSizeIsWrittenInAnotherUnit_HasTheSameDesignId()
    {
        var metres = Dome(3, "5/8", new Size.FloorDiameter(Length.FromMillimetres(6 * 1000.0)));

        Assert.Equal(IdOf(metres), IdOf(Dome(3, "5/8", new Size.FloorDiameter(Length.FromTenths(60_000)))));
    }

    [Fact]
    public void Make_WhenAnythingDiffers_HasAnotherDesignId()
    {
        var design = SixMetreDome();
        var dome = (Dome)design.Shelter;
        Design[] others =
        [
            design,
            design with { HubSystem = Plate },
            design with { StrutStock = "long" },
            design with { Cover = null },
            design with { Cover = new(2) },
            design with { Cover = new(1, "bare") },
            design with { MaxStrutTypes = 3 },
            design with { Shelter = dome with { Size = new Size.FloorDiameter(Mm(6000.1)) } },
            design with { Shelter = dome with { Size = new Size.Radius(Mm(3000)) } },
            design with { Shelter = dome with { Size = new Size.Height(Mm(3000)) } },
            design with { Shelter = dome with { Lattice = Lattice.Class1(4), Cut = CutOf("1/2") } },
            design with { Shelter = dome with { Solid = BaseSolid.Octahedron, Cut = CutOf("1/2") } },
            design with { Shelter = dome with { FlatBase = true } },
            design with { Shelter = dome with { Up = Up.Face, Cut = CutOf("rows:5") } },
        ];

        Assert.Equal(others.Length, others.Select(IdOf).Distinct().Count());
    }

    // Every two cuts of a dome are two designs, whatever the solid, the class and what points up.
    [Theory]
    [InlineData(BaseSolid.Icosahedron, 3, 0, Up.Vertex), InlineData(BaseSolid.Icosahedron, 8, 0, Up.Vertex), InlineData(BaseSolid.Icosahedron, 2, 2, Up.Vertex)]
    [InlineData(BaseSolid.Icosahedron, 2, 1, Up.Face), InlineData(BaseSolid.Icosahedron, 5, 0, Up.Edge), InlineData(BaseSolid.Octahedron, 4, 0, Up.Vertex)]
    [InlineData(BaseSolid.Octahedron, 3, 3, Up.Edge), InlineData(BaseSolid.Tetrahedron, 4, 0, Up.Vertex), InlineData(BaseSolid.Tetrahedron, 3, 2, Up.Face)]
    public void Make_WhenAnyCut_HasItsOwnDesignIdUnderEachOfItsNames(BaseSolid solid, int b, int c, Up up)
    {
        var lattice = new Lattice(b, c);
        var cuts = DomeCuts.Of(solid, lattice, up).Value;
        var ids = cuts.Select(cut => IdOf(Design(cut.Name))).ToList();

        Assert.NotEmpty(cuts);
        Assert.Equal(cuts.Length, ids.Distinct().Count());
        Assert.Equal(ids, cuts.Select(cut => IdOf(Design($"rows:{cut.Rows}"))));

        Design Design(string cut) =>
            Of(new Dome { Solid = solid, Lattice = lattice, Up = up, Cut = CutOf(cut), Size = new Size.LongestStrut(Mm(2500)) }) with { StrutStock = "long" };
    }

    static Design Flat(string cut) => Of((Dome)Cut(cut).Shelter with { FlatBase = true });
}
