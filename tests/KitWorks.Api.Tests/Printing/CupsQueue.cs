using System.Diagnostics;
using System.Globalization;

namespace KitWorks.Api.Tests.Printing;

/// <summary>A CUPS scheduler of the test's own, with one queue for a printer.</summary>
sealed class CupsQueue : IAsyncDisposable
{
    const string Scheduler = """
        Listen 127.0.0.1:PORT
        Browsing Off
        WebInterface No
        DefaultAuthType None
        <Location />
          Order allow,deny
          Allow all
        </Location>
        <Policy default>
          <Limit All>
            Order allow,deny
            Allow all
          </Limit>
        </Policy>
        """;

    const string Files = """
        ServerRoot FOLDER/root
        RequestRoot FOLDER/spool
        CacheDir FOLDER/cache
        StateDir FOLDER/state
        TempDir FOLDER/temp
        AccessLog FOLDER/access_log
        ErrorLog FOLDER/error_log
        PageLog FOLDER/page_log
        """;

    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("kitworks-cups-");
    readonly string port = RealPrinter.FreePort().ToString(CultureInfo.InvariantCulture);
    readonly Process scheduler;

    CupsQueue()
    {
        foreach (var name in (string[])["root", "spool", "cache", "state", "temp"]) folder.CreateSubdirectory(name);
        // The scheduler's helpers run as a user of less rights, and read there.
        if (!OperatingSystem.IsWindows()) folder.UnixFileMode |= UnixFileMode.OtherRead | UnixFileMode.OtherExecute | UnixFileMode.GroupRead | UnixFileMode.GroupExecute;
        scheduler = Process.Start("cupsd", ["-f", "-c", Write("cupsd.conf", Scheduler.Replace("PORT", port, StringComparison.Ordinal)),
            "-s", Write("cups-files.conf", Files.Replace("FOLDER", folder.FullName, StringComparison.Ordinal))]);
    }

    public Uri Uri => new($"ipp://127.0.0.1:{port}/printers/bench");

    public static async Task<CupsQueue> For(Uri printer)
    {
        Program.Need("cupsd", "cups");
        Program.Need("lpadmin", "cups-client");
        var queue = new CupsQueue();
        // Raw: documents pass as they are.
        await Patience.Until(() => Run("lpadmin", "-h", $"127.0.0.1:{queue.port}", "-p", "bench", "-E", "-v", printer.ToString(), "-m", "raw"), "the scheduler");
        return queue;
    }

    static async Task<bool> Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
        await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return process.ExitCode == 0;
    }

    string Write(string name, string text)
    {
        var path = Path.Combine(folder.FullName, name);
        File.WriteAllText(path, text + "\n");
        return path;
    }

    public async ValueTask DisposeAsync()
    {
        scheduler.Kill(entireProcessTree: true);
        await scheduler.WaitForExitAsync();
        folder.Delete(recursive: true);
    }
}
