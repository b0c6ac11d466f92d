using CsCheck;
using KitWorks.Kits.Catalog;
using static KitWorks.Kits.Tests.ExampleShop;

namespace KitWorks.Kits.Tests;

public sealed class PriceTests
{
    static readonly PriceBook Book = Wares.Prices;

    [Fact]
    public void Of_WhenOneKit_ExplainsEveryPartAndTheWork()
    {
        var price = Price.Of(SixMetreKit, 1, Book);

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
            })));

    static void AddsUp(Price price)
    {
        Assert.Equal(price.Lines.Sum(l => l.Amount.Amount), price.Total.Amount);
        Assert.All(price.Lines, l => Assert.Equal(Math.Round(l.Quantity * l.Each.Amount, 2, MidpointRounding.AwayFromZero), l.Amount.Amount));
        Assert.All(price.Lines, l => Assert.Equal(("EUR", "EUR"), (l.Each.Currency, l.Amount.Currency)));
        Assert.Equal("EUR", price.Total.Currency);
    }

    // As documented: at nothing, before the markup. A shop that sells below cost would want to be told.
    [Fact]
    public void Of_WhenABookLacksAnItem_TakesItAtNothing()
    {
        var price = Price.Of(SixMetreKit, 1, Book with { UnitCosts = Book.UnitCosts.Remove("pipe-3m") });

        Assert.Equal(0m, price.Lines.Single(l => l.Description == "Pipe 33, 3,048 mm").Amount.Amount);
        Assert.True(price.Total.Amount < Price.Of(SixMetreKit, 1, Book).Total.Amount);
    }

    // 347 ties a kit: six million kits once wrapped round to a negative quantity.
    [Fact]
    public void Of_WhenTheQuantityIsBeyondCounting_Throws() =>
        Assert.Throws<OverflowException>(() => Price.Of(SixMetreKit, 7_000_000, Book));

    [Theory]
    [InlineData(0), InlineData(-1)]
    public void Of_WhenTheQuantityIsNone_Throws(int quantity) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Price.Of(SixMetreKit, quantity, Book));
}
