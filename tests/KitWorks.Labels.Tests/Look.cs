using KitWorks.Labels.Tests.Papers;

namespace KitWorks.Labels.Tests;

/// <summary>Writes every kind to a folder for a person to look at: set KITWORKS_LOOK to the folder.</summary>
public class Look
{
    [Fact]
    public void AtEverything()
    {
        if (Environment.GetEnvironmentVariable("KITWORKS_LOOK") is not { Length: > 0 } folder) return;
        Directory.CreateDirectory(folder);
        void Keep(string name, byte[] pdf) => File.WriteAllBytes(Path.Combine(folder, name + ".pdf"), pdf);
        Label[] packs = [Samples.Bundle, Samples.Stakes, Samples.Hubs, Samples.Ties];
        foreach (var stock in LabelStock.BuiltIn.Take(4)) Keep($"packs-{stock.Name}", Samples.Press.Pdf(packs, stock).Value);
        foreach (var stock in LabelStock.BuiltIn.Skip(4)) Keep($"shelf-{stock.Name}", Samples.Press.Pdf([.. packs, Samples.Bin, Samples.Remnant], stock).Value);
        Keep("picklist", Samples.Press.Pdf(ShopPapers.Picklist(30)).Value);
        Keep("packing-list", Samples.Press.Pdf(ShopPapers.PackingList(31)).Value);
        Keep("batch-sheet", Samples.Press.Pdf(ShopPapers.BatchSheet(MadeKit.Dome(3, "5/8"), MadeKit.Dome(2, "1/2"))).Value);
        Keep("cut-sheet", Samples.Press.Pdf(ShopPapers.CutSheet(MadeKit.Dome(3, "5/8"))).Value);
        Keep("guide-dome", Samples.Press.Pdf(ShopPapers.Guide(MadeKit.Dome(3, "5/8"), "3V dome, 5/8, 6 m floor")).Value);
        Keep("guide-openings", Samples.Press.Pdf(ShopPapers.Guide(MadeKit.Dome(3, "5/8", new Geometry.Door(), new Geometry.Door { Stake = 7, Top = Geometry.DoorTop.Peaked }, new Geometry.Vent()), "3V dome, 5/8, 6 m floor")).Value);
        Keep("guide-oblong", Samples.Press.Pdf(ShopPapers.Guide(MadeKit.Oblong(1), "Oblong, 6-fold, one bay"), PaperSize.Letter).Value);
        Keep("parcel", Samples.Press.Pdf([Samples.Parcel], LabelStock.Page100x150).Value);
        Keep("hard", Samples.Press.Pdf(
        [
            Samples.Bundle with { Tag = new("yellow", "#F0E442", 4), PieceCode = "S28", Contents = [new("S28", "PVC pipe, 33 mm outside, grey, cut and tagged", 120)], Tier = 12, TierName = "Twelfth ring, below the crown" },
            Samples.Bundle with { Tag = new("black", "#000000", 2), TierName = "حلقة ثانية", Shelter = "قبة 6 m للحديقة", Shop = "חנות כיפות 24" },
            Samples.Bundle with { Tag = new("blue", "#0072B2", 1), TierName = "Δεύτερος δακτύλιος", Shelter = "Купол 3V 5/8, 6 м", Shop = "Kopuły z Łodzi" },
        ], LabelStock.Page100x150).Value);
        File.WriteAllBytes(Path.Combine(folder, "bundle.png"), Samples.Press.Png(Samples.Bundle, 203).Value);
        File.WriteAllText(Path.Combine(folder, "bundle.svg"), Samples.Press.Svg(Samples.Bundle).Value);
    }
}
