using System.Diagnostics;

namespace KitWorks.Labels.Tests.Reading;

/// <summary>Readers that are not ours: poppler and zbar. Without them a test is skipped, but never in CI.</summary>
static class Tool
{
    public static string Run(string program, params string[] arguments)
    {
        Need(program);
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        // zbarimg answers 4 where a picture holds no code; the test then sees that there is none.
        Assert.True(process.ExitCode is 0 or 4, $"{program} {string.Join(' ', arguments)}: {process.ExitCode} {errors.Result}");
        return output;
    }

    public static void Need(string program)
    {
        var found = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(f => File.Exists(Path.Combine(f, program)));
        if (found) return;
        if (Environment.GetEnvironmentVariable("CI") == "true") Assert.Fail($"{program} is missing.");
        Assert.Skip($"{program} is not installed (Debian: poppler-utils, zbar-tools).");
    }
}

/// <summary>A folder that goes when the test ends.</summary>
sealed class Folder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("kitworks-labels-").FullName;

    public string File(string name) => System.IO.Path.Combine(Path, name);

    public string Write(string name, string text)
    {
        System.IO.File.WriteAllText(File(name), text);
        return File(name);
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}

/// <summary>What a scanner reads from a document.</summary>
static class Scanner
{
    /// <summary>The codes on each page, as poppler draws it at a printer's resolution, in grey as a black-and-white printer would see it.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Pages(byte[] pdf, int dpi)
    {
        Tool.Need("zbarimg");
        using var folder = new Folder();
        File.WriteAllBytes(folder.File("labels.pdf"), pdf);
        Tool.Run("pdftoppm", "-r", $"{dpi}", "-gray", folder.File("labels.pdf"), folder.File("page"));
        return [.. Directory.GetFiles(folder.Path, "page*").Order(StringComparer.Ordinal).Select(Picture)];
    }

    /// <summary>All codes in some documents, pages read side by side.</summary>
    public static IReadOnlyList<string> All(int dpi, params byte[][] pdfs)
    {
        Tool.Need("zbarimg");
        using var folder = new Folder();
        for (var i = 0; i < pdfs.Length; i++) File.WriteAllBytes(folder.File($"{i}.pdf"), pdfs[i]);
        Parallel.For(0, pdfs.Length, i => Tool.Run("pdftoppm", "-r", $"{dpi}", "-gray", folder.File($"{i}.pdf"), folder.File($"{i}")));
        var pages = Directory.GetFiles(folder.Path, "*.pgm").Order(StringComparer.Ordinal).Chunk(10);
        return [.. pages.AsParallel().SelectMany(some => Tool.Run("zbarimg", ["--quiet", .. some]).Split('\n', StringSplitOptions.RemoveEmptyEntries))];
    }

    public static IReadOnlyList<string> Picture(string path) =>
        Tool.Run("zbarimg", "--quiet", path).Split('\n', StringSplitOptions.RemoveEmptyEntries);
}
