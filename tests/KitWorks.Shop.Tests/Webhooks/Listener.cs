using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Threading.Channels;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace KitWorks.Shop.Tests.Webhooks;

/// <summary>A storefront that is told what becomes of orders, at an address of its own on this machine.</summary>
sealed class Listener : IAsyncDisposable
{
    readonly WebApplication app;
    readonly Channel<Told> told = Channel.CreateUnbounded<Told>();

    Listener(Func<HttpContext, int, Task<int>> answer)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        app = builder.Build();
        var count = 0;
        app.Run(async context =>
        {
            using var body = new MemoryStream();
            await context.Request.Body.CopyToAsync(body);
            var headers = context.Request.Headers.ToDictionary(h => h.Key, h => h.Value.ToString(), StringComparer.OrdinalIgnoreCase);
            await told.Writer.WriteAsync(new(context.Request.Path, headers, body.ToArray()));
            context.Response.StatusCode = await answer(context, Interlocked.Increment(ref count));
        });
    }

    public string Url => app.Urls.Single() + "/hooks";

    /// <summary>A listener that answers the first request as <paramref name="answer"/> says of 1, the second of 2, and so on.</summary>
    public static async Task<Listener> Open(Func<HttpContext, int, Task<int>>? answer = null)
    {
        var listener = new Listener(answer ?? ((_, _) => Task.FromResult(204)));
        await listener.app.StartAsync();
        return listener;
    }

    /// <summary>The next that it was told.</summary>
    public async Task<Told> Next() => await told.Reader.ReadAsync(TestContext.Current.CancellationToken);

    /// <summary>How much it was told that nobody asked for yet.</summary>
    public int Unread => told.Reader.Count;

    public async ValueTask DisposeAsync() => await app.DisposeAsync();
}

/// <summary>A request as it came.</summary>
sealed record Told(string Path, IReadOnlyDictionary<string, string> Headers, byte[] Body)
{
    public string Id => Headers["Event-Id"];
    public JsonElement Json => JsonSerializer.Deserialize<JsonElement>(Body);
    public string Status => Json.Text("order/status");

    /// <summary>Checks the signature as a receiver does that has read RFC 9421, section 3.2, and no code of ours.</summary>
    public bool IsSignedWith(string secret)
    {
        if (Headers["Content-Digest"] != $"sha-256=:{Convert.ToBase64String(SHA256.HashData(Body))}:") return false;
        var input = Regex.Match(Headers["Signature-Input"], @"^order=(\((.*?)\);created=\d+;keyid=""[0-9a-f-]{36}"")$");
        if (!input.Success) return false;
        var signed = new StringBuilder();
        foreach (var name in input.Groups[2].Value.Split(' ')) signed.Append(name).Append(": ").Append(Headers[name.Trim('"')]).Append('\n');
        signed.Append("\"@signature-params\": ").Append(input.Groups[1].Value);
        var expected = Convert.ToBase64String(HMACSHA256.HashData(Encoding.ASCII.GetBytes(secret), Encoding.ASCII.GetBytes(signed.ToString())));
        return Headers["Signature"] == $"order=:{expected}:";
    }
}
