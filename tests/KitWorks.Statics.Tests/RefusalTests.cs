using KitWorks.Geometry;
using KitWorks.Statics.Loads;
using static KitWorks.Statics.Tests.Models;

namespace KitWorks.Statics.Tests;

public class RefusalTests
{
    [Theory]
    [InlineData(0), InlineData(-1), InlineData(double.NaN), InlineData(double.PositiveInfinity), InlineData(1e7)]
    public void Of_WhenSectionIsOutOfRange_NamesEachField(double bad)
    {
        var section = new Section { AreaMm2 = bad, SecondMomentMm4 = bad * 1e7, ModulusMPa = bad, LongTermModulusMPa = bad };
        var refusal = Truss.Of(Pyramid(3, 500, 500, BaseSupport.Pinned), section).Refusal!;

        Assert.Equal("statics.section-invalid", refusal.Code);
        Assert.Equal(["section/areaMm2", "section/secondMomentMm4", "section/modulusMPa", "section/longTermModulusMPa"], refusal.Errors.Select(e => e.Field));
    }

    [Fact]
    public void Solve_WhenLoadsAreWrong_NamesEachField()
    {
        var refusal = Pyramid(3, 500, 500, BaseSupport.Pinned).Analysed()
            .Solve([new(0, 0, 0, -1), new(4, 0, 0, -1), new(-1, 0, 0, 0), new(1, double.NaN, double.NegativeInfinity, 2e9)]).Refusal!;

        Assert.Equal("statics.load-invalid", refusal.Code);
        Assert.Equal(["loads/1/node", "loads/2/node", "loads/3/xN", "loads/3/yN", "loads/3/zN"], refusal.Errors.Select(e => e.Field));
    }

    [Fact]
    public void Solve_WhenHubHasNoStrutLeft_RefusesTheLoad()
    {
        var model = TrussModel.Of([new(0, 0, 0), new(1, 0, 0), new(0, 0, 9)], [new(0, 0, 1)], [new(0, true, true, true), new(1, true, true, true)]).Value;
        Assert.Equal("loads/0/node", model.Analysed().Solve([new(2, 0, 0, -1)]).Refusal!.Errors.Single().Field);
    }

    public static TheoryData<string, Point3[], Member[], Support[]> Wrong => new()
    {
        { "nodes/1", [default, new(double.NaN, 0, 0)], [new(0, 0, 1)], [new(0, true, true, true)] },
        { "nodes/1", [default, new(0, 0, 1e8)], [new(0, 0, 1)], [new(0, true, true, true)] },
        { "members/0/from", [default, new(1, 0, 0)], [new(0, 2, 1)], [new(0, true, true, true)] },
        { "members/0/to", [default, new(1, 0, 0)], [new(0, 0, -1)], [new(0, true, true, true)] },
        { "members/0/to", [default, new(1, 0, 0)], [new(0, 1, 1)], [new(0, true, true, true)] },
        { "supports/0/node", [default, new(1, 0, 0)], [new(0, 0, 1)], [new(7, true, true, true)] },
        { "supports/1/node", [default, new(1, 0, 0)], [new(0, 0, 1)], [new(0, true, true, true), new(0, true, true, true)] },
        { "members", [default, new(1, 0, 0)], [], [new(0, true, true, true)] },
        { "supports", [default, new(1, 0, 0)], [new(0, 0, 1)], [] },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void Of_WhenModelIsWrong_NamesTheField(string field, Point3[] nodes, Member[] members, Support[] supports)
    {
        var refusal = TrussModel.Of(nodes, members, supports).Refusal!;
        Assert.Equal(("statics.structure-invalid", field), (refusal.Code, refusal.Errors.Single().Field));
    }
}
