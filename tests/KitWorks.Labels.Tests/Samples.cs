namespace KitWorks.Labels.Tests;

/// <summary>The press and the labels of an invented shop.</summary>
static class Samples
{
    static readonly Lazy<LabelPress> Opened = new(() => LabelPress.Open().Value);

    public static LabelPress Press => Opened.Value;

    public static BundleLabel Bundle { get; } = new()
    {
        Code = "K26-00418-1-07-M", PageUrl = "https://kits.example/b/K26-00418-1-07-M", Order = "26-00418", Kit = 1, Kits = 2, Bundle = 7, Bundles = 31,
        Tier = 2, TierName = "Second ring", What = "Struts", PieceCode = "S3", CutLength = "1216.5 mm", Tag = new("reddish purple", "#CC79A7", 1),
        Contents = [new("S3", "Pipe 33 mm, cut to length", 20)], Mass = "11.6 kg", Shelter = "Dome 3V 5/8, 6 m floor", Shop = "Larkfield Domes",
    };

    public static BundleLabel Hubs { get; } = Bundle with
    {
        Code = "K26-00418-1-02-7", PageUrl = "https://kits.example/b/K26-00418-1-02-7", Bundle = 2, Tier = 0, TierName = "Foundation",
        What = "Hubs", PieceCode = "", CutLength = "", Tag = TagMark.None, Mass = "2.4 kg",
        Contents = [new("HUB-R100-5", "Ring hub, five ways", 5), new("HUB-R100-6", "Ring hub, six ways", 15)],
    };

    public static IReadOnlyList<BundleLabel> Many(int count) =>
        [.. Enumerable.Range(1, count).Select(i => Bundle with { Code = $"K26-{i:00000}-1-07-M", Bundle = i, Bundles = count })];
}
