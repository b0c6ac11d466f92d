using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;

namespace KitWorks.Geometry.Tests.Outside;

/// <summary>Our spheres against those of others.</summary>
public sealed class OutsideTests
{
    static string Folder([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;

    [Fact]
    public void WholeSphere_WhenClass1_HasTheVerticesOfThree()
    {
        // three-vertices.mjs made the table; it says how.
        var rows = File.ReadLines(Path.Combine(Folder(), "three-vertices.csv")).Where(l => !l.StartsWith('#')).Select(l => l.Split(','))
            .GroupBy(c => (Solid: Enum.Parse<BaseSolid>(c[0], ignoreCase: true), Frequency: int.Parse(c[1]), All: int.Parse(c[2]))).ToList();
        Assert.Equal(24, rows.Count);
        foreach (var design in rows)
        {
            var sphere = GeodesicSphere.Of(design.Key.Solid, Lattice.Class1(design.Key.Frequency), Up.Vertex);
            Assert.Equal(design.Key.All, sphere.Net.Count);
            var sector = sphere.Net.Points.Where(p => InSector(p, Solid.Counts(design.Key.Solid).Ways)).ToList();
            Assert.Equal(design.Count(), sector.Count);
            foreach (var row in design)
            {
                var three = new Point3(Number(row[3]), Number(row[4]), Number(row[5]));
                Assert.Contains(sector, p => p.DistanceTo(three) < 2e-6);
            }
        }

        static bool InSector(Point3 p, int ways)
        {
            if (Math.Sqrt(p.X * p.X + p.Y * p.Y) < 1e-5) return true;
            return (Math.Atan2(p.Y, p.X) + 2 * Math.PI + 1e-5) % (2 * Math.PI) < 2 * Math.PI / ways;
        }

        static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
    }

    [Theory]
    [InlineData(1, 0), InlineData(2, 0), InlineData(3, 0), InlineData(8, 0), InlineData(16, 0), InlineData(1, 1), InlineData(3, 3), InlineData(2, 1), InlineData(1, 2), InlineData(5, 3)]
    public void WholeSphere_WhenIcosahedron_IsTheConvexHullOfItsNodes(int b, int c)
    {
        // qhull 2020.2 was what this was written against.
        Assert.SkipUnless(File.Exists("/usr/bin/qconvex"), "qhull is not installed (Debian: qhull-bin)");
        var sphere = GeodesicSphere.Of(BaseSolid.Icosahedron, new(b, c), Up.Vertex);

        var hull = Hull(sphere.Net.Points);

        var frame = DomeFrame.WholeSphere(Designs.Dome(BaseSolid.Icosahedron, new(b, c), Up.Vertex, "1/2"), 1);
        Assert.Equal(hull.Order(), frame.Panels.Select(p => MeasuredNet.Ascending(p.A, p.B, p.C)).Order());
    }

    static List<(int, int, int)> Hull(Point3[] points)
    {
        using var qhull = Process.Start(new ProcessStartInfo("/usr/bin/qconvex", "i") { RedirectStandardInput = true, RedirectStandardOutput = true })!;
        qhull.StandardInput.Write(FormattableString.Invariant($"3\n{points.Length}\n"));
        foreach (var p in points) qhull.StandardInput.Write(FormattableString.Invariant($"{p.X:R} {p.Y:R} {p.Z:R}\n"));
        qhull.StandardInput.Close();
        var facets = qhull.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1)
            .Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(int.Parse).ToArray());
        return [.. facets.Select(f => MeasuredNet.Ascending(f[0], f[1], f[2]))];
    }
}
