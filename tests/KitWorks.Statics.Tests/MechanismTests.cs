using CsCheck;
using KitWorks.Geometry;
using KitWorks.Statics.Loads;
using MathNet.Numerics.LinearAlgebra;
using static KitWorks.Statics.Tests.Models;

namespace KitWorks.Statics.Tests;

public class MechanismTests
{
    [Fact]
    public void Mechanisms_WhenHubHangsOnTwoStruts_SaysWhichAndWhy()
    {
        var analysis = Pyramid(3, 500, 800, BaseSupport.Pinned, without: 1).Analysed();

        var mechanism = Assert.Single(analysis.Mechanisms);
        Assert.Equal(0, Assert.Single(mechanism.Motions).Node);
        Assert.Contains("Hub 0 has too few struts", mechanism.Detail, StringComparison.Ordinal);
        var refusal = analysis.Solve([new(0, 0, 0, -1)]).Refusal!;
        Assert.Equal("statics.mechanism", refusal.Code);
        Assert.Contains("too few struts", refusal.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Mechanisms_WhenHubIsFlat_SaysItMovesOutOfThePlane()
    {
        var mechanism = Assert.Single(Pyramid(6, 500, 0, BaseSupport.Pinned).Analysed().Mechanisms);
        Assert.Contains("up and down", mechanism.Detail, StringComparison.Ordinal);
        Assert.Contains("one plane", mechanism.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Mechanisms_WhenSlidingRingIsOpen_SaysToStakeOrBrace()
    {
        var mechanism = Assert.Single(Pyramid(4, 500, 800, BaseSupport.Sliding, without: 5).Analysed().Mechanisms);
        Assert.Contains("base ring can change its shape", mechanism.Detail, StringComparison.Ordinal);
        Assert.Empty(Pyramid(4, 500, 800, BaseSupport.Pinned, without: 5).Analysed().Mechanisms);
    }

    [Fact]
    public void Mechanisms_WhenNothingHoldsTheWhole_CountsSixRigidMotions()
    {
        var tetrahedron = Pyramid(3, 500, 800, BaseSupport.Pinned);
        var model = TrussModel.Of(tetrahedron.Nodes, tetrahedron.Members, [new(0, false, false, false)]).Value;
        Assert.Equal(6, model.Analysed().Mechanisms.Length);
    }

    /// <summary>The count against the rank that a dense singular value decomposition finds, and the motions against the struts' lengths.</summary>
    [Fact]
    public void Mechanisms_OfRandomTrusses_AgreeWithSingularValues() =>
        Gen.Select(Gen.Double[-1000, 1000].Array[30], Gen.Select(Gen.Int[0, 9], Gen.Int[0, 9]).Array[8, 30]).Sample((xyz, pairs) =>
        {
            Point3[] nodes = [.. xyz.Chunk(3).Select(c => new Point3(Math.Round(c[0]), Math.Round(c[1]), Math.Round(c[2])))];
            var members = pairs.Where(p => nodes[p.Item1].DistanceTo(nodes[p.Item2]) > 300).Select((p, i) => new Member(i, p.Item1, p.Item2)).ToArray();
            var reached = members.SelectMany(m => new[] { m.From, m.To }).Distinct().ToArray();
            if (reached.Length < 4) return;
            var supports = reached.Take(3).Select(n => new Support(n, true, true, true)).ToArray();
            var analysis = TrussModel.Of(nodes, members, supports).Value.Analysed();

            var free = reached.Skip(3).ToList();
            var stretch = Matrix<double>.Build.Dense(members.Length, 3 * free.Count);
            foreach (var (m, row) in members.Select((m, i) => (m, i)))
            {
                var d = (nodes[m.To] - nodes[m.From]) * (1 / nodes[m.To].DistanceTo(nodes[m.From]));
                foreach (var (node, sign) in new[] { (m.From, -1.0), (m.To, 1.0) })
                {
                    if (free.IndexOf(node) is not (>= 0 and var at)) continue;
                    stretch[row, 3 * at] += sign * d.X;
                    stretch[row, 3 * at + 1] += sign * d.Y;
                    stretch[row, 3 * at + 2] += sign * d.Z;
                }
            }
            var singular = stretch.Svd(false).S;
            if (singular.Any(s => s is > 1e-9 and < 0.03)) return;
            Assert.Equal(3 * free.Count - singular.Count(s => s >= 0.03), analysis.Mechanisms.Length);
            foreach (var motions in analysis.Mechanisms.Select(m => m.Motions.ToDictionary(n => n.Node, n => n.Direction)))
                foreach (var m in members)
                    Assert.InRange((nodes[m.To] - nodes[m.From]).Dot(motions.GetValueOrDefault(m.To) - motions.GetValueOrDefault(m.From)) / nodes[m.To].DistanceTo(nodes[m.From]), -1e-3, 1e-3);
        }, iter: 1000);
}
