using System.Net;
using System.Net.Sockets;
using System.Text;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Storage;

namespace KitWorks.Shop.Webhooks;

/// <summary>How webhooks are told.</summary>
public sealed record WebhookPace
{
    /// <summary>How long is waited between looks for events.</summary>
    public TimeSpan Beat { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>How long an address may take to answer.</summary>
    public TimeSpan ToAnswer { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>Whether addresses in the shop's own network, and on this machine, may be told.</summary>
    public bool OwnNetwork { get; init; }

    /// <summary>For how long a process that tries has the webhook to itself; longer than a try takes.</summary>
    public TimeSpan Lease => ToAnswer * 2 + TimeSpan.FromSeconds(10);

    /// <summary>Twice as long after each try that fails: 5 seconds, 10, 20 …, and an hour at the most.</summary>
    public TimeSpan Wait(int tries) => Beat * Math.Min(5 * Math.Pow(2, Math.Min(tries, 20)), 3600);
}

/// <summary>Posts events. It follows no redirect, and where <see cref="WebhookPace.OwnNetwork"/> is off it connects to public addresses only.</summary>
sealed class WebhookPost : IDisposable
{
    readonly HttpClient http;
    readonly WebhookPace pace;
    readonly TimeProvider clock;

    public WebhookPost(ShopSettings settings, TimeProvider clock)
    {
        (pace, this.clock) = (settings.WebhookPace, clock);
        http = new(new SocketsHttpHandler
        {
            AllowAutoRedirect = false, UseCookies = false, UseProxy = false, MaxResponseHeadersLength = 16, PooledConnectionLifetime = TimeSpan.FromMinutes(2),
            ConnectCallback = Connect,
        })
        {
            Timeout = pace.ToAnswer,
        };
        http.DefaultRequestHeaders.UserAgent.ParseAdd("KitWorks-webhooks/1");
    }

    /// <summary>The body and the id of an event: every try sends the same.</summary>
    public static (string Id, byte[] Body) Message(OrderEventAnswer happened)
    {
        // With its moment: a database that was put back from a backup counts its numbers again.
        var id = $"{happened.Number}-{happened.At.ToUnixTimeMilliseconds()}";
        return (id, Encoding.UTF8.GetBytes(StoredJson.Write(new
        {
            id,
            type = "order.status",
            happened.At,
            order = new { id = happened.OrderId, number = happened.OrderNumber, happened.Reference, happened.Status, happened.Note, happened.Carrier, happened.Tracking },
        })));
    }

    /// <summary>Null when the address has taken it (any 2xx); otherwise why not, in words.</summary>
    public async Task<string?> Send(Webhook webhook, OrderEventAnswer happened, CancellationToken stop)
    {
        var (id, body) = Message(happened);
        var digest = Signing.Digest(body);
        var (input, signature) = Signing.Sign("order", [("content-digest", digest), ("event-id", id)], clock.GetUtcNow(), webhook.Id.ToString(), Encoding.UTF8.GetBytes(webhook.Secret));
        using var request = new HttpRequestMessage(HttpMethod.Post, webhook.Url) { Content = new ByteArrayContent(body) };
        request.Content.Headers.ContentType = new("application/json");
        request.Headers.Add("Content-Digest", digest);
        request.Headers.Add("Event-Id", id);
        request.Headers.Add("Signature-Input", input);
        request.Headers.Add("Signature", signature);
        try
        {
            using var response = await http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, stop);
            return response.IsSuccessStatusCode ? null : $"answered {(int)response.StatusCode}";
        }
        catch (HttpRequestException refused) when (refused.InnerException is NotPublicException notPublic)
        {
            return notPublic.Message;
        }
        catch (HttpRequestException refused)
        {
            return refused.HttpRequestError switch
            {
                HttpRequestError.NameResolutionError => "its name is not known",
                HttpRequestError.SecureConnectionError => "its certificate is not good, or it does not speak TLS",
                HttpRequestError.ConnectionError => "it cannot be reached",
                _ => "it broke off",
            };
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            return $"no answer in {pace.ToAnswer.TotalSeconds:0.#} seconds";
        }
    }

    /// <summary>Looks at the addresses that are connected to, and not at the name: a name may mean something else a moment later.</summary>
    async ValueTask<Stream> Connect(SocketsHttpConnectionContext context, CancellationToken cancellationToken)
    {
        var all = await Dns.GetHostAddressesAsync(context.DnsEndPoint.Host, cancellationToken);
        var allowed = pace.OwnNetwork ? all : [.. all.Where(PublicAddress.Is)];
        if (allowed.Length == 0) throw new NotPublicException($"{context.DnsEndPoint.Host} is not a public address; the setting Webhooks:OwnNetwork allows others");
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(allowed, context.DnsEndPoint.Port, cancellationToken);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }

    public void Dispose() => http.Dispose();

    sealed class NotPublicException(string message) : IOException(message);
}
