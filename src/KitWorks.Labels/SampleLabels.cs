namespace KitWorks.Labels;

/// <summary>Made-up labels, one or more of each kind, that every template is tried on when it is opened.</summary>
static class SampleLabels
{
    public static IReadOnlyList<Label> Of(string kind) => kind switch
    {
        "bundle" => [Struts, Hubs],
        _ => [],
    };

    static BundleLabel Struts { get; } = new()
    {
        Code = "K26-00418-1-07-M", PageUrl = "https://kits.example/b/K26-00418-1-07-M", Order = "26-00418", Kit = 1, Kits = 2, Bundle = 7, Bundles = 31,
        Tier = 2, TierName = "Second ring", What = "Struts", PieceCode = "S3", CutLength = "1216.5 mm", Tag = new("reddish purple", "#CC79A7", 1),
        Contents = [new("S3", "Pipe 33 mm, cut", 20)], Mass = "11.6 kg", Shelter = "Dome 3V 5/8, 6 m", Shop = "Larkfield Domes",
    };

    static BundleLabel Hubs { get; } = Struts with
    {
        What = "Hubs", PieceCode = "", CutLength = "", Tag = TagMark.None,
        Contents = [new("HUB-5", "Five-way hub", 5), new("HUB-6", "Six-way hub", 15)],
    };
}
