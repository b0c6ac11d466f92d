using System.Net;
using System.Net.Sockets;
using UglyToad.PdfPig;

namespace KitWorks.Api.Tests.Verbs;

public sealed class DemoVerbTests : IDisposable
{
    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("kitworks-demo-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task Demo_WhenRunOnce_WritesItsPapersAndRunAgainStartsClean()
    {
        var (exit, output, error) = await KitWorksProcess.Run(folder.FullName, "demo", "--once", "--data", "out");

        Assert.True(exit == 0, error);
        Assert.Equal("", error);
        var files = Files();
        Assert.Contains("kitworks.db", files);
        foreach (var order in (string[])["order-1001", "order-1002"])
            foreach (var paper in (string[])["picklist.csv", "labels.pdf", "labels-a4.pdf", "plan.svg", "tier-0.svg"])
                Assert.Contains($"{order}/{paper}", files);
        Assert.Contains("Order 1001, reserved", output, StringComparison.Ordinal);
        Assert.Contains("61 hubs, 165 struts", output, StringComparison.Ordinal);
        Assert.Contains("curl", output, StringComparison.Ordinal);
        using (var labels = PdfDocument.Open(Path.Combine(folder.FullName, "out", "order-1001", "labels.pdf"))) Assert.InRange(labels.NumberOfPages, 10, 60);

        await File.WriteAllTextAsync(Path.Combine(folder.FullName, "out", "my-notes.txt"), "keep", TestContext.Current.CancellationToken);
        var again = await KitWorksProcess.Run(folder.FullName, "demo", "--once", "--data", "out");

        Assert.True(again.Exit == 0, again.Error);
        Assert.Equal(files.Append("my-notes.txt").Order(StringComparer.Ordinal), Files());
        Assert.Contains("Order 1001, reserved", again.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Demo_WhenTheFolderHoldsOtherFiles_TouchesNothing()
    {
        var mine = Path.Combine(folder.FullName, "kitworks.db");
        await File.WriteAllTextAsync(mine, "my shop", TestContext.Current.CancellationToken);

        var (exit, _, error) = await KitWorksProcess.Run(folder.FullName, "demo", "--once", "--data", ".");

        Assert.Equal(1, exit);
        IsOneLine(error, "nothing was touched");
        Assert.Equal("my shop", await File.ReadAllTextAsync(mine, TestContext.Current.CancellationToken));
        Assert.Single(folder.GetFileSystemInfos());
    }

    [Theory]
    [InlineData("demo")]
    [InlineData("serve")]
    public async Task Verb_WhenThePortIsTaken_SaysSoInOneLine(string verb)
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        var port = $"{((IPEndPoint)taken.LocalEndpoint).Port}";

        var (exit, output, error) = await KitWorksProcess.Run(folder.FullName, verb, "--urls", $"http://127.0.0.1:{port}");

        Assert.Equal(1, exit);
        IsOneLine(error, port);
        Assert.DoesNotContain("   at ", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://:99999999")]
    [InlineData("ftp://127.0.0.1:5999")]
    [InlineData("http://192.0.2.1:5999")]
    [InlineData("here")]
    public async Task Serve_WhenTheAddressIsWrong_SaysSoInOneLine(string url)
    {
        var (exit, _, error) = await KitWorksProcess.Run(folder.FullName, "serve", "--urls", url);

        Assert.Equal(1, exit);
        IsOneLine(error, "kitworks: ");
    }

    List<string> Files()
    {
        var root = Path.Combine(folder.FullName, "out");
        return [.. Directory.GetFiles(root, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(root, f).Replace('\\', '/'))
            .Where(f => !f.StartsWith("kitworks.db-", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];
    }

    static void IsOneLine(string error, string words)
    {
        Assert.Single(error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(words, error, StringComparison.Ordinal);
    }
}
