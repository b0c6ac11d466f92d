using KitWorks.Geometry;

namespace KitWorks.Api.Contract;

/// <summary>How to lay out a base with pegs and a tape. Distances on level ground, between node centres; stakes are numbered from 1 around the ring.</summary>
/// <param name="Stakes">Every base node.</param>
/// <param name="Baseline">The two stakes that the tapes are hooked to, and how far apart they stand.</param>
/// <param name="Sides">From each stake to the next.</param>
/// <param name="Diagonals">From the baseline's two ends: with its two distances each stake has its place.</param>
/// <param name="Checks">Between opposite stakes: right when the ring is square.</param>
/// <param name="Widths">For an oblong, straight across, from mid-length outwards. Such a shelter tends to spread there: check, and pull in before staking.</param>
sealed record StakeOutAnswer(
    IEnumerable<StakeAnswer> Stakes, TapingAnswer Baseline, IEnumerable<TapingAnswer> Sides, IEnumerable<TapingAnswer> Diagonals,
    IEnumerable<TapingAnswer> Checks, IEnumerable<TapingAnswer> Widths)
{
    public static StakeOutAnswer Of(Frame frame)
    {
        var layout = StakeOut.Of(frame);
        var numberOf = layout.Stakes.Index().ToDictionary(s => s.Item.Node, s => s.Index + 1);
        IEnumerable<TapingAnswer> Numbered(IEnumerable<Taping> tapings) => tapings.Select(t => new TapingAnswer(numberOf[t.From], numberOf[t.To], Math.Round(t.Mm, 3)));
        return new(
            layout.Stakes.Select((s, i) => new StakeAnswer(i + 1, s.Node, Math.Round(s.XMm, 3), Math.Round(s.YMm, 3), Math.Round(s.HeightMm, 3))),
            new(1, layout.FarEnd + 1, Math.Round(layout.BetweenMm(0, layout.FarEnd), 3)),
            Numbered(layout.Sides), Numbered(layout.Diagonals), Numbered(layout.Checks), Numbered(layout.Widths));
    }
}

/// <summary>Where a base node stands: its number around the ring and in the frame, its place from the middle, and its height over the lowest.</summary>
sealed record StakeAnswer(int Stake, int Node, double XMm, double YMm, double HeightMm);

/// <summary>A distance between two stakes.</summary>
sealed record TapingAnswer(int From, int To, double DistanceMm);

/// <summary>How to cut the cover of one kind of panel; every cut side lies the seam allowance outside its side, corners keep their angles.</summary>
/// <param name="Code">The panel type.</param>
/// <param name="Count">How many.</param>
/// <param name="SidesMm">The sides on the frame, between node centres, from the shortest.</param>
/// <param name="AnglesDegrees">The corner opposite to each side.</param>
/// <param name="CutSidesMm">The sides of the cut triangle.</param>
/// <param name="CutAreaM2">Its area.</param>
sealed record CoverNetAnswer(string Code, int Count, IEnumerable<double> SidesMm, IEnumerable<double> AnglesDegrees, IEnumerable<double> CutSidesMm, double CutAreaM2)
{
    public static CoverNetAnswer Of(CoverNet net) => new(
        $"P{net.Kind + 1}", net.Count, net.SidesMm.Select(s => Math.Round(s, 3)), net.AnglesDegrees.Select(a => Math.Round(a, 4)),
        net.CutSidesMm.Select(s => Math.Round(s, 3)), Math.Round(net.CutAreaM2, 6));
}
