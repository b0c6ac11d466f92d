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

    /// <summary>The six-fold oblong of struts cut to five feet, 15 mm of hub at each end.</summary>
    public static Frame SixFoldOblong(int bays = 0, int lengths = 4) => Frame.Build(
        new Oblong { Fold = 6, Bays = bays, Lengths = lengths, Size = new Size.LongestStrut(Length.FromMillimetres(1524)) }, Length.FromMillimetres(15)).Value;
}
