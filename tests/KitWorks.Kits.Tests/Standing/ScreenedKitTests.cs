using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Statics;
using KitWorks.Statics.Checks;
using KitWorks.Statics.Loads;
using static KitWorks.Kits.Tests.ExampleShop;

namespace KitWorks.Kits.Tests.Standing;

public sealed class ScreenedKitTests
{
    /// <summary>ASTM D1785, schedule 40, in tenths of a millimetre; modulus and strength of ASTM D1784 cell 12454, 50-year modulus of AASHTO LRFD 12.12.3.3 (from memory).</summary>
    static StrutStock Pvc(string code, double outside, double wall, int gramsPerMetre) => new()
    {
        Code = code, Sku = code, Name = $"PVC {outside}", StockLength = Mm(3048), OutsideDiameter = Mm(outside), Wall = Mm(wall), GramsPerMetre = gramsPerMetre,
        ModulusMPa = 2900, LongTermModulusMPa = 965, StrengthMPa = 48.3,
    };

    /// <summary>Tie classes of 120 and 350 lb (the trade's, from memory).</summary>
    static ShopCatalog Shop { get; } = Wares with
    {
        StrutStocks = [Pvc("pvc-48", 48.3, 3.7, 759), Pvc("pvc-27", 26.7, 2.9, 313), Pvc("pvc-33", 33.4, 3.4, 476), Pvc("pvc-42", 42.2, 3.6, 640)],
        Ties = [new("tie-350", "Tie 350", 1557, 14), new("tie", "Tie 120", 534, 6), new("tie-175", "Tie 175", 778, 7)],
        Screening = new() { LoadSets = [new() { Name = "garden", PersonN = 445 }, new() { Name = "climbed", PersonN = 1000 }, new() { Name = "nobody", PersonN = null }] },
    };

    static Design Dome(string? pipe = "pvc-33", string? loads = null) => SixMetreDome() with { StrutStock = pipe, LoadSet = loads };

    [Fact]
    public void Make_WhenScreened_SaysWhatTheScreeningSays()
    {
        var kit = Made(Dome(), Shop);
        var section = Section.Tube(33.4, 3.4, 2900).Value with { MassKgPerM = 0.476, LongTermModulusMPa = 965, StrengthMPa = 48.3 };
        // Ring hubs of 96 and 88 g, and 330 ties of 6 g on 61 hubs; one layer of film of 185 g/m².
        var dead = new DeadLoad { HubKg = 0.092 + 330 * 0.006 / 61, CoverKgPerM2 = 0.185 };
        var report = Screening.Of(kit.Frame, section, new() { PersonN = 445, Dead = dead }, new() { TieRatedN = 534 }).Value;

        var screening = kit.Screening!;
        Assert.Equal("garden", screening.LoadSet);
        Assert.Equal(report.Passes, screening.Passes);
        Assert.Equal(report.Checks.Select(c => (c.Kind, c.LoadCase, c.At)), screening.Checks.Select(c => (c.Kind, c.LoadCase, c.At)));
        Assert.All(report.Checks.Zip(screening.Checks), c => Assert.Equal(c.First.Demand, c.Second.Demand, c.First.Demand * 1e-9));
        Assert.All(report.Checks.Zip(screening.Checks), c => Assert.Equal(c.First.Capacity, c.Second.Capacity, c.First.Capacity * 1e-9));
        Assert.Equal(1 - report.Governing!.Utilisation, screening.Margin!.Value, 1e-9);
        Assert.Equal((report.Stakes, 15), (screening.StakesNeeded, screening.StakesInKit));
        Assert.All(screening.Checks.Where(c => c.StrutType is not null), c => Assert.Equal(kit.TypeOfFamily(kit.Frame.Struts[c.At].Family).Code, c.StrutType));
        Assert.Contains("not a certificate", screening.Caution, StringComparison.Ordinal);
        Assert.Contains("licensed engineer", screening.Caution, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false, false, "The load set has no wind and no snow: ", null)]
    [InlineData(false, true, "The load set has no wind: ", "snow is taken as if it had one")]
    [InlineData(true, false, "The load set has no snow: ", "wind is taken as if it had one")]
    [InlineData(true, true, null, "wind and snow are taken as if it had one")]
    public void Make_WhenTheLoadSetLeavesWeatherOut_SaysThatItWasNotLookedAt(bool wind, bool snow, string? missing, string? taken)
    {
        var loads = new LoadSet { Name = "weather", Wind = wind ? new() { SpeedMPerS = 30 } : null, Snow = snow ? new() { GroundPa = 500 } : null };
        var notes = Made(SixMetreDome() with { StrutStock = "pvc-33", Cover = null }, Shop with { Screening = new() { LoadSets = [loads] } }).Screening!.Notes;

        Assert.Equal(missing is not null, notes.Any(n => missing is not null && n.StartsWith(missing, StringComparison.Ordinal)));
        Assert.Equal(missing is not null, notes.Any(n => n.Contains("was not looked at", StringComparison.Ordinal)));
        Assert.Equal(taken, notes.Select(n => n.Split("no cover; ")).Where(n => n.Length == 2).Select(n => n[1].TrimEnd('.')).SingleOrDefault());
    }

    [Fact]
    public void Make_WhenItOutgrowsItsPipeAndTie_WarnsAndNeverCallsItSafe()
    {
        var kit = Made(Dome(loads: "climbed"), Shop);
        var warnings = kit.Warnings.Where(w => w.Code.StartsWith("statics.", StringComparison.Ordinal)).ToList();

        Assert.False(kit.Screening!.Passes);
        Assert.True(kit.Screening.Margin < 0);
        Assert.Equal(["statics.outgrown", "statics.tie-overloaded"], warnings.Select(w => w.Code));
        Assert.All(warnings, w => Assert.Contains("screening", w.Detail, StringComparison.Ordinal));
        Assert.All(warnings, w => Assert.Contains("local building codes and a licensed engineer decide", w.Detail, StringComparison.Ordinal));
        Assert.All(warnings, w => Assert.DoesNotContain("safe", w.Detail, StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData("garden"), InlineData("climbed"), InlineData("nobody")]
    public void Make_RecommendsTheSmallestPipeAndTieThatPass(string loads)
    {
        var advice = Made(Dome("pvc-48", loads), Shop).Recommendation!;

        string[] bySize = ["pvc-27", "pvc-33", "pvc-42", "pvc-48"];
        var passing = bySize.Where(pipe => Made(Dome(pipe, loads), Shop).Screening!.Checks.All(c => c.Kind == CheckKind.TieTension || c.Utilisation <= 1)).ToList();
        Assert.Equal(passing.FirstOrDefault(), advice.StrutStock);
        (string Sku, int Newtons)[] byStrength = [("tie", 534), ("tie-175", 778), ("tie-350", 1557)];
        var pipe = advice.StrutStock ?? "pvc-48";
        var holding = byStrength.Where(t => Made(Dome(pipe, loads), WithTie(t.Sku)).Screening!.Checks.All(c => c.Kind != CheckKind.TieTension || c.Utilisation <= 1)).ToList();
        Assert.Equal(holding.Select(t => t.Sku).FirstOrDefault(), advice.Tie);
        Assert.Contains(loads, advice.Reason, StringComparison.Ordinal);
        Assert.Contains("screening only", advice.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_WhenThePipeIsLeftOut_TakesTheSmallestThatPasses()
    {
        var chosen = Made(Dome(null), Shop);
        var named = Made(Dome(chosen.Recommendation!.StrutStock), Shop);

        Assert.Equal(chosen.Recommendation.StrutStock, chosen.Design.StrutStock);
        Assert.Equal(named.DesignId, chosen.DesignId);
        Assert.DoesNotContain("statics.outgrown", chosen.Warnings.Select(w => w.Code));
        Assert.Contains(chosen.Parts, p => p.Sku == chosen.Design.StrutStock);
    }

    [Fact]
    public void Make_WhenNoPipePasses_TakesTheStrongestAndSaysSo()
    {
        var weak = Shop with { StrutStocks = [.. Shop.StrutStocks.Where(s => s.Code is "pvc-27" or "pvc-33")] };
        var kit = Made(Dome(null, "climbed"), weak);

        Assert.Equal("pvc-33", kit.Design.StrutStock);
        Assert.Null(kit.Recommendation!.StrutStock);
        Assert.Contains("No pipe of the catalog passes", kit.Recommendation.Reason, StringComparison.Ordinal);
        Assert.Contains("statics.outgrown", kit.Warnings.Select(w => w.Code));
    }

    [Fact]
    public void Make_WhenNothingCanBeChosen_NamesTheField()
    {
        Assert.Equal(("design.no-choice", "strutStock"), Fault(Dome(null), Wares));
        Assert.Equal(("design.no-choice", "strutStock"), Fault(Dome(null), Shop with { Screening = new() { LoadSets = [] } }));
        Assert.Equal(("design.not-in-catalog", "loadSet"), Fault(Dome(loads: "blizzard"), Shop));
        Assert.Equal(("design.not-in-catalog", "strutStock"), Fault(Dome("oak"), Shop));
    }

    [Fact]
    public void Make_WhenThePipesStiffnessIsUnknown_SaysNothing()
    {
        Assert.Null(SixMetreKit.Screening);
        Assert.Null(SixMetreKit.Recommendation);
        Assert.Null(Made(Dome(), Shop with { Screening = new() { LoadSets = [] } }).Screening);
    }

    static Kit InTheWind(double speedMPerS, int most = 4) => Made(Dome(), Shop with
    {
        Screening = new() { MostStakesPerHub = most, LoadSets = [new() { Name = "storm", PersonN = null, Wind = new() { SpeedMPerS = speedMPerS } }] },
    });

    [Fact]
    public void Make_WhenTheWindLiftsIt_PutsInTheStakesThatAreNeeded()
    {
        var kit = InTheWind(25);

        Assert.Equal(kit.Screening!.StakesNeeded, kit.StakesAt.Sum());
        Assert.True(kit.Totals.Stakes > 15);
        Assert.Equal((kit.StakesAt.Sum(), kit.StakesAt.Sum()), (kit.Totals.Stakes, kit.Screening.StakesInKit));
        Assert.Equal(kit.Totals.Stakes, kit.Parts.Single(p => p.Kind == PartKind.Stake).Quantity);
        Assert.Contains("pull one to know", kit.Warnings.Single(w => w.Code == "statics.more-stakes").Detail, StringComparison.Ordinal);
        Assert.DoesNotContain(kit.Warnings, w => w.Code == "statics.stakes");
        KitChecks.Hold(Made(Dome(), Shop), Shop);
    }

    [Fact]
    public void Make_WhenTheStormAsksForMoreThanStakes_SaysSo()
    {
        var kit = InTheWind(45);

        Assert.True(kit.Screening!.StakesNeeded > kit.Screening.StakesInKit);
        Assert.All(kit.StakesAt, n => Assert.Equal(4, n));
        Assert.Contains("another way", kit.Warnings.Single(w => w.Code == "statics.stakes").Detail, StringComparison.Ordinal);
        Assert.All(InTheWind(45, most: 0).StakesAt, n => Assert.Equal(1, n));
        Assert.All(InTheWind(0).StakesAt, n => Assert.Equal(1, n));
    }

    /// <summary>A kit whose shape was screened before at another size is the kit of a shop that sees it for the first time.</summary>
    [Fact]
    public void Make_WhateverWasScreenedBefore_IsTheSame()
    {
        var shop = Shop with { Screening = new() { LoadSets = [new() { Name = "all", Snow = new() { GroundPa = 700 }, Wind = new() { SpeedMPerS = 31 } }] } };
        Design Sized(double metres) => Dome() with { Shelter = ((Geometry.Dome)Dome().Shelter) with { Size = new Size.FloorDiameter(Mm(metres * 1000)) } };
        var large = Made(Sized(7), shop).Screening!;
        _ = Made(Sized(4), shop);
        var again = Made(Sized(7), shop);

        Assert.Equal(large.Checks, again.Screening!.Checks);
        var section = Section.Tube(33.4, 3.4, 2900).Value with { MassKgPerM = 0.476, LongTermModulusMPa = 965, StrengthMPa = 48.3 };
        var dead = new DeadLoad { HubKg = 0.092 + 330 * 0.006 / 61, CoverKgPerM2 = 0.185 };
        var direct = Screening.Of(again.Frame, section, shop.Screening.LoadSets[0] with { Dead = dead }, new() { TieRatedN = 534 }).Value;
        Assert.Equal(direct.Checks.Length, large.Checks.Length);
        foreach (var check in direct.Checks)
            Assert.Equal(check.Utilisation, large.Checks.Single(c => (c.Kind, c.LoadCase) == (check.Kind, check.LoadCase)).Utilisation, check.Utilisation * 1e-9);
    }

    [Fact]
    public void Make_WhenTheShelterIsHuge_IsNotScreenedAndSaysSo()
    {
        var huge = ExampleShop.Dome(12, "1/2", new Size.FloorDiameter(Mm(12_000))) with { StrutStock = "pvc-33" };
        var kit = Made(huge, Shop);

        Assert.Null(kit.Screening);
        Assert.Contains("statics.not-screened", kit.Warnings.Select(w => w.Code));
        Assert.Equal(("design.no-choice", "strutStock"), Fault(huge with { StrutStock = null }, Shop));
    }

    [Fact]
    public void Make_WhenThereIsNoGroundToStandOn_IsNotRefused()
    {
        var ball = ExampleShop.Dome(2, "1/1", new Size.Radius(Mm(1500))) with { StrutStock = "pvc-33" };
        if (Kit.Make(ball, Shop).Succeeds(out var kit, out var refusal)) Assert.Contains("statics.not-screened", kit.Warnings.Select(w => w.Code));
        else Assert.StartsWith("shelter.", refusal.Code, StringComparison.Ordinal);
    }

    static (string, string) Fault(Design design, ShopCatalog shop) => Refused(design, shop) is var r ? (r.Code, Assert.Single(r.Errors).Field) : default;

    static ShopCatalog WithTie(string sku) => Shop with { HubSystems = [.. Shop.HubSystems.Select(h => h with { TieSku = sku })] };
}
