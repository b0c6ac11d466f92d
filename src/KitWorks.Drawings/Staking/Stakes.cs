using KitWorks.Drawings.Paper;
using KitWorks.Geometry;

namespace KitWorks.Drawings.Staking;

/// <summary>A measure between two stakes that squares the ring.</summary>
/// <param name="From">A stake's number, from 1.</param>
/// <param name="To">Another's.</param>
/// <param name="IsWidth">Whether it goes straight across an oblong, which tends to spread there.</param>
readonly record struct Check(int From, int To, bool IsWidth);

/// <summary>The stakes of a base ring, numbered from 1 counter-clockwise seen from above, measured on level ground.</summary>
sealed class Stakes
{
    /// <summary>More diagonals than this from one stake cannot be told apart; the table has them all.</summary>
    const int MostDiagonals = 12;

    readonly StakeOut layout;
    readonly bool[] open;

    public Stakes(Frame frame)
    {
        layout = StakeOut.Of(frame);
        var sides = frame.Struts.Select(s => (s.From, s.To)).ToHashSet();
        open = [.. layout.Sides.Select(s => !sides.Contains((Math.Min(s.From, s.To), Math.Max(s.From, s.To))))];
        Checks = [.. Diagonals(), .. Widths()];
    }

    public int Count => layout.Stakes.Length;

    /// <summary>The stake that the second tape is hooked to.</summary>
    public int Second => layout.FarEnd + 1;

    public Check[] Checks { get; }

    /// <summary>Where a stake is on the ground, in millimetres from the middle, y up.</summary>
    public Spot At(int stake) => new(layout.Stakes[stake - 1].XMm, layout.Stakes[stake - 1].YMm);

    /// <summary>Over the lowest stake.</summary>
    public double HeightOf(int stake) => layout.Stakes[stake - 1].HeightMm;

    public double Between(int one, int other) => layout.BetweenMm(one - 1, other - 1);

    public double FromMiddle(int stake) => At(stake).Length;

    /// <summary>Whether no strut lies between a stake and the next: a door is there.</summary>
    public bool IsOpen(int stake) => open[stake - 1];

    public int Next(int stake) => stake % Count + 1;

    public IEnumerable<int> All => Enumerable.Range(1, Count);

    /// <summary>From stake 1 to the others; with the sides, the n − 3 of them fix the ring.</summary>
    IEnumerable<Check> Diagonals()
    {
        var step = Math.Max(1, (int)Math.Ceiling((Count - 3) / (double)MostDiagonals));
        for (var stake = 3; stake < Count; stake += step) yield return new(1, stake, IsWidth: false);
    }

    /// <summary>Straight across, at the stakes nearest to mid-length.</summary>
    IEnumerable<Check> Widths() => layout.Widths.Take(3).Select(w => new Check(NumberOf(w.From), NumberOf(w.To), IsWidth: true));

    int NumberOf(int node) => layout.Stakes.Select(s => s.Node).ToList().IndexOf(node) + 1;
}
