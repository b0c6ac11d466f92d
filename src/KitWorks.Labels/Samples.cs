namespace KitWorks.Labels;

/// <summary>Made-up labels and papers, one or more of each kind, that every template is tried on when it is opened.</summary>
static class Samples
{
    const string Shop = "Larkfield Domes";
    const string Code = "K26-00418-1-07-M";
    const string Page = "https://kits.example/b/K26-00418-1-07-M";

    public static IReadOnlyList<object> Of(string kind) => kind switch
    {
        "bundle" => [Struts, Struts with { What = "Stakes", PieceCode = "", CutLength = "", Tag = TagMark.None }],
        "hubs" => [Hubs],
        "ties" => [Ties],
        "parcel" => [Parcel],
        "bin" => [Bin, Bin with { Sku = "", Description = "", Unit = "" }],
        "remnant" => [Remnant],
        _ => SamplePapers.Of(kind),
    };

    static BundleLabel Struts { get; } = new()
    {
        Code = Code, PageUrl = Page, Order = "26-00418", Kit = 1, Kits = 2, Bundle = 7, Bundles = 31, Tier = 2, TierName = "Second ring",
        What = "Struts", PieceCode = "S3", CutLength = "1216.5 mm", Tag = new("reddish purple", "#CC79A7", 1),
        Contents = [new("S3", "Pipe 33 mm, cut", 20)], Mass = "11.6 kg", Shelter = "3V dome, 5/8", Shop = Shop,
    };

    static HubBagLabel Hubs { get; } = new()
    {
        Code = Code, PageUrl = Page, Order = "26-00418", Bundle = 2, Bundles = 31, Tier = 0, TierName = "Foundation",
        Contents = [new("HUB-5", "Five-way hub", 5), new("HUB-6", "Six-way hub", 15)], Mass = "2.4 kg", Shelter = "3V dome, 5/8", Shop = Shop,
    };

    static TieBagLabel Ties { get; } = new()
    {
        Code = Code, PageUrl = Page, Order = "26-00418", Bundle = 3, Bundles = 31, Tier = 0, TierName = "Foundation", TiesPerEnd = 1, Spares = 2,
        Contents = [new("TIE-8", "Tie, 8 mm", 32)], Mass = "0.2 kg", Shelter = "3V dome, 5/8", Shop = Shop,
    };

    static ParcelLabel Parcel { get; } = new()
    {
        Sscc = Sscc.Parse("106141412345678908").Value, To = "A. Customer\n1 Long Lane\nSmalltown", From = "Larkfield Domes\n2 Mill Yard", Order = "26-00418",
        Reference = "PO 7", Parcel = 1, Parcels = 3, Mass = "24.1 kg", Measures = "1300 × 250 × 250 mm", Carrier = "Carrier", Bundles = [Code], Shop = Shop,
    };

    static BinLabel Bin { get; } = new() { Bin = "A-03-2", Code = "BIN-A-03-2", Sku = "HUB-6", Description = "Six-way hub", Unit = "piece", Shop = Shop };

    static RemnantLabel Remnant { get; } = new()
    {
        Code = "R-000123-4", Length = "812 mm", Sku = "PVC-33", Description = "Pipe 33 mm", Bin = "R-01", Shop = Shop,
    };
}
