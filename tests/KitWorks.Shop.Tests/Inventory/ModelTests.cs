using CsCheck;
using KitWorks.Shop.Inventory;

namespace KitWorks.Shop.Tests.Inventory;

/// <summary>Random work on a few items, held step by step against a model of ten lines.</summary>
public sealed class ModelTests(OneShop one) : IClassFixture<OneShop>
{
    enum Does { Receive, Count, Adjust, Reserve, Release, Consume, Replace }

    sealed record Step(Does Does, int Item, int Quantity, int OtherItem);

    static readonly Gen<Step> Steps = Gen.Select(Gen.Enum<Does>(), Gen.Int[0, 2], Gen.Int[1, 9], Gen.Int[0, 2], (does, item, quantity, other) => new Step(does, item, quantity, other));

    static int samples;

    [Fact]
    public async Task Stock_WhenAnythingIsDoneToIt_DoesAsTheModel() => await Steps.Array[1, 25].SampleAsync(async steps =>
    {
        var skus = Enumerable.Range(0, 3).Select(i => $"model-{Interlocked.Increment(ref samples)}-{i}").ToArray();
        await one.Shop.Ask(new KeepStockItems([.. skus.Select(s => new StockItemWords(s, "tie", s, "piece"))]));
        var onHand = new int[3];
        var reserved = new int[3];
        foreach (var step in steps)
        {
            var expected = Model(step, onHand, reserved);
            Assert.Equal(expected, await Do(step, skus));
            for (var i = 0; i < 3; i++)
            {
                var item = await one.Shop.Ask(new GetStockItem(skus[i]));
                Assert.Equal((onHand[i], reserved[i], onHand[i] - reserved[i]), (item.OnHand, item.Reserved, item.Available));
            }
        }
        Assert.Empty((await one.Shop.Ask(new VerifyLedger())).Faults);
    }, iter: 40, threads: 1);

    /// <summary>What must come of it: whether it is done, and the balances after.</summary>
    static bool Model(Step step, int[] onHand, int[] reserved)
    {
        var (hand, promised) = ((int[])onHand.Clone(), (int[])reserved.Clone());
        foreach (var i in (int[])[step.Item, step.OtherItem])
        {
            var q = step.Quantity;
            (hand[i], promised[i]) = step.Does switch
            {
                Does.Receive => (hand[i] + q, promised[i]),
                Does.Count => (q, promised[i]),
                Does.Adjust => (hand[i] - q, promised[i]),
                Does.Reserve => (hand[i], promised[i] + q),
                Does.Release => (hand[i], promised[i] - q),
                Does.Consume => (hand[i] - q, promised[i] - q),
                Does.Replace => (hand[i] - q, promised[i]),
            };
            if (step.Does is Does.Adjust || (step.Does is Does.Count && step.Item == step.OtherItem)) break;
        }
        if (Enumerable.Range(0, 3).Any(i => promised[i] < 0 || promised[i] > hand[i])) return false;
        hand.CopyTo(onHand, 0);
        promised.CopyTo(reserved, 0);
        return true;
    }

    async Task<bool> Do(Step step, string[] skus)
    {
        StockLine[] lines = [new(skus[step.Item], step.Quantity), new(skus[step.OtherItem], step.Quantity)];
        return step.Does switch
        {
            Does.Receive => (await one.Shop.Outcome(new ReceiveStock(lines, "model"))).Refusal is null,
            Does.Count => (await one.Shop.Outcome(new CountStock([.. lines.DistinctBy(l => l.Sku).Select(l => new CountedLine(l.Sku, l.Quantity))], "model"))).Refusal is null,
            Does.Adjust => (await one.Shop.Outcome(new AdjustStock(lines[0].Sku, -step.Quantity, "model"))).Refusal is null,
            Does.Reserve => (await one.Shop.Ask(new ReserveStock(lines, "model"))).IsWhole,
            Does.Release => await Holds(new ReleaseStock(lines, "model")),
            Does.Consume => await Holds(new ConsumeStock(lines, "model")),
            Does.Replace => (await one.Shop.Outcome(new ReplaceStock(lines, "model", "model"))).Refusal is null,
        };
    }

    /// <summary>More than is reserved is never released or consumed by an order; whoever tries has a bug, and nothing moves.</summary>
    async Task<bool> Holds(MediatR.IRequest<Geometry.Outcome<MediatR.Unit>> message)
    {
        try
        {
            return (await one.Shop.Outcome(message)).Refusal is null;
        }
        catch (InvalidOperationException)
        {
            return false;
        }
    }
}
