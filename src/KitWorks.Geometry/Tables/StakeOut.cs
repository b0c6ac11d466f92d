using System.Collections.Immutable;

namespace KitWorks.Geometry;

/// <summary>Where one base node stands.</summary>
/// <param name="Node">The node's id.</param>
/// <param name="XMm">Along the long axis, from the middle.</param>
/// <param name="YMm">Across it.</param>
/// <param name="HeightMm">Over the lowest base node: how much to pack under it where the base ring is not planar.</param>
public readonly record struct Stake(int Node, double XMm, double YMm, double HeightMm);

/// <summary>A distance on the ground between two base nodes, as a level tape measures it.</summary>
/// <param name="From">A base node's id.</param>
/// <param name="To">Another's.</param>
/// <param name="Mm">The distance, in millimetres.</param>
public readonly record struct Taping(int From, int To, double Mm);

/// <summary>How to lay out a frame's base with pegs and a tape.</summary>
/// <param name="Stakes">The base nodes in order around the ring.</param>
/// <param name="Sides">From each to the next.</param>
/// <param name="Diagonals">
/// From the two ends of the baseline, the first stake and the one half way around the ring, to every stake that is not next to them: with its
/// two distances each stake has its place.
/// </param>
/// <param name="Checks">Between opposite stakes that are not on the baseline: they are right when the ring is square.</param>
/// <param name="Widths">
/// For an oblong, straight across from side to side, from the middle outwards. Common practice, no source: such a shelter tends to
/// spread at mid-length; check the middle widths, and pull them in before staking.
/// </param>
public sealed record StakeOut(
    ImmutableArray<Stake> Stakes, ImmutableArray<Taping> Sides, ImmutableArray<Taping> Diagonals, ImmutableArray<Taping> Checks, ImmutableArray<Taping> Widths)
{
    /// <summary>How near two x must be to count as straight across, in millimetres; symmetry makes them equal but for rounding.</summary>
    const double AcrossMm = 1e-3;

    /// <summary>
    /// The place in <see cref="Stakes"/> of the baseline's far end; the near end is the first. Half way round a circle the two tapes cross
    /// squarely at every other stake (Thales), which is where a reading's error moves a stake least.
    /// </summary>
    public int FarEnd => Stakes.Length / 2;

    /// <summary>The distance on level ground between two stakes, by their places in <see cref="Stakes"/>, in millimetres.</summary>
    public double BetweenMm(int one, int other)
    {
        var (p, q) = (Stakes[one], Stakes[other]);
        return Math.Sqrt((p.XMm - q.XMm) * (p.XMm - q.XMm) + (p.YMm - q.YMm) * (p.YMm - q.YMm));
    }

    /// <summary>The stake-out of a frame.</summary>
    public static StakeOut Of(Frame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var ring = frame.Base;
        var n = ring.Length;
        var low = ring.Min(node => frame.Nodes[node].Position.Z);
        Taping Tape(int i, int j)
        {
            Point3 between = frame.Nodes[ring[j % n]].Position - frame.Nodes[ring[i % n]].Position;
            return new(ring[i % n], ring[j % n], Math.Sqrt(between.X * between.X + between.Y * between.Y));
        }
        bool Apart(int i, int j) => Math.Abs(i - j) > 1 && Math.Abs(i - j) < n - 1;
        var half = n / 2;
        return new(
            [.. ring.Select(node => frame.Nodes[node].Position).Select((p, i) => new Stake(ring[i], p.X, p.Y, p.Z - low))],
            [.. Enumerable.Range(0, n).Select(i => Tape(i, i + 1))],
            [.. Enumerable.Range(1, n - 1).Where(i => Apart(0, i)).Select(i => Tape(0, i)), .. Enumerable.Range(1, n - 1).Where(i => Apart(half, i)).Select(i => Tape(half, i))],
            [.. Enumerable.Range(1, half - 1).Where(i => i + half < n && Apart(i, i + half)).Select(i => Tape(i, i + half))],
            frame.Shelter is Oblong ? Across(frame) : []);
    }

    static ImmutableArray<Taping> Across(Frame frame) =>
        [.. from one in frame.Base
            from other in frame.Base
            let p = frame.Nodes[one].Position
            let q = frame.Nodes[other].Position
            where p.Y > q.Y && Math.Abs(p.X - q.X) < AcrossMm && Math.Abs(p.Y + q.Y) < AcrossMm
            orderby Math.Round(Math.Abs(p.X)), p.X
            select new Taping(one, other, p.Y - q.Y)];
}
