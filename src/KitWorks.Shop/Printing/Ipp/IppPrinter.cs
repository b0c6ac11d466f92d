using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;

namespace KitWorks.Shop.Printing.Ipp;

/// <summary>How far a request came.</summary>
enum Reached
{
    /// <summary>No connection: the printer has seen nothing of it.</summary>
    Nobody,

    /// <summary>The printer answered.</summary>
    Answered,

    /// <summary>It was sent, in part or whole, and no answer came that can be read. The printer may have acted on it.</summary>
    Unknown,
}

/// <summary>What came of a request: the message where there is one, and always a word on it.</summary>
sealed record IppReply(Reached Reached, string Words, IppMessage? Message = null)
{
    public bool Is(Func<int, bool> code) => Message is not null && code(Message.Code);

    /// <summary>Statuses up to 0x00FF are successes (RFC 8011, appendix B).</summary>
    public bool Succeeded => Is(code => code <= 0x00FF);
}

/// <summary>The connections to printers. None is used twice and none goes through a proxy.</summary>
sealed class IppConnections : IDisposable
{
    static readonly TimeSpan PatienceToConnect = TimeSpan.FromSeconds(5);

    readonly HttpClient http = new(new SocketsHttpHandler
    {
        AllowAutoRedirect = false,
        UseProxy = false,
        // A request on a connection that turns out to be closed is repeated by HttpClient itself, and a document with it.
        PooledConnectionLifetime = TimeSpan.Zero,
        ConnectCallback = Connect,
    })
    { Timeout = Timeout.InfiniteTimeSpan, MaxResponseContentBufferSize = 1 << 20 };

    public Task<HttpResponseMessage> Send(HttpRequestMessage request, CancellationToken cancellationToken) => http.SendAsync(request, cancellationToken);

    public void Dispose() => http.Dispose();

    /// <summary>Ends a try to connect with a socket's error, so that it can be told from an answer that does not come.</summary>
    static async ValueTask<Stream> Connect(SocketsHttpConnectionContext context, CancellationToken cancellationToken)
    {
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        patience.CancelAfter(PatienceToConnect);
        try
        {
            await socket.ConnectAsync(context.DnsEndPoint, patience.Token);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch (Exception wrong)
        {
            socket.Dispose();
            if (wrong is OperationCanceledException && !cancellationToken.IsCancellationRequested) throw new SocketException((int)SocketError.TimedOut);
            throw;
        }
    }
}

/// <summary>The operations of RFC 8011 that the shop needs, on one printer. Nothing is ever sent twice.</summary>
/// <param name="connections">What it is reached by.</param>
/// <param name="uri">Its address: <c>ipp://host/ipp/print</c> or <c>ipps://…</c>, port 631 if not said.</param>
/// <param name="clock">The clock that patience is measured by.</param>
sealed class IppPrinter(IppConnections connections, Uri uri, TimeProvider clock)
{
    const ushort PrintJob = 0x0002, CancelJob = 0x0008, GetJobAttributes = 0x0009, GetJobs = 0x000A, GetPrinterAttributes = 0x000B;

    const string Requested = "requested-attributes";

    // Queues tell the name of a job to its owner only.
    static readonly IppAttribute Asker = IppAttribute.Operation("requesting-user-name", IppTag.Name, "KitWorks");

    static readonly MediaTypeHeaderValue Ipp = new("application/ipp");

    readonly Uri address = new UriBuilder(uri) { Scheme = uri.Scheme == "ipps" ? "https" : "http", Port = uri.IsDefaultPort || uri.Port < 0 ? 631 : uri.Port }.Uri;
    int requests;

    public Task<IppReply> Look(TimeSpan patience, CancellationToken cancellationToken) => Ask(
        GetPrinterAttributes, patience, cancellationToken,
        IppAttribute.Operation(Requested, IppTag.Keyword,
            "printer-state", "printer-state-reasons", "printer-is-accepting-jobs", "document-format-supported", "media-supported",
            "print-scaling-supported", "printer-resolution-default", "pwg-raster-document-resolution-supported"));

    public Task<IppReply> Print(string jobName, string format, Stream document, IEnumerable<IppAttribute> template, TimeSpan patience) => Ask(
        PrintJob, document, patience,
        [
            Asker, IppAttribute.Operation("job-name", IppTag.Name, jobName),
            IppAttribute.Operation("document-format", IppTag.MimeMediaType, format), .. template,
        ],
        // Never broken off by us.
        CancellationToken.None);

    public Task<IppReply> LookAtJob(int jobId, TimeSpan patience, CancellationToken cancellationToken) => Ask(
        GetJobAttributes, patience, cancellationToken,
        IdOf(jobId), Asker, IppAttribute.Operation(Requested, IppTag.Keyword, "job-id", "job-name", "job-state", "job-state-reasons"));

    public Task<IppReply> Cancel(int jobId, TimeSpan patience, CancellationToken cancellationToken) => Ask(
        CancelJob, patience, cancellationToken, IdOf(jobId), Asker);

    /// <summary>The number of the job with this name, or null where the printer lists none, which does not mean that there was none.</summary>
    public async Task<int?> Find(string jobName, TimeSpan patience, CancellationToken cancellationToken)
    {
        foreach (var which in (string[])["not-completed", "completed"])
        {
            var reply = await Ask(GetJobs, patience, cancellationToken,
                Asker, IppAttribute.Operation(Requested, IppTag.Keyword, "job-id", "job-name"), IppAttribute.Operation("which-jobs", IppTag.Keyword, which));
            if (!reply.Succeeded) return null;
            foreach (var job in reply.Message!.Attributes.Where(a => a.Group == IppTag.JobAttributes).GroupBy(a => a.GroupNumber))
                if (job.Any(a => a.Name == "job-name" && a.Values[0].Text == jobName)) return job.FirstOrDefault(a => a.Name == "job-id")?.Values[0].Number;
        }
        return null;
    }

    static IppAttribute IdOf(int jobId) => new(IppTag.OperationAttributes, "job-id", IppValue.Of(IppTag.Integer, jobId));

    Task<IppReply> Ask(ushort operation, TimeSpan patience, CancellationToken cancellationToken, params IEnumerable<IppAttribute> attributes) =>
        Ask(operation, null, patience, attributes, cancellationToken);

    async Task<IppReply> Ask(ushort operation, Stream? document, TimeSpan patience, IEnumerable<IppAttribute> attributes, CancellationToken cancellationToken)
    {
        // The order of the first three is the standard's (RFC 8011, section 4.1.4); a job's id follows its printer's address.
        var message = new IppMessage(operation, Interlocked.Increment(ref requests),
        [
            IppAttribute.Operation("attributes-charset", IppTag.Charset, "utf-8"), IppAttribute.Operation("attributes-natural-language", IppTag.NaturalLanguage, "en"),
            IppAttribute.Operation("printer-uri", IppTag.Uri, uri.ToString()), .. attributes,
        ]);
        using var limit = new CancellationTokenSource(patience, clock);
        using var both = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, cancellationToken);
        try
        {
            using var content = new IppContent(message.Write(), document) { Headers = { ContentType = Ipp } };
            using var request = new HttpRequestMessage(HttpMethod.Post, address) { Content = content };
            using var response = await connections.Send(request, both.Token);
            if (response.StatusCode != HttpStatusCode.OK) return OfHttp(response.StatusCode);
            var answer = IppMessage.Read(await response.Content.ReadAsByteArrayAsync(both.Token));
            return answer.RequestId == message.RequestId
                ? new(Reached.Answered, IppWords.Status(answer), answer)
                : new(Reached.Unknown, "the printer gave an answer to another question");
        }
        catch (HttpRequestException wrong) when (wrong.HttpRequestError is HttpRequestError.ConnectionError or HttpRequestError.NameResolutionError or HttpRequestError.SecureConnectionError)
        {
            return new(Reached.Nobody, wrong.HttpRequestError == HttpRequestError.SecureConnectionError ? "no secure connection to the printer can be made" : "the printer is away");
        }
        catch (Exception wrong) when (wrong is HttpRequestException or IOException)
        {
            return new(Reached.Unknown, "the connection to the printer broke");
        }
        catch (FormatException)
        {
            return new(Reached.Unknown, "the printer's answer cannot be read");
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            return new(Reached.Unknown, "the printer did not answer in time");
        }
    }

    /// <summary>An answer from before IPP. That the address is wrong, or closed to us, is certain; what a fault of the printer has done is not.</summary>
    static IppReply OfHttp(HttpStatusCode status) => (int)status is >= 300 and < 500
        ? new(Reached.Answered, string.Create(CultureInfo.InvariantCulture, $"nothing prints at this address: the answer is HTTP {(int)status}"), new(IppStatus.NotFound, 0, []))
        : status == HttpStatusCode.ServiceUnavailable
            ? new(Reached.Answered, "the printer is busy", new(IppStatus.Busy, 0, []))
            : new(Reached.Unknown, string.Create(CultureInfo.InvariantCulture, $"the printer answered HTTP {(int)status}"));
}

/// <summary>A message and the document after it, with their length; printers are not sent chunks.</summary>
sealed class IppContent(byte[] message, Stream? document) : HttpContent
{
    protected override Task SerializeToStreamAsync(Stream stream, TransportContext? context) => SerializeToStreamAsync(stream, context, CancellationToken.None);

    protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context, CancellationToken cancellationToken)
    {
        await stream.WriteAsync(message, cancellationToken);
        if (document is not null) await document.CopyToAsync(stream, cancellationToken);
    }

    protected override bool TryComputeLength(out long length)
    {
        length = message.Length + (document?.Length ?? 0);
        return true;
    }
}
