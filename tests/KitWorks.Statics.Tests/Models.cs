using KitWorks.Geometry;

namespace KitWorks.Statics.Tests;

/// <summary>Small structures with closed forms.</summary>
static class Models
{
    /// <summary>One-inch schedule 40 PVC: ASTM D1785 outside diameter 33.40 mm and wall 3.38 mm, 0.32 lb/ft; modulus as the trade takes it.</summary>
    public static Section Pvc { get; } = new() { AreaMm2 = 318.6, SecondMomentMm4 = 36355, ModulusMPa = 2900, MassKgPerM = 0.476 };

    /// <summary>An apex (node 0) at a height, <paramref name="legs"/> feet on a circle, and a ring of struts between neighbouring feet.</summary>
    /// <remarks>Struts 0 to legs − 1 are the legs, the ring follows.</remarks>
    public static TrussModel Pyramid(int legs, double radiusMm, double heightMm, BaseSupport support, params int[] without)
    {
        var pinned = support == BaseSupport.Pinned;
        var feet = Enumerable.Range(0, legs).Select(i => 2 * Math.PI * i / legs).Select(a => new Point3(radiusMm * Math.Cos(a), radiusMm * Math.Sin(a), 0));
        var members = Enumerable.Range(1, legs).Select(i => new Member(i - 1, 0, i))
            .Concat(Enumerable.Range(1, legs).Select(i => new Member(legs + i - 1, i, i % legs + 1)));
        var model = TrussModel.Of([new(0, 0, heightMm), .. feet], members.Where(m => !without.Contains(m.Strut)),
            Enumerable.Range(1, legs).Select(i => new Support(i, pinned, pinned, true))).Value;
        return pinned ? model : model.Sliding();
    }

    public static TrussAnalysis Analysed(this TrussModel model) => Truss.Of(model, Pvc).Value;

    public static void Near(double expected, double actual, double relative = 1e-9) =>
        Assert.True(Math.Abs(expected - actual) <= relative * Math.Max(1, Math.Abs(expected)), $"{actual:r} is not near {expected:r}.");
}
