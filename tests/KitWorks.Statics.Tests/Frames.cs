using KitWorks.Geometry;

namespace KitWorks.Statics.Tests;

static class Frames
{
    public static Frame Dome(int frequency, string cut, bool flatBase = false) => Frame.Build(new Dome
    {
        Lattice = Lattice.Class1(frequency),
        Cut = Cut.TryParse(cut, out var parsed) ? parsed : throw new ArgumentException(cut, nameof(cut)),
        FlatBase = flatBase,
        Size = new Size.FloorDiameter(Length.FromMillimetres(6000)),
    }).Value;
}
