namespace KitWorks.Geometry.Tests;

static class Designs
{
    public static Dome Dome(int frequency, string cut, Size? size = null, bool flatBase = false) =>
        Dome(BaseSolid.Icosahedron, Lattice.Class1(frequency), Up.Vertex, cut, size, flatBase);

    public static Dome Dome(BaseSolid solid, Lattice lattice, Up up, string cut, Size? size = null, bool flatBase = false) => new()
    {
        Solid = solid,
        Lattice = lattice,
        Up = up,
        Cut = Cut.TryParse(cut, out var parsed) ? parsed : throw new ArgumentException(cut),
        FlatBase = flatBase,
        Size = size ?? new Size.Radius(Length.FromMillimetres(1000)),
    };

    public static Length Mm(double millimetres) => Length.FromMillimetres(millimetres);
}
