using KitWorks.Geometry;
using KitWorks.Kits.Batches;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Packing;
using static KitWorks.Kits.Tests.ExampleShop;

namespace KitWorks.Kits.Tests.Batches;

public sealed class BatchPlannerTests
{
    static readonly Kit Small = Made(Dome(2, "1/2", new Size.FloorDiameter(Mm(4000))));
    static readonly Kit Stout = Made(Dome(2, "1/2", new Size.FloorDiameter(Mm(9000))) with { StrutStock = "long" });
    static readonly BatchOrder[] Orders = [new(1001, 1, SixMetreKit), new(1002, 3, Small), new(1003, 2, SixMetreKit)];

    static BatchPlan Planned(IReadOnlyList<BatchOrder> orders, IReadOnlyList<CutStruts>? ready = null, IReadOnlyList<LabelledRemnant>? remnants = null) =>
        BatchPlanner.Plan(orders, ready ?? [], remnants ?? [], Wares.Workshop, TimeSpan.FromSeconds(1)).Value;

    [Fact]
    public void Plan_OfSeveralOrders_CutsEveryStrutOfEveryBundleAndSavesPipe()
    {
        var pipe = Assert.Single(Planned(Orders).Pipes);

        IsRight(pipe, Orders);
        Assert.Equal(3 * SixMetreKit.CutPlan.StockLengths[0].Count + 3 * Small.CutPlan.StockLengths[0].Count, pipe.LengthsApart);
        Assert.True(pipe.Lengths <= pipe.LengthsApart && pipe.WasteMm <= pipe.WasteMmApart);
        // What one batch takes can never be less than the struts themselves.
        Assert.True(pipe.Lengths * 3048.0 >= pipe.Pieces.Sum(p => p.Cut * p.CutLength.Millimetres));
    }

    [Fact]
    public void Plan_WhenOrdersTakeDifferentPipes_PlansEachPipeAndNumbersPatternsOn()
    {
        var plan = Planned([.. Orders, new(1004, 1, Stout)]);

        Assert.Equal(["pipe-20m", "pipe-3m"], plan.Pipes.Select(p => p.PipeSku));
        Assert.Equal(Enumerable.Range(1, plan.Pipes.Sum(p => p.Patterns.Length)), plan.Pipes.SelectMany(p => p.Patterns).Select(p => p.Number));
        Assert.DoesNotContain(plan.Pipes[1].Pieces.SelectMany(p => p.Goes), g => g.Order == 1004);
    }

    [Fact]
    public void Plan_WhenStrutsLieReadyCut_PicksThemAndCutsTheRest()
    {
        var type = SixMetreKit.StrutTypes[1];
        var pipe = Assert.Single(Planned(Orders, [new("pipe-3m", type.CutLength, 50), new("pipe-20m", type.CutLength, 50), new("pipe-3m", Length.FromTenths(type.CutLength.Tenths + 1), 9)]).Pipes);

        IsRight(pipe, Orders);
        var piece = pipe.Pieces.Single(p => p.CutLength == type.CutLength);
        Assert.Equal((50, 3 * type.Count - 50), (piece.Picked, piece.Cut));
        Assert.Equal(50, pipe.Pieces.Sum(p => p.Picked));
    }

    [Fact]
    public void Plan_WhenAllLiesReadyCut_CutsNothing()
    {
        var pipe = Assert.Single(Planned([new(7, 1, Small)], [.. Small.StrutTypes.Select(t => new CutStruts("pipe-3m", t.CutLength, t.Count + 1))]).Pipes);

        Assert.Null(pipe.CutPlan);
        Assert.Equal((0, 0), (pipe.Lengths, pipe.Patterns.Length));
    }

    [Fact]
    public void Plan_WhenRemnantsAreInStock_UsesThemEachOnce()
    {
        var longest = SixMetreKit.StrutTypes[^1].CutLength;
        LabelledRemnant[] remnants = [.. Enumerable.Range(1, 8).Select(n => new LabelledRemnant($"R{n}", "pipe-3m", longest)), new("R9", "pipe-20m", longest)];
        var pipe = Assert.Single(Planned(Orders, remnants: remnants).Pipes);

        IsRight(pipe, Orders);
        var used = pipe.Patterns.SelectMany(p => p.Remnants).ToList();
        Assert.Equal(used.Distinct(), used);
        Assert.DoesNotContain("R9", used);
        Assert.All(pipe.Patterns.Where(p => p.Pattern.Sku is null), p => Assert.Equal(p.Pattern.Count, p.Remnants.Length));
        Assert.True(pipe.Lengths <= Planned(Orders).Pipes[0].Lengths);
        Assert.NotEmpty(used);
    }

    static void IsRight(PipePlan pipe, BatchOrder[] orders)
    {
        // Bundle by bundle: what goes in is what the kits' bundles hold.
        var needed = orders.SelectMany(o => Enumerable.Range(0, o.Quantity).SelectMany(kit => o.Kit.Bundles.Where(b => b.Kind == BundleKind.Struts)
            .Select(b => (o.Number, Bundle: kit * o.Kit.Bundles.Length + b.Number, b.Contents[0].Code, b.Contents[0].Count, Length: o.Kit.StrutTypes.First(t => t.Code == b.Contents[0].Code).CutLength))));
        Assert.Equal(
            needed.Order(), pipe.Pieces.SelectMany(p => p.Goes.Select(g => (g.Order, g.Bundle, (string?)g.StrutCode, g.Count, p.CutLength))).Order());
        Assert.All(pipe.Pieces, p => Assert.Equal(p.Goes.Sum(g => g.Count), p.Picked + p.Cut));
        // Pattern by pattern: what is cut is what is needed, and fits.
        var cut = pipe.Patterns.SelectMany(p => p.Pattern.Cuts.Select(c => (c.Code, c.CutLength, Count: c.Count * p.Pattern.Count)))
            .GroupBy(c => (c.Code, c.CutLength)).ToDictionary(g => g.Key, g => g.Sum(c => c.Count));
        Assert.All(pipe.Pieces, p => Assert.Equal(p.Cut, cut.GetValueOrDefault((p.Code, p.CutLength))));
        Assert.Equal(pipe.Lengths, pipe.Patterns.Where(p => p.Pattern.Sku is not null).Sum(p => p.Pattern.Count));
    }
}
