using KitWorks.Kits;
using KitWorks.Kits.Batches;

namespace KitWorks.Labels.Tests.Papers;

static class ShopPapers
{
    public static Picklist Picklist(int lines) => new()
    {
        Order = "26-00418", Code = "PICK-26-00418", Shelter = "3V dome, 5/8, 6 m floor", Customer = "Robin Maker", Shop = "Larkfield Domes",
        Lines = [.. Enumerable.Range(0, lines).Select(i => new PickLine(
            $"{(char)('A' + i % 3)}-{i % 11 + 1}-{i % 4}", i % 2 == 0 ? $"HUB-R100-{i}" : "PIPE-33-3048", i % 2 == 0 ? "Ring hub, six ways" : "PVC pipe 33 mm, 3048 mm",
            1 + i * 37 % 1500, "pieces", i % 6, i % 2 == 0 ? TagMark.None : Samples.Bundle.Tag))],
    };

    public static PackingList PackingList(int bundles) => new()
    {
        Order = "26-00418", To = Samples.Parcel.To, From = Samples.Parcel.From, Reference = "Garden pavilion", Shelter = "3V dome, 5/8, 6 m floor", Mass = "140.2 kg", Shop = "Larkfield Domes",
        Bundles = [.. Enumerable.Range(1, bundles).Select(i => new PackedBundle(i, $"K26-00418-1-{i:00}-M", i % 6, i % 3 == 0 ? "15 × Ring hub, six ways" : "20 × S3, 1216.5 mm", i % 3 == 0 ? TagMark.None : Samples.Bundle.Tag, "11.6 kg", 1 + i / 8))],
        Parcels = [new(1, "106141412345678908", "1300 × 250 × 250 mm", "24.1 kg", "Standard parcel", "1 (20 × S3, 1216.5 mm), 2 (20 × S3, 1216.5 mm), 3 (15 × Ring hub, six ways)")],
    };

    public static CutSheet CutSheet(Kit kit) => KitWorks.Labels.CutSheet.For(kit.CutPlan, kit.StrutTypes, "26-00418", "3V dome, 5/8, 6 m floor", "3.0 mm", shop: "Larkfield Domes");

    public static BatchPlan Batch(Kit kit, Kit other) => BatchPlanner.Plan(
        [new(1001, 1, kit), new(1002, 2, other)], [new("PIPE-33-3048", kit.StrutTypes[0].CutLength, 7)],
        [new("R17X", kit.CutPlan.StockLengths[0].Sku, kit.StrutTypes[^1].CutLength), new("R18V", kit.CutPlan.StockLengths[0].Sku, kit.StrutTypes[^1].CutLength)], new()).Value;

    public static CutSheet BatchSheet(Kit kit, Kit other) => KitWorks.Labels.BatchSheet.For(Batch(kit, other), "7", "orders 1001, 1002", "3.0 mm", shop: "Larkfield Domes");

    public static BuildGuide Guide(Kit kit, string shelter) => BuildGuide.Of(kit, "26-00418", shelter, "Larkfield Domes").Value;
}
