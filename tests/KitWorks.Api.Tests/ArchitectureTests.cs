using System.Xml.Linq;
using NetArchTest.Rules;

namespace KitWorks.Api.Tests;

/// <summary>Which project may know which, and what.</summary>
public sealed class ArchitectureTests
{
    /// <summary>From the top down: each project knows only those below it.</summary>
    static readonly string[] Layers =
        ["KitWorks.Api", "KitWorks.Shop", "KitWorks.Labels", "KitWorks.Drawings", "KitWorks.Kits", "KitWorks.Statics", "KitWorks.Geometry"];

    static readonly string Source = Path.Combine(Root(), "src");

    [Fact]
    public void Projects_WhenListed_AreTheLayers()
    {
        var projects = Directory.GetDirectories(Source).Select(d => Path.GetFileName(d)).Where(n => File.Exists(ProjectFile(n))).ToList();

        Assert.NotEmpty(projects);
        Assert.All(projects, p => Assert.Contains(p, Layers));
    }

    [Theory]
    [InlineData("KitWorks.Shop")]
    [InlineData("KitWorks.Labels")]
    [InlineData("KitWorks.Drawings")]
    [InlineData("KitWorks.Kits")]
    [InlineData("KitWorks.Statics")]
    [InlineData("KitWorks.Geometry")]
    [InlineData("KitWorks.Api")]
    public void Project_WhenItRefersToOthers_RefersDownwards(string project)
    {
        if (!File.Exists(ProjectFile(project))) Assert.Skip($"There is no {project} yet.");
        var references = XDocument.Load(ProjectFile(project)).Descendants("ProjectReference")
            .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value.Replace('\\', '/'))).ToList();

        if (project != "KitWorks.Geometry") Assert.NotEmpty(references);
        Assert.All(references.Where(r => !(project == "KitWorks.Api" && r.StartsWith("KitWorks.Migrations.", StringComparison.Ordinal))),
            r => Assert.True(Array.IndexOf(Layers, r) > Array.IndexOf(Layers, project), $"{project} knows {r}."));
    }

    [Theory]
    [InlineData("KitWorks.Geometry")]
    [InlineData("KitWorks.Statics", "MathNet.Numerics")]
    [InlineData("KitWorks.Kits", "Google.OrTools", "Google.Protobuf", "MathNet.Numerics")]
    public void Project_WhenItIsPure_NeedsNoPackagesButMathematics(string project, params string[] packages)
    {
        if (!File.Exists(ProjectFile(project))) Assert.Skip($"There is no {project} yet.");

        Assert.All(XDocument.Load(ProjectFile(project)).Descendants("PackageReference").Select(p => p.Attribute("Include")!.Value), p => Assert.Contains(p, packages));
    }

    [Theory]
    [InlineData("KitWorks.Shop")]
    [InlineData("KitWorks.Labels")]
    [InlineData("KitWorks.Drawings")]
    [InlineData("KitWorks.Kits")]
    [InlineData("KitWorks.Geometry")]
    public void Assembly_WhenItIsNotTheApi_TouchesNoConfiguration(string assembly)
    {
        var types = Types.InAssembly(System.Reflection.Assembly.Load(assembly));
        Assert.NotEmpty(types.GetTypes());

        var result = types.ShouldNot().HaveDependencyOnAny(["Microsoft.Extensions.Configuration", .. WebNames(assembly)]).GetResult();

        Assert.True(result.IsSuccessful, string.Join(", ", result.FailingTypeNames ?? []));
        Assert.DoesNotContain(Directory.GetFiles(Path.Combine(Source, assembly), "*.cs", SearchOption.AllDirectories),
            f => File.ReadAllText(f).Contains("GetEnvironmentVariable", StringComparison.Ordinal));
    }

    /// <summary>Identity's users and the keys that seal cookies are tables, whatever their names begin with; the shop keeps them and knows no more of the web.</summary>
    static string[] WebNames(string assembly) => assembly != "KitWorks.Shop" ? ["Microsoft.AspNetCore"]
        : [.. ((string[])["Authentication", "Authorization", "Builder", "Hosting", "Http", "Mvc", "Razor", "Routing"]).Select(part => $"Microsoft.AspNetCore.{part}")];

    static string ProjectFile(string project) => Path.Combine(Source, project, project + ".csproj");

    static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "KitWorks.sln"))) folder = folder.Parent!;
        return folder.FullName;
    }
}
