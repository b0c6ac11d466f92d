using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Statics.Checks;
using Stake = KitWorks.Kits.Catalog.Stake;

namespace KitWorks.Kits.Standing;

/// <summary>The stakes of a kit: what the hub system gives each base hub, and more where the screening asks for more, up to the most that the shop puts at one hub.</summary>
sealed class KitStakes
{
    readonly Stake stake;
    readonly int most;
    readonly List<(int Number, Anchor Anchor)> asking;

    public KitStakes(Frame frame, Stake stake, ScreeningReport report, int most)
    {
        (this.stake, this.most) = (stake, Math.Max(stake.PerBaseHub, most));
        var needs = report.Anchors.ToDictionary(a => a.Node);
        asking = [.. frame.Base.Index().Where(b => needs.TryGetValue(b.Item, out var a) && a.Stakes > stake.PerBaseHub).Select(b => (b.Index + 1, needs[b.Item]))];
        At = [.. frame.Base.Select(node => Math.Clamp(needs.TryGetValue(node, out var a) ? a.Stakes : 0, stake.PerBaseHub, this.most))];
    }

    /// <summary>How many go to each base hub, in the order of the frame's base.</summary>
    public ImmutableArray<int> At { get; }

    /// <summary>Why there are more than the hub system asks for, and where even those do not do.</summary>
    public IEnumerable<Warning> Warnings(string loadSet)
    {
        if (asking.Count == 0) yield break;
        var (number, anchor) = asking.MaxBy(a => (a.Anchor.Stakes, a.Anchor.UpliftN + a.Anchor.SlidingN));
        var need = $"base hub {number} of the stake-out is pulled up with {anchor.UpliftN:#,0} N and pushed sideways with {anchor.SlidingN:#,0} N beyond friction, and asks for {anchor.Stakes}";
        var given = At.Sum();
        var usual = At.Length * stake.PerBaseHub;
        if (given > usual)
            yield return new("statics.more-stakes",
                $"The kit has {Count(given, "stake")} instead of {usual}, up to {At.Max()} at a hub: under {anchor.LoadCase} of the load set '{loadSet}' {need}. Ground differs: pull one to know. {Choice.Defer}");
        var lacking = asking.Where(a => a.Anchor.Stakes > most).ToList();
        if (lacking.Count > 0)
            yield return new("statics.stakes",
                $"In the screening stakes are not enough for {Count(lacking.Count, "base hub")} of {At.Length}: under {anchor.LoadCase} of the load set '{loadSet}' {need}; {most} at a hub are the most that the kit has. "
                + $"Anchor these hubs in another way, such as screw anchors, ballast or a footing. {Choice.Defer}");
    }

    static string Count(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";
}
