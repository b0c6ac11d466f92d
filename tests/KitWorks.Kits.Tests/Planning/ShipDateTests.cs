using KitWorks.Kits.Catalog;
using KitWorks.Kits.Planning;

namespace KitWorks.Kits.Tests.Planning;

public sealed class ShipDateTests
{
    // A Wednesday.
    static readonly DateOnly Today = new(2026, 11, 25);

    static readonly WorkCalendar Weekdays = new();

    // OpenFormula's WORKDAY: worked examples on quantunet.com (2007) and, from memory, in a spreadsheet's manual (2008).
    [Theory]
    [InlineData("2007-05-06", 30, "2007-06-18", "2007-05-28")]
    [InlineData("2008-10-01", 151, "2009-04-30")]
    [InlineData("2008-10-01", 151, "2009-05-05", "2008-11-26", "2008-12-04", "2009-01-21")]
    public void After_OnPublishedExamples_IsTheSameDay(string from, int days, string then, params string[] holidays) =>
        Assert.Equal(Day(then), (Weekdays with { Closed = [.. holidays.Select(h => new ClosedDays(Day(h), Day(h), "Holiday"))] }).After(Day(from), days));

    [Fact]
    public void After_WhenTheShopWorksOnSaturdays_CountsThem() =>
        Assert.Equal(new(2026, 12, 1), (Weekdays with { WorkDays = [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Saturday] }).After(Today, 3));

    [Fact]
    public void After_WhenNothingOpensAgain_Throws() =>
        Assert.Throws<InvalidOperationException>(() => (Weekdays with { Closed = [new(Today, Today.AddYears(30), "Gone fishing")] }).After(Today, 1));

    [Fact]
    public void Of_WhenNothingIsInTheWay_TakesTheLeadDays()
    {
        var date = ShipDate.Of(Today, Weekdays, new(165, 40), default, [], 5);

        Assert.Equal(new(2026, 12, 2), date.ShipBy);
        Assert.Equal("carrier", Assert.Single(date.WaitsFor).What);
    }

    [Fact]
    public void Of_WhenStockIsDue_WaitsForTheArrivalThatMakesItWhole()
    {
        var date = ShipDate.Of(Today, Weekdays, new(165, 40), default,
            [new("pipe", 50, [new(new(2026, 12, 7), 30, "purchase 2"), new(new(2026, 11, 30), 30, "purchase 1")], 10)], 5);

        Assert.Equal(new(2026, 12, 14), date.ShipBy);
        Assert.Equal(("stock", new DateOnly(2026, 12, 7)), (date.WaitsFor[0].What, date.WaitsFor[0].Until));
        Assert.Contains("purchase 2", date.WaitsFor[0].Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_WhenWhatIsDueIsNotEnough_WaitsForTheSupplier() =>
        Assert.Equal(new(2026, 12, 16), ShipDate.Of(Today, Weekdays, default, default, [new("pipe", 50, [new(new(2026, 11, 30), 30, "purchase 1")], 10)], 5).ShipBy);

    [Fact]
    public void Of_WhenADeliveryIsOverdue_ExpectsItOnTheNextWorkingDay() =>
        Assert.Equal(new(2026, 11, 26), ShipDate.Of(Today, Weekdays, default, default, [new("pipe", 5, [new(new(2026, 11, 20), 30, "purchase 1")], 10)], 0).ShipBy);

    // 1,000 cuts before, 165 of its own, 400 a day: Wednesday and Thursday are full, and it is cut on Friday.
    [Fact]
    public void Of_WhenTheSawIsBusy_WaitsForItsTurn()
    {
        var date = ShipDate.Of(Today, Weekdays with { CutsPerDay = 400, BundlesPerDay = 60 }, new(165, 40), new(1000, 30), [], 5);

        Assert.Equal(("saw", new DateOnly(2026, 11, 27)), (date.WaitsFor[0].What, date.WaitsFor[0].Until));
        Assert.Equal(new(2026, 12, 4), date.ShipBy);
    }

    [Fact]
    public void Of_WhenTheBacklogIsDoneBeforeTheStockIsThere_CountsTheOrdersOwnWorkOnly() =>
        Assert.Equal(new(2026, 12, 16), ShipDate.Of(Today, Weekdays with { CutsPerDay = 100 }, new(201, 40), new(100, 0), [new("pipe", 5, [], 8)], 5).ShipBy);

    [Fact]
    public void Of_WhenTheShopIsClosed_SkipsThoseDays() =>
        Assert.Equal(new(2027, 1, 6), ShipDate.Of(new(2026, 12, 23), Weekdays with { Closed = [new(new(2026, 12, 24), new(2027, 1, 1), "Between the years")] }, default, default, [], 3).ShipBy);

    static DateOnly Day(string text) => DateOnly.Parse(text);
}
