using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace KitWorks.Api.Tests.Http;

/// <summary>Two processes that share what they computed through a real Redis, and one whose Redis is gone.</summary>
public sealed class SharedAnswersTests
{
    const string Body = """{"shelter":{"kind":"dome","frequency":2,"cut":"1/2","size":{"height":"2 m"}}}""";

    [Fact]
    public async Task Frame_WhenAnotherProcessHasComputedIt_IsTheSameToTheByte()
    {
        await using var redis = await Redis.Start();
        await using var one = await OpenShop.Open(settings: [("Cache:Redis", redis.Address)]);
        await using var other = await one.AnotherInstance(("Cache:Redis", redis.Address));

        var first = (await one.Storefront.PostText("/api/frames", Body)).Is(200);
        var kept = await redis.Ask("DBSIZE");
        var second = (await other.Storefront.PostText("/api/frames", Body)).Is(200);

        Assert.Equal("1", kept);
        Assert.Equal("1", await redis.Ask("DBSIZE"));
        Assert.Equal(first.Bytes, second.Bytes);
        Assert.Equal(first.Headers.ETag, second.Headers.ETag);
        Assert.Equal(first.MediaType, second.MediaType);
    }

    [Fact]
    public async Task Frame_WhenRedisIsGone_IsComputedAllTheSame()
    {
        await using var shop = await OpenShop.Open(settings: [("Cache:Redis", "127.0.0.1:1,abortConnect=false,connectTimeout=200")]);

        (await shop.Storefront.PostText("/api/frames", Body)).Is(200);
    }

    /// <summary>Debian's Redis, on a port of its own, with nothing kept on disk.</summary>
    sealed class Redis : IAsyncDisposable
    {
        readonly Process process;
        readonly int port;

        Redis(Process process, int port) => (this.process, this.port) = (process, port);

        public string Address => $"127.0.0.1:{port}";

        public static async Task<Redis> Start()
        {
            if (!File.Exists("/usr/bin/redis-server")) Assert.Skip("redis-server is not installed (Debian: redis-server).");
            int port;
            using (var probe = new TcpListener(IPAddress.Loopback, 0))
            {
                probe.Start();
                port = ((IPEndPoint)probe.LocalEndpoint).Port;
            }
            var process = Process.Start(new ProcessStartInfo("redis-server", ["--port", $"{port}", "--bind", "127.0.0.1", "--save", "", "--appendonly", "no"]) { RedirectStandardOutput = true })!;
            while (await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken) is { } line)
                if (line.Contains("Ready to accept connections", StringComparison.Ordinal)) return new(process, port);
            throw new InvalidOperationException("Redis did not start.");
        }

        public async Task<string> Ask(string command)
        {
            using var cli = Process.Start(new ProcessStartInfo("redis-cli", ["-p", $"{port}", command]) { RedirectStandardOutput = true })!;
            return (await cli.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken)).Trim();
        }

        public async ValueTask DisposeAsync()
        {
            process.Kill();
            await process.WaitForExitAsync();
            process.Dispose();
        }
    }
}
