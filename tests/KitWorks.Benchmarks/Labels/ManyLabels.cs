using KitWorks.Kits.Catalog;
using KitWorks.Labels;

namespace KitWorks.Benchmarks.Labels;

/// <summary>Strut bundles of many orders, no two alike.</summary>
static class ManyLabels
{
    public static IReadOnlyList<BundleLabel> Of(int count) => [.. Enumerable.Range(0, count).Select(Make)];

    public static BundleLabel Make(int i)
    {
        var type = i % 12;
        var tag = Palette.ColourBlindSafe.TagFor(type);
        var code = $"K26-{i / 31:00000}-1-{i % 31:00}-M";
        return new()
        {
            Code = code, PageUrl = $"https://kits.example/b/{code}", Order = $"26-{i / 31:00000}", Bundle = 1 + i % 31, Bundles = 31,
            Tier = i % 7, TierName = $"Ring {i % 7}", What = "Struts", PieceCode = $"S{type + 1}", CutLength = $"{900 + i * 7 % 5000 * 0.1:0.0} mm",
            Tag = new(tag.Colour, tag.Hex, tag.Bands), Contents = [new($"S{type + 1}", "Pipe 33 mm, cut to length", 1 + i % 20)],
            Mass = $"{i % 150 * 0.1:0.0} kg", Shelter = "Dome 3V 5/8, 6 m floor", Shop = "Larkfield Domes",
        };
    }
}
