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

    public static BundleLabel Stakes { get; } = Bundle with
    {
        Tier = 0, TierName = "Foundation", What = "Stakes", PieceCode = "", CutLength = "", Tag = TagMark.None, Mass = "9.0 kg",
        Contents = [new("STAKE-60", "Steel stake, 60 cm", 15)],
    };

    public static HubBagLabel Hubs { get; } = new()
    {
        Code = "K26-00418-1-02-7", PageUrl = "https://kits.example/b/K26-00418-1-02-7", Order = "26-00418", Kit = 1, Kits = 2, Bundle = 2, Bundles = 31,
        Tier = 0, TierName = "Foundation", Mass = "2.4 kg", Shelter = Bundle.Shelter, Shop = Bundle.Shop,
        Contents = [new("HUB-R100-5", "Ring hub, five ways", 5), new("HUB-R100-6", "Ring hub, six ways", 15)],
    };

    public static TieBagLabel Ties { get; } = new()
    {
        Code = "K26-00418-1-03-X", PageUrl = "https://kits.example/b/K26-00418-1-03-X", Order = "26-00418", Kit = 1, Kits = 2, Bundle = 3, Bundles = 31,
        Tier = 0, TierName = "Foundation", Mass = "0.3 kg", Shelter = Bundle.Shelter, Shop = Bundle.Shop, TiesPerEnd = 1, Spares = 2,
        Contents = [new("TIE-280", "Releasable tie, 280 mm", 32)],
    };

    public static ParcelLabel Parcel { get; } = new()
    {
        Sscc = Sscc.Parse("106141412345678908").Value, To = "Robin Maker\n14 Orchard Row\nUpper Fielding\nAB1 2CD\nExampleland",
        From = "Larkfield Domes\n2 Mill Yard\nLarkfield", Order = "26-00418", Reference = "Garden pavilion", Parcel = 2, Parcels = 5, Mass = "24.1 kg",
        Measures = "1300 × 250 × 250 mm", Carrier = "By road", Shop = Bundle.Shop, Bundles = ["K26-00418-1-07-M", "K26-00418-1-02-7"],
    };

    public static BinLabel Bin { get; } = new() { Bin = "A-03-2", Code = "BIN-A-03-2", Sku = "HUB-R100-6", Description = "Ring hub, six ways", Unit = "piece" };

    public static RemnantLabel Remnant { get; } = new() { Code = "R-000123-4", Length = "812 mm", Sku = "PIPE-33-3048", Description = "PVC pipe 33 mm", Bin = "R-01" };

    public static IReadOnlyList<BundleLabel> Many(int count) =>
        [.. Enumerable.Range(1, count).Select(i => Bundle with { Code = $"K26-{i:00000}-1-07-M", Bundle = i, Bundles = count })];
}
