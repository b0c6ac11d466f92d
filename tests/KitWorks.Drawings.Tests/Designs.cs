using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;

namespace KitWorks.Drawings.Tests;

/// <summary>Frames and strut types to draw.</summary>
static class Designs
{
    public static Frame Dome(int frequency, string cut, bool flatBase = false, BaseSolid solid = BaseSolid.Icosahedron)
    {
        Assert.True(Cut.TryParse(cut, out var parsed));
        var dome = new Dome
        {
            Solid = solid,
            Lattice = Lattice.Class1(frequency),
            Cut = parsed,
            FlatBase = flatBase,
            Size = new Size.FloorDiameter(Length.FromMillimetres(6000)),
        };
        return Frame.Build(dome).Value;
    }

    public static Frame Oblong(int fold, int frequency, int bays) =>
        Frame.Build(new Oblong { Fold = fold, Frequency = frequency, Bays = bays, Size = new Size.LongSide(Length.FromMillimetres(6200)) }).Value;

    /// <summary>The designs that tests name, from the smallest to the largest.</summary>
    public static Frame Named(string name) => name switch
    {
        "1V" => Dome(1, "rows:2"),
        "2V 1/2" => Dome(2, "1/2"),
        "3V 3/8" => Dome(3, "3/8"),
        "3V 5/8" => Dome(3, "5/8"),
        "octahedron 4V 1/2" => Dome(4, "1/2", solid: BaseSolid.Octahedron),
        "8V 1/2" => Dome(8, "1/2"),
        "16V 1/2" => Dome(16, "1/2"),
        "oblong 6-1-0" => Oblong(6, 1, 0),
        "oblong 8-2-1" => Oblong(8, 2, 1),
        _ => throw new ArgumentException(name),
    };

    /// <summary>One strut type a cut length at a half-millimetre saw and 15 mm of allowance, as a kit would have.</summary>
    public static StrutType[] TypesOf(Frame frame) =>
    [
        .. frame.Families
            .GroupBy(f => Length.FromMillimetres(f.SpacingMm - 30).RoundTo(Length.FromTenths(5)))
            .OrderBy(g => g.Key)
            .Select((g, i) => new StrutType(
                $"S{i + 1}", Palette.ColourBlindSafe.TagFor(i), g.Average(f => f.SpacingMm), g.Key, g.First().ChordFactor, g.Sum(f => f.Count), [.. g.Select(f => f.Index)])),
    ];
}
