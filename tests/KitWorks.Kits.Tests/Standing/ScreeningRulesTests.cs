using KitWorks.Kits.Catalog;
using KitWorks.Statics.Checks;
using KitWorks.Statics.Loads;

namespace KitWorks.Kits.Tests.Standing;

public sealed class ScreeningRulesTests
{
    static LoadSet Set => new() { Name = "one" };

    public static TheoryData<string, ScreeningRules> Wrong => new()
    {
        { "loadSets/0/personN", new() { LoadSets = [Set with { PersonN = -1 }] } },
        { "loadSets/1/snow/groundPa", new() { LoadSets = [Set, Set with { Name = "two", Snow = new() { GroundPa = double.NaN } }] } },
        { "loadSets/0/wind/speedMPerS", new() { LoadSets = [Set with { Wind = new() { SpeedMPerS = 121 } }] } },
        { "loadSets/0/directionsDeg", new() { LoadSets = [Set with { DirectionsDeg = [double.PositiveInfinity] }] } },
        { "loadSets/0/dead", new() { LoadSets = [Set with { Dead = new() { HubKg = 2 } }] } },
        { "loadSets/1/name", new() { LoadSets = [Set, Set] } },
        { "loadSets/0/name", new() { LoadSets = [Set with { Name = " " }] } },
        { "loadSets/0/name", new() { LoadSets = [null!] } },
        { "loadSets", new() { LoadSets = [.. Enumerable.Range(0, 13).Select(i => Set with { Name = $"{i}" })] } },
        { "criteria/bucklingSafety", new() { Criteria = new() { BucklingSafety = 0.5 } } },
        { "criteria/tieRatedN", new() { Criteria = new() { TieRatedN = 534 } } },
        { "criteria/tiesPerEnd", new() { Criteria = new() { TiesPerEnd = 2 } } },
        { "criteria", new() { Criteria = null! } },
    };

    [Theory, MemberData(nameof(Wrong))]
    public void Fault_WhenANumberIsOutOfRange_NamesIt(string field, ScreeningRules rules) => Assert.Equal(field, Assert.Single(rules.Fault()!.Errors).Field);

    [Fact]
    public void Fault_WhenTheRulesAreInOrder_IsNull()
    {
        Assert.Null(new ScreeningRules().Fault());
        Assert.Null(new ScreeningRules { LoadSets = [] }.Fault());
        Assert.Null(new ScreeningRules { LoadSets = [Set with { Snow = new() { GroundPa = 500 }, Wind = new() { SpeedMPerS = 30 } }], Criteria = new Criteria { Friction = 0 } }.Fault());
    }
}
