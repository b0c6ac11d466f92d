using KitWorks.Geometry;

namespace KitWorks.Statics.Solving;

/// <summary>A straight round beam by its six ways to deform; each has a stiffness and a row that measures it from the twelve motions of the ends.</summary>
/// <remarks>Motions: shift and turn (as an arc at the arm) of the first end, then of the second.</remarks>
sealed class Beam
{
    readonly (double Stiffness, double[] Row)[] modes;

    public Beam(Point3 along, Section section, double poissonRatio, double armMm)
    {
        var length = along.Norm;
        var d = along * (1 / length);
        var (e, i) = (section.ModulusMPa, section.SecondMomentMm4);
        var across = Math.Abs(d.X) < 0.6 ? new Point3(1, 0, 0) : new(0, 1, 0);
        var a = d.Cross(across) * (1 / d.Cross(across).Norm);
        var turn = 1 / armMm;
        modes =
        [
            (e * section.AreaMm2 / length, Row(d * -1, default, d, default)),
            (e / (2 * (1 + poissonRatio)) * 2 * i / length, Row(default, d * -turn, default, d * turn)),
            Even(a), Odd(a), Even(d.Cross(a)), Odd(d.Cross(a)),
        ];

        // The ends turn against each other about an axis.
        (double, double[]) Even(Point3 axis) => (e * i / length, Row(default, axis * -turn, default, axis * turn));

        // Both ends turn against the chord, whose own turn is d × (u₂ − u₁) / L.
        (double, double[]) Odd(Point3 axis) => (3 * e * i / length,
            Row(axis.Cross(d) * (2 / length), axis * turn, axis.Cross(d) * (-2 / length), axis * turn));
    }

    public double[,] Stiffness()
    {
        var k = new double[12, 12];
        foreach (var (stiffness, row) in modes)
            for (var i = 0; i < 12; i++)
                for (var j = 0; j < 12; j++) k[i, j] += stiffness * row[i] * row[j];
        return k;
    }

    public BeamForce Force(int strut, ReadOnlySpan<double> motions)
    {
        Span<double> f = stackalloc double[6];
        for (var m = 0; m < 6; m++)
        {
            for (var i = 0; i < 12; i++) f[m] += modes[m].Row[i] * motions[i];
            f[m] *= modes[m].Stiffness;
        }
        // An end's moment is the odd bend's less, or plus, the even one's.
        var first = Math.Sqrt(Math.Pow(f[3] - f[2], 2) + Math.Pow(f[5] - f[4], 2));
        var second = Math.Sqrt(Math.Pow(f[3] + f[2], 2) + Math.Pow(f[5] + f[4], 2));
        return new(strut, f[0], Math.Max(first, second), f[1]);
    }

    static double[] Row(Point3 shift1, Point3 turn1, Point3 shift2, Point3 turn2) =>
        [shift1.X, shift1.Y, shift1.Z, turn1.X, turn1.Y, turn1.Z, shift2.X, shift2.Y, shift2.Z, turn2.X, turn2.Y, turn2.Z];
}
