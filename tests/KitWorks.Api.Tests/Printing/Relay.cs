using System.Net;

namespace KitWorks.Api.Tests.Printing;

/// <summary>What goes wrong between the shop and its printer when a document is sent.</summary>
enum Loss
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The printer takes it, and its answer is lost.</summary>
    Answer,

    /// <summary>It is lost on its way.</summary>
    Request,

    /// <summary>The printer takes it and never answers.</summary>
    Silence,
}

/// <summary>Stands between the shop and a printer, passes everything on, and loses documents or answers as told.</summary>
sealed class Relay : IAsyncDisposable
{
    const int PrintJob = 0x0002;

    readonly HttpListener listener = new();
    readonly HttpClient http = new();
    readonly int port = RealPrinter.FreePort();
    readonly Uri printer;
    readonly Task work;

    public Relay(Uri printer)
    {
        this.printer = new UriBuilder(printer) { Scheme = "http" }.Uri;
        listener.Prefixes.Add($"http://127.0.0.1:{port}/");
        listener.Start();
        work = Work();
    }

    public Uri Uri => new($"ipp://127.0.0.1:{port}/ipp/print");

    public Loss Loses { get; set; }

    /// <summary>How many documents were sent through it.</summary>
    public int Documents { get; private set; }

    async Task Work()
    {
        while (true)
        {
            HttpListenerContext context;
            try
            {
                context = await listener.GetContextAsync();
            }
            catch (Exception wrong) when (wrong is HttpListenerException or ObjectDisposedException)
            {
                return;
            }
            try
            {
                await Pass(context);
            }
            catch (Exception wrong) when (wrong is HttpRequestException or HttpListenerException or IOException)
            {
                context.Response.Abort();
            }
        }
    }

    async Task Pass(HttpListenerContext context)
    {
        using var body = new MemoryStream();
        await context.Request.InputStream.CopyToAsync(body);
        var bytes = body.ToArray();
        var loses = (bytes[2] << 8 | bytes[3]) == PrintJob ? Loses : Loss.None;
        if ((bytes[2] << 8 | bytes[3]) == PrintJob) Documents++;
        if (loses == Loss.Request)
        {
            context.Response.Abort();
            return;
        }
        using var answer = await http.PostAsync(printer, new ByteArrayContent(bytes) { Headers = { ContentType = new("application/ipp") } });
        var content = await answer.Content.ReadAsByteArrayAsync();
        if (loses == Loss.Silence) return;
        if (loses == Loss.Answer)
        {
            context.Response.Abort();
            return;
        }
        context.Response.ContentType = "application/ipp";
        await context.Response.OutputStream.WriteAsync(content);
        context.Response.Close();
    }

    public async ValueTask DisposeAsync()
    {
        listener.Close();
        await work;
        http.Dispose();
    }
}
