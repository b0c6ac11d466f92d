using KitWorks.Geometry;
using KitWorks.Kits.Cutting;

namespace KitWorks.Kits.Tests.Cutting;

public class OpenDataTests
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    [Theory]
    [InlineData("binpack2.txt", 20)]
    [InlineData("binpack5.txt", 20)]
    [InlineData("binpack6.txt", 8)]
    public void Plan_OnFalkenauersInstances_ProvesTheFewestBinsKnown(string file, int instances)
    {
        if (OpenData.Folder is null) Assert.Skip("../shared/data/bin-packing is not beside this repository.");
        foreach (var (name, job, bins) in OpenData.Read(file).Take(instances))
        {
            var plan = CutPlanChecker.Planned(job, Patience);
            Assert.True(plan.Proven && plan.Total == bins, $"{name}: {plan.Total} bins, bound {plan.LowerBound}, best known {bins}");
        }
    }

    [Theory]
    [InlineData(1, 20)]
    [InlineData(2, 30)]
    [InlineData(3, 40)]
    public void Plan_OnTripletsThatFillTheirBins_ProvesAsManyBinsAsTriplets(int seed, int triplets)
    {
        var random = new Random(seed);
        var sizes = Enumerable.Range(0, triplets).SelectMany(_ => Triplet(random));
        var plan = CutPlanChecker.Planned(OpenData.JobOf(Length.FromTenths(1000), sizes), Patience);
        Assert.Equal((triplets, true), (plan.Total, plan.Proven));
    }

    /// <summary>Three sizes of 25 to 50 hundredths of the bin that fill it, one of them above 38: no bin takes four.</summary>
    static Length[] Triplet(Random random)
    {
        var large = random.Next(380, 491);
        var middle = random.Next(251, (1000 - large) / 2 + 1);
        return [Length.FromTenths(large), Length.FromTenths(middle), Length.FromTenths(1000 - large - middle)];
    }
}
