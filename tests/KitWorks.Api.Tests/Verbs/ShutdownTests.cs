using System.Diagnostics;
using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;

namespace KitWorks.Api.Tests.Verbs;

/// <summary>Told to stop, the program finishes what it has begun, and begins nothing.</summary>
public sealed class ShutdownTests : IDisposable
{
    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("kitworks-stop-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task Serve_WhenToldToStop_AnswersTheRequestThatItHas()
    {
        const string body = """{"kind":"dome","frequency":3}""";
        var cancellation = TestContext.Current.CancellationToken;
        using var process = KitWorksProcess.Start(folder.FullName,
            [("Access:BootstrapAdminKey", "stop"), ("Logging:LogLevel:Default", "Warning"), ("Logging:LogLevel:Microsoft.Hosting.Lifetime", "Information")], "serve", "--urls", "http://127.0.0.1:0");
        try
        {
            var port = await Port(process);
            using var client = new TcpClient();
            await client.ConnectAsync("127.0.0.1", port, cancellation);
            var stream = client.GetStream();
            await stream.WriteAsync(Encoding.ASCII.GetBytes(
                $"POST /api/shapes/cuts HTTP/1.1\r\nHost: shop\r\nAuthorization: Bearer stop\r\nContent-Type: application/json\r\nContent-Length: {body.Length}\r\nExpect: 100-continue\r\n\r\n"), cancellation);
            using var reader = new StreamReader(stream, Encoding.ASCII);
            // The service asks for the body, so the request is being served.
            Assert.Equal("HTTP/1.1 100 Continue", await reader.ReadLineAsync(cancellation));
            Assert.Equal("", await reader.ReadLineAsync(cancellation));

            using (var kill = Process.Start("kill", ["-TERM", $"{process.Id}"])) await kill.WaitForExitAsync(cancellation);
            await Line(process, "shutting down");
            await stream.WriteAsync(Encoding.ASCII.GetBytes(body), cancellation);
            var answer = await reader.ReadToEndAsync(cancellation);
            await process.WaitForExitAsync(cancellation);

            Assert.StartsWith("HTTP/1.1 200", answer, StringComparison.Ordinal);
            Assert.Contains("5/8", answer, StringComparison.Ordinal);
            Assert.Equal(0, process.ExitCode);
            using var late = new TcpClient();
            await Assert.ThrowsAsync<SocketException>(() => late.ConnectAsync("127.0.0.1", port, cancellation).AsTask());
        }
        finally
        {
            if (!process.HasExited) process.Kill(entireProcessTree: true);
        }
    }

    [Fact]
    public async Task Health_WhenTheServiceRunsAndWhenItDoesNot_SaysSo()
    {
        using var process = KitWorksProcess.Start(folder.FullName, [("Logging:LogLevel:Default", "Warning"), ("Logging:LogLevel:Microsoft.Hosting.Lifetime", "Information")], "serve", "--urls", "http://127.0.0.1:0");
        try
        {
            var url = $"http://127.0.0.1:{await Port(process)}";
            Assert.Equal((0, "ready\n", ""), await KitWorksProcess.Run(folder.FullName, "health", "--urls", url));
            process.Kill();
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);

            var (exit, _, error) = await KitWorksProcess.Run(folder.FullName, "health", "--urls", url);

            Assert.Equal((1, 1), (exit, error.Count(c => c == '\n')));
            Assert.Contains(url, error, StringComparison.Ordinal);
        }
        finally
        {
            if (!process.HasExited) process.Kill(entireProcessTree: true);
        }
    }

    static async Task<int> Port(Process process) =>
        int.Parse(Regex.Match(await Line(process, "Now listening on"), @":(\d+)$").Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);

    static async Task<string> Line(Process process, string words)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromMinutes(2));
        while (await process.StandardOutput.ReadLineAsync(patience.Token) is { } line)
            if (line.Contains(words, StringComparison.Ordinal)) return line;
        throw new InvalidOperationException($"The program ended without saying '{words}': {await process.StandardError.ReadToEndAsync(patience.Token)}");
    }
}
