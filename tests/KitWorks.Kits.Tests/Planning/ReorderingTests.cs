using KitWorks.Kits.Catalog;
using KitWorks.Kits.Planning;

namespace KitWorks.Kits.Tests.Planning;

public sealed class ReorderingTests
{
    static readonly DateOnly Today = new(2026, 11, 25);

    static IReadOnlyList<ReorderLine> List(ItemStanding[] items, params Supply[] supplies) => Reordering.List(items, supplies, new(), new(), Today);

    static ItemStanding Pipe(int available, int awaited, int expected, int reorderAt) => new("pipe", "Pipe", available, awaited, expected, reorderAt);

    // On hand and promised to nobody, less what orders wait for, with what is on its way: 40 − 55 + 10 = −5. To be above 20 takes 26, in packs of ten.
    [Fact]
    public void List_WhenOrdersWaitForMore_BuysWholePacksUpToTheReorderPoint()
    {
        var line = Assert.Single(List([Pipe(40, 55, 10, 20)], new Supply { Sku = "pipe", Supplier = "Pipe merchant", PackSize = 10, LeadDays = 3 }));

        Assert.Equal((3, 30, "Pipe merchant", new DateOnly(2026, 11, 30)), (line.Packs, line.Quantity, line.Supplier, line.ArrivesBy));
    }

    [Fact]
    public void List_WhenTheShopOrdersUpToALevel_BuysSoMany() =>
        Assert.Equal(12, Assert.Single(List([Pipe(20, 0, 0, 20)], new Supply { Sku = "pipe", PackSize = 12, OrderUpTo = 30 })).Quantity);

    [Theory]
    [InlineData(21, 0, 0, 20, false), InlineData(20, 0, 0, 20, true), InlineData(20, 0, 1, 20, false), InlineData(22, 2, 0, 20, true)]
    [InlineData(0, 0, 0, 0, false), InlineData(0, 1, 0, 0, true)]
    public void List_AsksAtTheReorderPointAndBelowOrWhenOrdersWait(int available, int awaited, int expected, int reorderAt, bool listed) =>
        Assert.Equal(listed, List([Pipe(available, awaited, expected, reorderAt)]).Count == 1);

    [Fact]
    public void List_PutsWhatOrdersWaitForFirst() =>
        Assert.Equal(["z", "a"], List([new("a", "A", 5, 0, 0, 10), new("z", "Z", 0, 7, 0, 0)]).Select(l => l.Sku));

    [Fact]
    public void List_WhatIsBought_IsEnoughAndNotAPackTooMany()
    {
        var random = new Random(3);
        for (var n = 0; n < 500; n++)
        {
            var (item, pack) = (Pipe(random.Next(200), random.Next(200), random.Next(100), random.Next(60)), random.Next(1, 30));
            foreach (var line in List([item], new Supply { Sku = "pipe", PackSize = pack }))
            {
                var after = item.Projected + line.Quantity;
                Assert.True(item.ReorderAt == 0 ? after >= 0 : after > item.ReorderAt);
                Assert.False(item.ReorderAt == 0 ? after - pack >= 0 : after - pack > item.ReorderAt);
            }
        }
    }
}
