using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Packing;
using static KitWorks.Kits.Tests.ExampleShop;

namespace KitWorks.Kits.Tests.Packing;

public sealed class PackerTests
{
    static readonly Workshop Usual = new();

    [Fact]
    public void Make_WhenTiersHaveTies_SharesTheSparesOverThem()
    {
        var bags = SixMetreKit.Bundles.Where(b => b.Kind == BundleKind.Ties).ToList();

        // 5 % of 330 is 16.5, so 17.
        Assert.Equal((347, 6), (bags.Sum(b => b.Contents.Single().Count), bags.Count));
        foreach (var (bag, tier) in bags.Zip(SixMetreKit.Tiers))
            Assert.InRange(bag.Contents[0].Count - tier.Ties - 17.0 * tier.Ties / 330, -0.999, 0.999);
    }

    [Theory]
    [InlineData(0, 330), InlineData(1, 334), InlineData(10, 363), InlineData(100, 660)]
    public void Make_WhenSparesAreAPercentage_RoundsThemUpOverTheKit(int percent, int ties) =>
        Assert.Equal(ties, Made(SixMetreDome(), With(Usual with { SpareTiesPercent = percent })).Totals.TiesWithSpares);

    [Theory]
    [InlineData(1, 15_000), InlineData(7, 15_000), InlineData(500, 15_000), InlineData(500, 100_000), InlineData(20, 1500), InlineData(20, 100)]
    public void Make_WhenBundlesAreLimited_KeepsToThePiecesAndTheMass(int pieces, int grams)
    {
        var shop = With(Usual with { BundlePieces = pieces, BundleGrams = grams });

        KitChecks.Hold(Made(SixMetreDome(), shop), shop);
    }

    // By hand: S3 of the six-metre dome is 1,228 mm and some, 476 g a metre: 585 g; two go in 1,500 g.
    [Fact]
    public void Make_WhenMassIsTheTighterLimit_PacksInTwos()
    {
        var kit = Made(SixMetreDome(), With(Usual with { BundleGrams = 1500 }));

        foreach (var tier in kit.Tiers)
            Assert.Equal(
                (tier.Struts.Where(s => s.Code == "S3").Sum(s => s.Count) + 1) / 2,
                kit.Bundles.Count(b => b.Tier == tier.Number && b.Contents[0].Code == "S3"));
    }

    [Fact]
    public void Make_WhenOneStrutIsOverTheMass_PacksItAlone() =>
        Assert.All(
            Made(SixMetreDome(), With(Usual with { BundleGrams = 100 })).Bundles.Where(b => b.Kind == BundleKind.Struts),
            b => Assert.Equal(1, b.Contents[0].Count));

    [Fact]
    public void Make_WhenPacked_OpensInTheOrderOfBuilding()
    {
        Assert.Equal(
            [BundleKind.Struts, BundleKind.Hubs, BundleKind.Ties, BundleKind.Stakes],
            SixMetreKit.Bundles.Where(b => b.Tier == 0).Select(b => b.Kind).Distinct());
        Assert.Equal((BundleKind.Cover, 5), (SixMetreKit.Bundles[^1].Kind, SixMetreKit.Bundles[^1].Tier));
    }

    [Fact]
    public void Make_WhenPacked_NamesTheStrutsByCodeAndLength()
    {
        var struts = SixMetreKit.Bundles.First(b => b.Kind == BundleKind.Struts);
        var type = SixMetreKit.StrutTypes.Single(t => t.Code == struts.Contents[0].Code);

        Assert.Equal(new("pipe-3m", type.Code, $"Strut {type.Code}, {type.CutLength}", struts.Contents[0].Count), struts.Contents[0]);
        Assert.Equal(type.CutLength, struts.Length);
        Assert.All(SixMetreKit.Bundles.Where(b => b.Kind != BundleKind.Struts), b => Assert.Equal(Length.Zero, b.Length));
    }
}
