namespace KitWorks.Labels.Tests;

/// <summary>Writes every kind to a folder for a person to look at: set KITWORKS_LOOK to the folder.</summary>
public class Look
{
    [Fact]
    public void AtEverything()
    {
        if (Environment.GetEnvironmentVariable("KITWORKS_LOOK") is not { Length: > 0 } folder) return;
        Directory.CreateDirectory(folder);
        void Keep(string name, byte[] pdf) => File.WriteAllBytes(Path.Combine(folder, name + ".pdf"), pdf);
        foreach (var stock in LabelStock.BuiltIn) Keep($"bundles-{stock.Name}", Samples.Press.Pdf([Samples.Bundle, Samples.Hubs], stock).Value);
        File.WriteAllBytes(Path.Combine(folder, "bundle.png"), Samples.Press.Png(Samples.Bundle, 203).Value);
        File.WriteAllText(Path.Combine(folder, "bundle.svg"), Samples.Press.Svg(Samples.Bundle).Value);
    }
}
