namespace KitWorks.Labels;

/// <summary>Made-up papers, page by page.</summary>
static class SamplePapers
{
    const string Picture = """<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm" viewBox="0 0 10 10"><rect width="10" height="10"/></svg>""";

    static readonly TagMark Tag = new("reddish purple", "#CC79A7", 1);

    public static IReadOnlyList<object> Of(string kind) => kind switch
    {
        "picklist" or "picklist-notes" => [Picklist],
        "cut-stops" or "cut-patterns" or "cut-goes" => [CutSheet],
        "packing-list" or "packing-parcels" => [PackingList, PackingList with { Parcels = [] }],
        "guide-cover" or "guide-parts" or "guide-notes" => [Cover],
        "guide-stakes" or "guide-pegs" => [new GuideStakes("3V dome", "26-00418", "Larkfield Domes")
        {
            Picture = Picture, Count = 15, Second = 6, HasHeights = true, Pegs = [new(1, "–", "5 706", "3 000", "1 231", "18")],
        }],
        "guide-openings" => [new GuideOpenings("3V dome", "26-00418", "Larkfield Domes") { Openings = [new("Door between stakes 3 and 4", "Left out: one base hub, 4 struts and 3 panels.", "In tier 1 stand the posts.")] }],
        "guide-foundation" or "guide-tier" or "guide-picture" => [Tier, Tier with { Number = 5, IsTop = true, HubCount = 1, TiesPerEnd = 2 }],
        "guide-end" or "guide-care" => [End, End with { IsLong = false, HasCover = false, Stakes = 0 }],
        _ => [],
    };

    static Picklist Picklist { get; } = new()
    {
        Order = "26-00418", Code = "PICK-26-00418", Shelter = "3V dome", Customer = "A. Customer", Warnings = ["Too much for the tie."],
        Lines = [new("A-03-2", "HUB-6", "Six-way hub", 15, "pieces", 0, TagMark.None), new("", "S3", "Strut", 80, "pieces", 1, Tag)],
    };

    static CutSheet CutSheet { get; } = new()
    {
        Order = "26-00418", Shelter = "3V dome", Kerf = "3.0 mm", Fetch = "83 × PIPE-33", Stops = [new("S3", Tag, "1216.5 mm", 80, 12)],
        Rows = [new(1, 2, 2, 0, "3048.0 mm PIPE-33", "2 × S3", "612.0 mm", Picture)],
        Goes = [new("26-00418", 7, 20, "L3", "1216.5 mm", "S3", Tag)],
    };

    static PackingList PackingList { get; } = new()
    {
        Order = "26-00418", To = "A. Customer\n1 Long Lane", From = "Larkfield Domes\n2 Mill Yard", Shelter = "3V dome", Mass = "140.2 kg",
        Bundles = [new(1, "K26-00418-1-01-X", 0, "20 × S3", Tag, "11.6 kg", 1), new(2, "K26-00418-1-02-X", 0, "20 hubs", TagMark.None, "2.4 kg", 0, "2")],
        Parcels = [new(1, "106141412345678908", "1300 × 250 × 250 mm", "24.1 kg", "Standard parcel", "1, 2")],
    };

    static GuideCover Cover { get; } = new("3V dome", "26-00418", "Larkfield Domes")
    {
        Picture = Picture, Length = "6.00 m", Width = "6.00 m", Height = "3.46 m", FloorArea = "27.6 m²", Mass = "140.2 kg", Tiers = 6, TopTier = 5, Bundles = 31,
        Struts = [new("S3", Tag, "1216.5 mm", 80)], Hubs = [new("HUB-6", 6, 4, 15, "")], HubCount = 61, StrutCount = 165, Ties = 330, SpareTies = 17,
        StakeCount = 15, HasCover = true, Warnings = ["The base is not level by design."],
    };

    static GuideTier Tier { get; } = new("3V dome", "26-00418", "Larkfield Domes")
    {
        Number = 0, Name = "Foundation", IsTop = false, Bundles = "1 to 4", Struts = [new("S3", Tag, "1216.5 mm", 80)], Hubs = [new("HUB-6", 6, 4, 15, "1 to 15")],
        StrutCount = 15, HubCount = 15, Ties = 30, TiesPerEnd = 1, Stakes = 15, Ring = "1–2 S3, 2–1 S3", BaseSpread = "49.0 mm", Picture = Picture,
    };

    static GuideEnd End { get; } = new("3V dome", "26-00418", "Larkfield Domes")
    {
        Stakes = 15, BaseHubs = 15, StakesWhere = "one through each of the 15 base hubs", IsLong = true, HasCover = true, Panels = 105, Checks = [new("Height", "3461.0 mm")],
    };
}
