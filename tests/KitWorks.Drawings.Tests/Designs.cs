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
