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

    readonly Node[] nodes;
    readonly bool[] open;

    public Stakes(Frame frame)
    {
        nodes = [.. frame.Base.Select(id => frame.Nodes[id])];
        var sides = frame.Struts.Select(s => (s.From, s.To)).ToHashSet();
        open = [.. nodes.Select((n, i) => (n.Id, Next: nodes[(i + 1) % Count].Id)).Select(s => !sides.Contains((Math.Min(s.Id, s.Next), Math.Max(s.Id, s.Next))))];
        Second = 1 + (Count + 1) / 3;
        Checks = [.. Diagonals(), .. frame.RadiusMm is null ? Widths() : []];
    }

    public int Count => nodes.Length;

    /// <summary>The stake that the second tape is hooked to; a third of the way round, so that the two tapes cross well.</summary>
    public int Second { get; }

    public Check[] Checks { get; }

    /// <summary>Where a stake is on the ground, in millimetres from the middle, y up.</summary>
    public Spot At(int stake) => new(nodes[stake - 1].Position.X, nodes[stake - 1].Position.Y);

    public double HeightOf(int stake) => nodes[stake - 1].Position.Z;

    public double Between(int one, int other) => At(one).DistanceTo(At(other));

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
    IEnumerable<Check> Widths()
    {
        const double level = 1;
        var across = from a in All
                     from b in All
                     where At(a).Y < -level && At(b).Y > level && Math.Abs(At(a).X - At(b).X) < level && Math.Abs(At(a).Y + At(b).Y) < level
                     orderby Math.Round(Math.Abs(At(a).X)), a
                     select new Check(a, b, IsWidth: true);
        return across.Take(3);
    }
}
