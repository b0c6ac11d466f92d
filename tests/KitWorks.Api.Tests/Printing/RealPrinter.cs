using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace KitWorks.Api.Tests.Printing;

/// <summary>
/// CUPS's <c>ippeveprinter</c>, an IPP printer without paper. Its engine is a script that runs out of paper, breaks down
/// and recovers as files in a folder say; what it was sent stays in the folder.
/// </summary>
sealed class RealPrinter : IAsyncDisposable
{
    const string Engine = """
        #!/bin/sh
        cd "$(dirname "$0")"
        if [ -f paper-out ]; then
          echo "STATE: +media-empty" >&2
          while [ -f paper-out ]; do sleep 0.05; done
          echo "STATE: -media-empty" >&2
        fi
        [ ! -f broken ]
        """;

    // Its own list of formats comes after this one, and the first counts.
    const string Attributes = """
        ATTR mimeMediaType document-format-supported FORMATS
        ATTR keyword media-supported iso_a4_210x297mm,om_100x150_100x150mm
        ATTR keyword media-default iso_a4_210x297mm
        ATTR keyword print-scaling-supported auto,none
        ATTR keyword print-scaling-default auto
        ATTR resolution printer-resolution-supported 203dpi
        ATTR resolution printer-resolution-default 203dpi
        ATTR resolution pwg-raster-document-resolution-supported 203dpi
        """;

    const string Bus = """
        <busconfig>
          <type>system</type>
          <listen>unix:path=FOLDER/bus</listen>
          <policy context="default"><allow send_destination="*" eavesdrop="true"/><allow eavesdrop="true"/><allow own="*"/></policy>
        </busconfig>
        """;

    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("kitworks-printer-");
    readonly int port = FreePort();
    readonly Process bus;
    Process? printer;

    RealPrinter(string formats)
    {
        File.WriteAllText(In("engine"), Engine.Replace("\r", "", StringComparison.Ordinal));
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(In("engine"), UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        File.WriteAllText(In("printer.conf"), Attributes.Replace("FORMATS", formats, StringComparison.Ordinal) + "\n");
        File.WriteAllText(In("bus.conf"), Bus.Replace("FOLDER", folder.FullName, StringComparison.Ordinal));
        folder.CreateSubdirectory("spool");
        bus = Start("dbus-daemon", "--config-file", In("bus.conf"), "--nofork", "--nopidfile");
    }

    public Uri Uri => new($"ipp://localhost:{port}/ipp/print");

    public static async Task<RealPrinter> SwitchedOn(string formats = "application/pdf,image/pwg-raster")
    {
        Program.Need("ippeveprinter", "cups-ipp-utils");
        Program.Need("dbus-daemon", "dbus-daemon");
        var printer = new RealPrinter(formats);
        await Patience.Until(() => File.Exists(printer.In("bus")), "the bus of the printer");
        await printer.SwitchOn();
        return printer;
    }

    public Task SwitchOn()
    {
        printer = Start("ippeveprinter", "-r", "off", "-n", "localhost", "-p", port.ToString(CultureInfo.InvariantCulture), "-k",
            "-d", In("spool"), "-c", In("engine"), "-a", In("printer.conf"), "Test printer");
        return Patience.Until(Listens, "the printer's port");
    }

    public void SwitchOff()
    {
        printer!.Kill(entireProcessTree: true);
        printer.WaitForExit();
    }

    public void TakePaperOut() => File.WriteAllText(In("paper-out"), "");

    public void Refill() => File.Delete(In("paper-out"));

    public void Break() => File.WriteAllText(In("broken"), "");

    /// <summary>What it was sent, oldest first.</summary>
    public IReadOnlyList<string> Sent => [.. new DirectoryInfo(In("spool")).GetFiles().Where(f => f.Extension is ".pdf" or ".pwg").OrderBy(f => f.CreationTimeUtc).Select(f => f.FullName)];

    public async ValueTask DisposeAsync()
    {
        if (printer is { HasExited: false }) SwitchOff();
        bus.Kill();
        await bus.WaitForExitAsync();
        folder.Delete(recursive: true);
    }

    bool Listens()
    {
        Assert.False(printer!.HasExited, "ippeveprinter has stopped.");
        using var client = new TcpClient();
        try
        {
            client.Connect("localhost", port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    Process Start(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["DBUS_SYSTEM_BUS_ADDRESS"] = $"unix:path={In("bus")}";
        var process = Process.Start(start)!;
        // Nobody reads what they say; unread, it would stop them.
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        return process;
    }

    string In(string name) => Path.Combine(folder.FullName, name);

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}

static class Program
{
    /// <summary>Without the program a test is skipped, but never in CI.</summary>
    public static void Need(string program, string package)
    {
        var path = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Append("/usr/sbin");
        if (path.Any(f => File.Exists(Path.Combine(f, program)))) return;
        if (Environment.GetEnvironmentVariable("CI") == "true") Assert.Fail($"{program} is missing.");
        Assert.Skip($"{program} is not installed (Debian: {package}).");
    }
}

static class Patience
{
    static readonly TimeSpan Long = TimeSpan.FromSeconds(90);

    public static Task Until(Func<bool> holds, string what) => Until(() => Task.FromResult(holds()), what);

    public static async Task Until(Func<Task<bool>> holds, string what)
    {
        for (var watch = Stopwatch.StartNew(); !await holds();)
        {
            Assert.True(watch.Elapsed < Long, $"Waited too long for {what}.");
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }
    }
}
