using System.Diagnostics;
using System.Globalization;
using System.Text;
using KitWorks.Statics.Loads;

namespace KitWorks.Statics.Tests;

/// <summary>
/// CalculiX, a general finite-element program, as an independent check: T3D2 elements, which are hinged at both ends. The axial force of an
/// element is its area times the trace of its stress, since Poisson's ratio is zero and the stress uniaxial.
/// </summary>
static class Calculix
{
    public sealed record Answer(double[] Forces, double[][] Displacements);

    public static Answer Solve(TrussModel model, Section section, IReadOnlyList<NodeLoad> loads) =>
        Read(Run(Input(model, loads, string.Create(CultureInfo.InvariantCulture,
            $"*MATERIAL,NAME=M\n*ELASTIC\n{section.ModulusMPa:r},0.\n*SOLID SECTION,ELSET=BARS,MATERIAL=M\n{section.AreaMm2:r}\n0.123,0.456,0.789\n"))), model, section);

    static string[] Run(string input)
    {
        var folder = Directory.CreateTempSubdirectory("kitworks-ccx");
        try
        {
            File.WriteAllText(Path.Combine(folder.FullName, "truss.inp"), input);
            using var run = Process.Start(new ProcessStartInfo("ccx", ["-i", "truss"]) { WorkingDirectory = folder.FullName, RedirectStandardOutput = true })!;
            run.StandardOutput.ReadToEnd();
            run.WaitForExit();
            return File.ReadAllLines(Path.Combine(folder.FullName, "truss.dat"));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Skips the calling test where CalculiX is not installed; fails it where the environment says CI.</summary>
    public static void Require()
    {
        var here = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(p => File.Exists(Path.Combine(p, "ccx")));
        if (here) return;
        if (Environment.GetEnvironmentVariable("CI") == "true") Assert.Fail("CI must install CalculiX (Debian package calculix-ccx).");
        Assert.Skip("CalculiX (ccx) is not installed.");
    }

    static string Input(TrussModel model, IReadOnlyList<NodeLoad> loads, string material)
    {
        var text = new StringBuilder("*NODE,NSET=ALL\n");
        for (var n = 0; n < model.Nodes.Length; n++) text.Append(CultureInfo.InvariantCulture, $"{n + 1},{model.Nodes[n].X:F9},{model.Nodes[n].Y:F9},{model.Nodes[n].Z:F9}\n");
        text.Append("*ELEMENT,TYPE=T3D2,ELSET=BARS\n");
        for (var m = 0; m < model.Members.Length; m++) text.Append(CultureInfo.InvariantCulture, $"{m + 1},{model.Members[m].From + 1},{model.Members[m].To + 1}\n");
        text.Append(material).Append("*BOUNDARY\n");
        foreach (var s in model.Supports)
            foreach (var (held, axis) in new[] { (s.X, 1), (s.Y, 2), (s.Z, 3) })
                if (held) text.Append(CultureInfo.InvariantCulture, $"{s.Node + 1},{axis},{axis}\n");
        text.Append("*STEP\n*STATIC\n*CLOAD\n");
        foreach (var l in loads)
            foreach (var (force, axis) in new[] { (l.XN, 1), (l.YN, 2), (l.ZN, 3) })
                if (force != 0) text.Append(CultureInfo.InvariantCulture, $"{l.Node + 1},{axis},{force:r}\n");
        return text.Append("*NODE PRINT,NSET=ALL\nU\n*EL PRINT,ELSET=BARS\nS\n*END STEP\n").ToString();
    }

    static Answer Read(string[] lines, TrussModel model, Section section)
    {
        var forces = new double[model.Members.Length];
        var points = new int[model.Members.Length];
        var displacements = Enumerable.Range(0, model.Nodes.Length).Select(_ => new double[3]).ToArray();
        var stresses = false;
        foreach (var line in lines)
        {
            if (line.Contains("stresses", StringComparison.Ordinal)) stresses = true;
            var parts = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (parts.Length == 0 || !int.TryParse(parts[0], CultureInfo.InvariantCulture, out var number)) continue;
            var values = parts[(stresses ? 2 : 1)..].Select(p => double.Parse(p, CultureInfo.InvariantCulture)).ToArray();
            if (!stresses) displacements[number - 1] = values;
            else
            {
                forces[number - 1] += section.AreaMm2 * (values[0] + values[1] + values[2]);
                points[number - 1]++;
            }
        }
        return new([.. forces.Zip(points, (f, n) => f / n)], displacements);
    }
}
