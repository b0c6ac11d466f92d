using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;

namespace KitWorks.Kits.Tests;

/// <summary>A small catalog with round numbers, and short ways to write designs down.</summary>
static class ExampleShop
{
    /// <summary>Five- and six-way hubs with an allowance of 15 mm, one tie to an end, one stake to a base hub.</summary>
    public const string Ring = "ring";

    /// <summary>As <see cref="Ring"/> with four-way hubs too.</summary>
    public const string Plate = "plate";

    public static Length Mm(double millimetres) => Length.FromMillimetres(millimetres);

    public static ShopCatalog Wares { get; } = new()
    {
        HubSystems =
        [
            new()
            {
                Code = Ring, Name = "Ring hub", Allowance = Mm(15), TiesPerEnd = 1, TieSku = "tie", Stake = new("stake", "Stake", 1, 400),
                Hubs = [new("ring-6", "Ring hub, six ways", 6, 96), new("ring-5", "Ring hub, five ways", 5, 88)],
            },
            new()
            {
                Code = Plate, Name = "Plate hub", Allowance = Mm(40), TiesPerEnd = 2, TieSku = "tie", Stake = new("bolt", "Ground bolt", 2, 700),
                Hubs = [new("plate-4", "Plate hub, four ways", 4, 230), new("plate-5", "Plate hub, five ways", 5, 250), new("plate-6", "Plate hub, six ways", 6, 260)],
            },
        ],
        StrutStocks =
        [
            new() { Code = "pipe", Sku = "pipe-3m", Name = "Pipe 33, 3,048 mm", StockLength = Mm(3048), OutsideDiameter = Mm(33.4), Wall = Mm(3.4), GramsPerMetre = 476 },
            new() { Code = "long", Sku = "pipe-20m", Name = "Pipe 60, 20 m", StockLength = Mm(20_000), OutsideDiameter = Mm(60), Wall = Mm(4), GramsPerMetre = 1000 },
        ],
        Ties = [new("tie", "Tie", 534, 6)],
        Covers =
        [
            new() { Code = "film", Sku = "film-sku", Name = "Film", SeamAllowance = Mm(40), GramsPerM2 = 185 },
            new() { Code = "bare", Sku = "bare-sku", Name = "Sheet without seams", SeamAllowance = Length.Zero, GramsPerM2 = 100 },
        ],
        Palette = Palette.ColourBlindSafe,
        Prices = new()
        {
            Currency = "EUR",
            UnitCosts = new Dictionary<string, decimal>
            {
                ["ring-5"] = 2.90m, ["ring-6"] = 3.10m, ["pipe-3m"] = 5.60m, ["tie"] = 0.115m, ["stake"] = 1.65m, ["film-sku"] = 1.35m,
            }.ToImmutableDictionary(),
            PerCut = 0.35m,
            PerBundle = 1.20m,
            MarkupPercent = 38,
        },
        Workshop = new(),
    };

    /// <summary>The kit most tests look at: 3V, 5/8, 6 m over the floor, one layer of film.</summary>
    public static Kit SixMetreKit { get; } = Made(SixMetreDome());

    public static Design SixMetreDome() => Dome(3, "5/8", new Size.FloorDiameter(Mm(6000))) with { Cover = new(1) };

    public static Design Dome(int frequency, string cut, Size size) =>
        Of(new Dome { Lattice = Lattice.Class1(frequency), Cut = CutOf(cut), Size = size });

    public static Design Of(Shelter shelter) => new() { Shelter = shelter, HubSystem = Ring, StrutStock = "pipe" };

    public static Cut CutOf(string text) => Cut.TryParse(text, out var cut) ? cut : throw new ArgumentException(text);

    public static Kit Made(Design design, ShopCatalog? catalog = null) => Kit.Make(design, catalog ?? Wares).Value;

    public static Refusal Refused(Design design, ShopCatalog? catalog = null) =>
        Kit.Make(design, catalog ?? Wares).Refusal ?? throw new ArgumentException($"{design} can be made.");

    public static ShopCatalog With(Workshop workshop) => Wares with { Workshop = workshop };

    public static ShopCatalog WithHubs(params ReadOnlySpan<int> ways)
    {
        var hubs = ImmutableArray.CreateBuilder<Hub>();
        foreach (var way in ways) hubs.Add(new($"hub-{way}", $"Hub, {way} ways", way, 100));
        return Wares with { HubSystems = [Wares.HubSystems[0] with { Hubs = hubs.ToImmutable() }] };
    }
}
