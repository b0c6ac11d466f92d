using System.Diagnostics;
using System.Numerics;
using System.Text.Json;
using KitWorks.Geometry;
using SharpGLTF.Schema2;

namespace KitWorks.Drawings.Tests;

public class FrameModelTests
{
    [Theory]
    [InlineData(1, "rows:2", false)]
    [InlineData(3, "5/8", true)]
    [InlineData(16, "1/2", false)]
    public async Task ToGlb_ForKhronosValidator_HasNoErrorsOrWarnings(int frequency, string cut, bool withCover)
    {
        var folder = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "../../../gltf"));
        if (!Directory.Exists(Path.Combine(folder, "node_modules", "gltf-validator")))
        {
            const string remedy = "gltf-validator is not installed: run npm ci in tests/KitWorks.Drawings.Tests/gltf.";
            if (Environment.GetEnvironmentVariable("CI") == "true") Assert.Fail(remedy);
            Assert.Skip(remedy);
        }
        var frame = Designs.Dome(frequency, cut);
        var file = Path.GetTempFileName();
        try
        {
            await File.WriteAllBytesAsync(file, FrameModel.ToGlb(frame, Designs.TypesOf(frame), new() { WithCover = withCover }), TestContext.Current.CancellationToken);
            using var node = Process.Start(new ProcessStartInfo("node", ["validate.mjs", file]) { WorkingDirectory = folder, RedirectStandardOutput = true })!;
            using var report = JsonDocument.Parse(await node.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken));
            var issues = report.RootElement.GetProperty("issues");
            Assert.True(issues.GetProperty("numErrors").GetInt32() + issues.GetProperty("numWarnings").GetInt32() == 0, issues.ToString());
            Assert.Equal("2.0", report.RootElement.GetProperty("info").GetProperty("version").GetString());
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void ToGlb_OfDome_HasANodeAStrutTypeInMetresWithYUp()
    {
        var frame = Designs.Dome(3, "5/8");
        var types = Designs.TypesOf(frame);
        var model = ModelRoot.ParseGLB(FrameModel.ToGlb(frame, types, new() { StrutDiameter = Length.FromMillimetres(30) }));

        Assert.Equal(["S1 orange", "S2 sky blue", "S3 reddish purple", "Hubs"], model.LogicalNodes.Select(n => n.Name));
        foreach (var (node, type) in model.LogicalNodes.Zip(types)) Assert.Equal(type.Count * 20, Positions(node).Count);
        var hubs = Positions(model.LogicalNodes[^1]);
        Assert.Equal(frame.Nodes.Length * 18, hubs.Count);
        Assert.Equal(frame.Nodes.Max(n => n.Position.Z) / 1000 + 0.0255, hubs.Max(p => p.Y), 4);
        Assert.Equal(frame.Nodes.Max(n => n.Position.X) / 1000 + 0.0255, hubs.Max(p => p.X), 4);
    }

    [Fact]
    public void ToGlb_OfTubesAndHubs_HasFacesThatLookOutwards()
    {
        var frame = Designs.Dome(2, "1/2");
        var model = ModelRoot.ParseGLB(FrameModel.ToGlb(frame, options: new() { WithCover = true }));
        foreach (var node in model.LogicalNodes)
        {
            var primitive = node.Mesh.Primitives[0];
            var (positions, normals) = (Positions(node), primitive.GetVertexAccessor("NORMAL").AsVector3Array());
            foreach (var (a, b, c) in primitive.GetTriangleIndices())
                Assert.True(Vector3.Dot(Vector3.Cross(positions[b] - positions[a], positions[c] - positions[a]), normals[a]) > 0, node.Name);
        }
    }

    [Fact]
    public void ToGlb_Twice_GivesTheSameBytes() =>
        Assert.Equal(FrameModel.ToGlb(Designs.Dome(4, "1/2")), FrameModel.ToGlb(Designs.Dome(4, "1/2")));

    [Fact]
    public void ToGlb_WithStrutsOfNoDiameter_Throws() =>
        Assert.Throws<ArgumentException>(() => FrameModel.ToGlb(Designs.Dome(2, "1/2"), options: new() { StrutDiameter = Length.Zero }));

    static IList<Vector3> Positions(SharpGLTF.Schema2.Node node) => node.Mesh.Primitives[0].GetVertexAccessor("POSITION").AsVector3Array();
}
