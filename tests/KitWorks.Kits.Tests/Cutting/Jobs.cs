using KitWorks.Geometry;
using KitWorks.Kits.Cutting;

namespace KitWorks.Kits.Tests.Cutting;

/// <summary>Short ways to write jobs down.</summary>
static class Jobs
{
    public static Length Mm(double millimetres) => Length.FromMillimetres(millimetres);

    /// <summary>Pieces coded S1, S2, … of one stock length, kerf 3 mm.</summary>
    public static CutJob Of(double stockMm, params (double Mm, int Count)[] pieces) => new()
    {
        Pieces = [.. pieces.Select((p, i) => new CutPiece($"S{i + 1}", Mm(p.Mm), p.Count))],
        Stock = [new("PIPE", Mm(stockMm))],
        Kerf = Mm(3),
    };
}
