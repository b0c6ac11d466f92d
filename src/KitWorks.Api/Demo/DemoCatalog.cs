using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;

namespace KitWorks.Api.Demo;

/// <summary>
/// The catalog and the stock of an invented shop. Pipe sections and masses: ASTM D1785, schedule 40 (a reprint of its
/// table; pounds per foot turned into grams per metre). Tie strengths: the trade's classes, 120 lbf = 534 N and
/// 350 lbf = 1,557 N, from memory. PVC: modulus 2,900 MPa as is typical of ASTM D1784 cell 12454 (at least 2,760 by a reprint
/// of it), strength 48.3 MPa (7,000 psi, from memory), 50-year modulus 965 MPa (140,000 psi, AASHTO LRFD 12.12.3.3, from
/// memory). Everything else is made up.
/// </summary>
static class DemoCatalog
{
    public const string ShopName = "Larkfield Shelter Works";

    static Length Mm(double millimetres) => Length.FromMillimetres(millimetres);

    static readonly Length TenFeet = Mm(3048);

    static StrutStock Pvc(StrutStock pipe) => pipe with { ModulusMPa = 2900, LongTermModulusMPa = 965, StrengthMPa = 48.3 };

    public static PutCatalog Sections { get; } = new()
    {
        HubSystems =
        [
            new()
            {
                Code = "ring-100",
                Name = "Ring hub 100",
                Allowance = Mm(15),
                TiesPerEnd = 1,
                TieSku = "tie-n120",
                Stake = new("stake-450", "Ground stake, 450 mm", 1, 410),
                Hubs = [new("hub-r100-5", "Ring hub 100, five ways", 5, 88), new("hub-r100-6", "Ring hub 100, six ways", 6, 96)],
            },
            new()
            {
                Code = "plate-160",
                Name = "Plate hub 160",
                Allowance = Mm(42),
                TiesPerEnd = 2,
                TieSku = "tie-s350",
                Stake = new("stake-700", "Ground stake, 700 mm", 2, 690),
                Hubs =
                [
                    new("hub-p160-4", "Plate hub 160, four ways", 4, 232), new("hub-p160-5", "Plate hub 160, five ways", 5, 248),
                    new("hub-p160-6", "Plate hub 160, six ways", 6, 264),
                ],
            },
        ],
        StrutStocks =
        [
            Pvc(new() { Code = "pvc-27", Sku = "pipe-pvc-27", Name = "PVC pipe 3/4 in, schedule 40, 10 ft", StockLength = TenFeet, OutsideDiameter = Mm(26.7), Wall = Mm(2.9), GramsPerMetre = 313 }),
            Pvc(new() { Code = "pvc-33", Sku = "pipe-pvc-33", Name = "PVC pipe 1 in, schedule 40, 10 ft", StockLength = TenFeet, OutsideDiameter = Mm(33.4), Wall = Mm(3.4), GramsPerMetre = 476 }),
            Pvc(new() { Code = "pvc-42", Sku = "pipe-pvc-42", Name = "PVC pipe 1 1/4 in, schedule 40, 10 ft", StockLength = TenFeet, OutsideDiameter = Mm(42.2), Wall = Mm(3.6), GramsPerMetre = 640 }),
        ],
        Ties = [new("tie-n120", "Nylon tie, 120 lb, UV-resistant", 534, 6), new("tie-s350", "Stainless tie, 350 lb", 1557, 14)],
        Covers =
        [
            new() { Code = "film-200", Sku = "cover-film-200", Name = "Greenhouse film, 0.2 mm", SeamAllowance = Mm(40), GramsPerM2 = 185 },
            new() { Code = "shade-60", Sku = "cover-shade-60", Name = "Shade cloth, 60 %", SeamAllowance = Mm(30), GramsPerM2 = 95 },
        ],
        Palette = Palette.ColourBlindSafe,
        Prices = new()
        {
            Currency = "USD",
            UnitCosts = new Dictionary<string, decimal>
            {
                ["hub-r100-5"] = 2.90m, ["hub-r100-6"] = 3.10m, ["hub-p160-4"] = 6.80m, ["hub-p160-5"] = 7.20m, ["hub-p160-6"] = 7.60m,
                ["pipe-pvc-27"] = 3.95m, ["pipe-pvc-33"] = 5.60m, ["pipe-pvc-42"] = 7.85m,
                ["tie-n120"] = 0.11m, ["tie-s350"] = 0.74m, ["stake-450"] = 1.65m, ["stake-700"] = 2.80m,
                ["cover-film-200"] = 1.35m, ["cover-shade-60"] = 1.80m,
            }.ToImmutableDictionary(),
            WastePercent = new Dictionary<string, decimal> { ["cover-film-200"] = 4, ["cover-shade-60"] = 4 }.ToImmutableDictionary(),
            PerCut = 0.25m,
            PerTag = 0.10m,
            PerSawSetting = 1.50m,
            PerBundle = 1.20m,
            PerKit = 6,
            PerParcel = 1.80m,
            OverheadPercent = 12,
            MarkupPercent = 24,
            QuantityBreaks = [new(5, 3), new(10, 6), new(25, 9)],
            Shipping = [new(5_000, 9.40m), new(15_000, 14.90m), new(31_500, 22.60m), new(31_500, 48, "long")],
        },
        Workshop = new(),
        // Limits, rates, holidays and suppliers are made up; the prefix is the one of the GS1 specifications' examples.
        Parcels = new()
        {
            Kinds =
            [
                new() { Code = "standard", Name = "Standard parcel", MaxLength = Mm(1750), MaxLengthAndGirth = Mm(3000), MaxGrams = 31_500, TareGrams = 700 },
                new() { Code = "long", Name = "Long parcel", MaxLength = Mm(3200), MaxLengthAndGirth = Mm(4200), MaxGrams = 31_500, TareGrams = 1100 },
            ],
            Gs1CompanyPrefix = "0614141",
        },
        Calendar = new()
        {
            Closed = [new(new(2026, 12, 24), new(2027, 1, 1), "Between the years"), new(new(2027, 7, 5), new(2027, 7, 16), "Summer closing")],
            CutsPerDay = 900,
            BundlesPerDay = 160,
        },
        Supplies =
        [
            new() { Sku = "hub-r100-5", Supplier = "Mould shop", PackSize = 20, LeadDays = 15 }, new() { Sku = "hub-r100-6", Supplier = "Mould shop", PackSize = 40, LeadDays = 15 },
            new() { Sku = "pipe-pvc-27", Supplier = "Pipe merchant", PackSize = 10, LeadDays = 4 }, new() { Sku = "pipe-pvc-33", Supplier = "Pipe merchant", PackSize = 10, LeadDays = 4 },
            new() { Sku = "pipe-pvc-42", Supplier = "Pipe merchant", PackSize = 5, LeadDays = 4 },
            new() { Sku = "tie-n120", Supplier = "Fastener trade", PackSize = 500, LeadDays = 6 }, new() { Sku = "tie-s350", Supplier = "Fastener trade", PackSize = 100, LeadDays = 6 },
            new() { Sku = "stake-450", Supplier = "Smithy", PackSize = 25 }, new() { Sku = "stake-700", Supplier = "Smithy", PackSize = 25 },
        ],
        // 100 lb hung from one hub is common practice, no source. Snow and wind of the second set are made up: a shop reads its own from the local code.
        Screening = new()
        {
            LoadSets =
            [
                new() { Name = "garden", PersonN = 445 },
                new() { Name = "open field", PersonN = 1000, Snow = new() { GroundPa = 500 }, Wind = new() { SpeedMPerS = 30 } },
            ],
        },
    };

    /// <summary>Bins, and when to reorder.</summary>
    public static KeepStockItems Shelves { get; } = new(
    [
        Item("hub-r100-5", "hub", "Ring hub 100, five ways", "piece", "B-01", 40), Item("hub-r100-6", "hub", "Ring hub 100, six ways", "piece", "B-02", 120),
        Item("hub-p160-4", "hub", "Plate hub 160, four ways", "piece", "B-04", 20), Item("hub-p160-5", "hub", "Plate hub 160, five ways", "piece", "B-05", 20),
        Item("hub-p160-6", "hub", "Plate hub 160, six ways", "piece", "B-06", 60),
        Item("pipe-pvc-27", "strutStock", "PVC pipe 3/4 in, schedule 40, 10 ft", "length", "R-1", 60), Item("pipe-pvc-33", "strutStock", "PVC pipe 1 in, schedule 40, 10 ft", "length", "R-2", 120),
        Item("pipe-pvc-42", "strutStock", "PVC pipe 1 1/4 in, schedule 40, 10 ft", "length", "R-3", 60),
        Item("tie-n120", "tie", "Nylon tie, 120 lb, UV-resistant", "piece", "C-01", 800), Item("tie-s350", "tie", "Stainless tie, 350 lb", "piece", "C-02", 400),
        Item("stake-450", "stake", "Ground stake, 450 mm", "piece", "D-01", 60), Item("stake-700", "stake", "Ground stake, 700 mm", "piece", "D-02", 40),
        Item("cover-film-200", "cover", "Greenhouse film, 0.2 mm", "m²", "F-1", 150), Item("cover-shade-60", "cover", "Shade cloth, 60 %", "m²", "F-2", 150),
    ]);

    /// <summary>What the shop starts with: enough for several kits.</summary>
    public static ReceiveStock Opening { get; } = new(
    [
        new("hub-r100-5", 90), new("hub-r100-6", 420), new("hub-p160-4", 60), new("hub-p160-5", 40), new("hub-p160-6", 160),
        new("pipe-pvc-27", 160), new("pipe-pvc-33", 520), new("pipe-pvc-42", 160), new("tie-n120", 4000), new("tie-s350", 1200),
        new("stake-450", 160), new("stake-700", 120), new("cover-film-200", 600), new("cover-shade-60", 400),
    ], "opening count");

    static StockItemWords Item(string sku, string kind, string name, string unit, string bin, int reorderAt) => new(sku, kind, name, unit, bin, reorderAt);
}
