using KitWorks.Geometry;
using KitWorks.Statics.Loads;
using MathNet.Numerics.LinearAlgebra;

namespace KitWorks.Statics.Tests;

/// <summary>
/// Frames with stiff hubs by the twelve-by-twelve stiffness matrix of a beam that every textbook prints (J. S. Przemieniecki, Theory of Matrix Structural
/// Analysis, 1968, §5.6, without shear), in axes of the beam, turned, added up and solved dense by a general library.
/// </summary>
static class HandbookBeams
{
    public static Point3[] Solve(TrussModel model, Section section, double poissonRatio, IReadOnlyList<NodeLoad> loads)
    {
        var n = 6 * model.Nodes.Length;
        var k = Matrix<double>.Build.Dense(n, n);
        foreach (var (_, from, to) in model.Members)
        {
            var along = model.Nodes[to] - model.Nodes[from];
            var (turned, at) = (Turned(along, section, poissonRatio), new[] { 6 * from, 6 * to });
            for (var i = 0; i < 12; i++)
                for (var j = 0; j < 12; j++) k[at[i / 6] + i % 6, at[j / 6] + j % 6] += turned[i, j];
        }
        var f = Vector<double>.Build.Dense(n);
        foreach (var l in loads) (f[6 * l.Node], f[6 * l.Node + 1], f[6 * l.Node + 2]) = (f[6 * l.Node] + l.XN, f[6 * l.Node + 1] + l.YN, f[6 * l.Node + 2] + l.ZN);
        foreach (var s in model.Supports)
            foreach (var (held, axis) in new[] { (s.X, 0), (s.Y, 1), (s.Z, 2) })
                if (held)
                {
                    k.ClearRow(6 * s.Node + axis);
                    k.ClearColumn(6 * s.Node + axis);
                    k[6 * s.Node + axis, 6 * s.Node + axis] = 1;
                    f[6 * s.Node + axis] = 0;
                }
        var u = k.Solve(f);
        return [.. Enumerable.Range(0, model.Nodes.Length).Select(i => new Point3(u[6 * i], u[6 * i + 1], u[6 * i + 2]))];
    }

    static Matrix<double> Turned(Point3 along, Section section, double poissonRatio)
    {
        var length = along.Norm;
        var x = along * (1 / length);
        var side = x.Cross(Math.Abs(x.Z) < 0.8 ? new(0, 0, 1) : new(1, 0, 0));
        var y = side * (1 / side.Norm);
        var z = x.Cross(y);
        var turn = Matrix<double>.Build.Dense(12, 12);
        for (var block = 0; block < 12; block += 3)
            foreach (var (row, axis) in new[] { (0, x), (1, y), (2, z) })
                (turn[block + row, block], turn[block + row, block + 1], turn[block + row, block + 2]) = (axis.X, axis.Y, axis.Z);
        return turn.Transpose() * Local(length, section, poissonRatio) * turn;
    }

    static Matrix<double> Local(double length, Section section, double poissonRatio)
    {
        var (e, i) = (section.ModulusMPa, section.SecondMomentMm4);
        var (ea, gj) = (e * section.AreaMm2 / length, e / (2 * (1 + poissonRatio)) * 2 * i / length);
        var (b12, b6, b4, b2) = (12 * e * i / (length * length * length), 6 * e * i / (length * length), 4 * e * i / length, 2 * e * i / length);
        return Matrix<double>.Build.DenseOfArray(new[,]
        {
            { ea, 0, 0, 0, 0, 0, -ea, 0, 0, 0, 0, 0 },
            { 0, b12, 0, 0, 0, b6, 0, -b12, 0, 0, 0, b6 },
            { 0, 0, b12, 0, -b6, 0, 0, 0, -b12, 0, -b6, 0 },
            { 0, 0, 0, gj, 0, 0, 0, 0, 0, -gj, 0, 0 },
            { 0, 0, -b6, 0, b4, 0, 0, 0, b6, 0, b2, 0 },
            { 0, b6, 0, 0, 0, b4, 0, -b6, 0, 0, 0, b2 },
            { -ea, 0, 0, 0, 0, 0, ea, 0, 0, 0, 0, 0 },
            { 0, -b12, 0, 0, 0, -b6, 0, b12, 0, 0, 0, -b6 },
            { 0, 0, -b12, 0, b6, 0, 0, 0, b12, 0, b6, 0 },
            { 0, 0, 0, -gj, 0, 0, 0, 0, 0, gj, 0, 0 },
            { 0, 0, -b6, 0, b2, 0, 0, 0, b6, 0, b4, 0 },
            { 0, b6, 0, 0, 0, b2, 0, -b6, 0, 0, 0, b4 },
        });
    }
}
