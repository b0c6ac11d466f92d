using CsCheck;
using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Parcels;
using static KitWorks.Kits.Tests.ExampleShop;

namespace KitWorks.Kits.Tests;

public sealed class PriceTests
{
    static readonly PriceBook Book = Wares.Prices;

    [Fact]
    public void Of_WhenOneKit_ExplainsEveryPartAndTheWork()
    {
        var price = Price.Of(SixMetreKit, 1, Book).Value;

        Assert.Equal(SixMetreKit.Parts.Select(p => (p.Description, p.Quantity)), price.Lines[..^3].Select(l => (l.Description, l.Quantity)));
        Assert.Equal((165, 57.75m), (price.Lines[^3].Quantity, price.Lines[^3].Amount.Amount));
        Assert.Equal((SixMetreKit.Bundles.Length, SixMetreKit.Bundles.Length * 1.20m), (price.Lines[^2].Quantity, price.Lines[^2].Amount.Amount));
        // 347 ties at 0.115 are 39.905, half a cent away from zero: 39.91.
        Assert.Equal(39.91m, price.Lines.Single(l => l.Description == "Tie").Amount.Amount);
        Assert.Equal(Math.Round(price.Lines[..^1].Sum(l => l.Amount.Amount) * 0.38m, 2, MidpointRounding.AwayFromZero), price.Lines[^1].Amount.Amount);
        AddsUp(price);
    }

    [Fact]
    public void Of_WhenAnyBookAndQuantity_AddsUpToTheCent() =>
        Gen.Select(Gen.Int[1, 500], Gen.Int[0, 1_000_000], Gen.Int[0, 100_000], Gen.Int[0, 3000]).Sample((quantity, each, cut, markup) =>
            AddsUp(Price.Of(SixMetreKit, quantity, Book with
            {
                UnitCosts = Book.UnitCosts.SetItem("tie", each / 10_000m).SetItem("ring-6", each / 100m),
                PerCut = cut / 1000m,
                MarkupPercent = markup / 10m,
                OverheadPercent = markup / 30m,
                WastePercent = Book.UnitCosts.SetItem("film-sku", cut / 1000m),
                QuantityBreaks = [new(10, 2.5m), new(100, each / 100_000m)],
            }).Value));

    static void AddsUp(Price price)
    {
        Assert.Equal(price.Lines.Sum(l => l.Amount.Amount), price.Total.Amount);
        Assert.All(price.Lines, l => Assert.Equal(Math.Round(l.Quantity * l.Each.Amount, 2, MidpointRounding.AwayFromZero), l.Amount.Amount));
        Assert.All(price.Lines, l => Assert.Equal(("EUR", "EUR"), (l.Each.Currency, l.Amount.Currency)));
        Assert.Equal("EUR", price.Total.Currency);
    }

    // By hand from the parts list of the 6 m dome: what a clerk with a pocket calculator would write.
    [Fact]
    public void Of_WhenTheBookHasEverything_IsWhatAClerkWouldWrite()
    {
        var book = Book with
        {
            WastePercent = ImmutableDictionary<string, decimal>.Empty.Add("tie", 2.5m),
            PerTag = 0.11m, PerSawSetting = 2.40m, PerKit = 6.50m, PerParcel = 1.75m, OverheadPercent = 12, MarkupPercent = 30,
            QuantityBreaks = [new(2, 3), new(5, 6.5m), new(10, 9)],
            Shipping = [new(10_000, 9.90m), new(31_500, 18.40m)],
        };
        var parcels = ParcelPlanner.Plan(SixMetreKit, 5, ParcelExamples.Rules).Value;

        var price = Price.Of(SixMetreKit, 5, book, parcels).Value;

        var amounts = price.Lines.ToDictionary(l => l.Description, l => l.Amount.Amount);
        // 5 × 347 ties at 0.115 are 199.525; 2.5 % of 199.53 are 4.98825.
        Assert.Equal((199.53m, 4.99m), (amounts["Tie"], amounts["Waste of Tie"]));
        Assert.Equal((288.75m, 90.75m), (amounts["Cutting struts"], amounts["Tagging struts"]));
        Assert.Equal(SixMetreKit.StrutTypes.Length * 2.40m, amounts["Setting the saw"]);
        Assert.Equal(32.50m, amounts["Papers and last look"]);
        Assert.Equal(parcels.Parcels.Length * 1.75m, amounts["Filling and labelling parcels"]);
        var cost = price.Lines.Where(l => l.Kind is PriceLineKind.Material or PriceLineKind.Waste or PriceLineKind.Labour).Sum(l => l.Amount.Amount);
        var overhead = Math.Round(cost * 0.12m, 2, MidpointRounding.AwayFromZero);
        var margin = Math.Round((cost + overhead) * 0.30m, 2, MidpointRounding.AwayFromZero);
        var off = -Math.Round((cost + overhead + margin) * 0.065m, 2, MidpointRounding.AwayFromZero);
        Assert.Equal((overhead, margin, off), (amounts["Overhead, 12 %"], amounts["Margin, 30 %"], amounts["From 5 kits, -6.5 %"]));
        var shipping = parcels.Parcels.Sum(p => p.MassGrams <= 10_000 ? 9.90m : 18.40m);
        Assert.Equal(shipping, price.Lines.Where(l => l.Kind == PriceLineKind.Shipping).Sum(l => l.Amount.Amount));
        Assert.Equal(cost + overhead + margin + off + shipping, price.Total.Amount);
        Assert.All(price.Lines, l => Assert.NotEqual("", l.Why));
        Assert.Empty(price.Warnings);
        AddsUp(price);
    }

    [Fact]
    public void Of_WhenABookLacksAnItem_IsRefusedAndNamesIt()
    {
        var refusal = Price.Of(SixMetreKit, 1, Book with { UnitCosts = Book.UnitCosts.Remove("pipe-3m") }).Refusal;

        Assert.Equal((RefusalKind.Impossible, "price.no-cost"), (refusal?.Kind, refusal?.Code));
        Assert.Contains("pipe-3m", refusal!.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_WhenABookLacksAnItemAndTheShopSaysWarn_Warns()
    {
        var price = Price.Of(SixMetreKit, 1, Book with { UnitCosts = Book.UnitCosts.Remove("pipe-3m"), WhenCostMissing = WhenCostMissing.Warn }).Value;

        Assert.Equal("price.no-cost", Assert.Single(price.Warnings).Code);
        Assert.Equal(0m, price.Lines.Single(l => l.Description == "Pipe 33, 3,048 mm").Amount.Amount);
    }

    [Fact]
    public void Of_WhenTheBookHasNoCostsAtAll_SaysSo() =>
        Assert.Equal("price.no-book", Assert.Single(Price.Of(SixMetreKit, 1, new PriceBook { Currency = "EUR", UnitCosts = ImmutableDictionary<string, decimal>.Empty }).Value.Warnings).Code);

    [Fact]
    public void Of_WhenAParcelIsHeavierThanTheShippingTable_IsRefused() =>
        Assert.Equal("price.no-cost", Price.Of(SixMetreKit, 1, Book with { Shipping = [new(1000, 5)] }, ParcelPlanner.Plan(SixMetreKit, 1, ParcelExamples.Rules).Value).Refusal?.Code);

    [Fact]
    public void Of_WhenAKindOfParcelHasRatesOfItsOwn_TakesThose()
    {
        var price = Price.Of(SixMetreKit, 1, Book with { Shipping = [new(31_500, 5), new(31_500, 8, ParcelExamples.Rules.Kinds[0].Code)] }, ParcelPlanner.Plan(SixMetreKit, 1, ParcelExamples.Rules).Value).Value;

        Assert.All(price.Lines.Where(l => l.Kind == PriceLineKind.Shipping), l => Assert.Equal(8m, l.Each.Amount));
    }

    // ISO 4217: the yen has no smaller coin, the dinar of Kuwait has a thousandth.
    [Theory]
    [InlineData("JPY", 40), InlineData("EUR", 39.91), InlineData("KWD", 39.905)]
    public void Of_WhenACurrencyIsPaidMoreOrLessFinely_IsRoundedSo(string currency, decimal ties) =>
        Assert.Equal(ties, Price.Of(SixMetreKit, 1, Book with { Currency = currency }).Value.Lines.Single(l => l.Description == "Tie").Amount.Amount);

    // 347 ties a kit: six million kits once wrapped round to a negative quantity.
    [Fact]
    public void Of_WhenTheQuantityIsBeyondCounting_Throws() =>
        Assert.Throws<OverflowException>(() => Price.Of(SixMetreKit, 7_000_000, Book));

    [Theory]
    [InlineData(0), InlineData(-1)]
    public void Of_WhenTheQuantityIsNone_Throws(int quantity) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Price.Of(SixMetreKit, quantity, Book));
}
