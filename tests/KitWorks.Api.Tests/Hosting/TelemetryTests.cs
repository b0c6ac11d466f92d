using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using KitWorks.Api.Tests.Verbs;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace KitWorks.Api.Tests.Hosting;

public sealed class TelemetryTests
{
    [Fact]
    public async Task Metrics_WhenOrdersComeAndGo_CountThem()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 10);
        var before = await Figures.Read(shop);

        var reserved = (await shop.Storefront.Order(Designs.SmallDome, once: "count-1")).Created;
        (await shop.Storefront.Order(Designs.SmallDome, once: "count-1")).Is(201);
        (await shop.Storefront.Order(Designs.SmallDome)).Is(201);
        (await shop.Storefront.Order(Designs.SmallDome, whenShort: "refuse")).IsProblem(409, "stock.short");
        _ = (await shop.Storefront.Post($"/api/orders/{reserved.Id()}/cancel")).Ok;
        var after = await Figures.Read(shop);

        // Tests run beside each other in one process, and so share its meters: there may be more, and never less.
        Assert.InRange(after.Since(before, "kitworks_orders_total", "status=\"reserved\""), 1, double.MaxValue);
        Assert.InRange(after.Since(before, "kitworks_orders_total", "status=\"waiting\""), 1, double.MaxValue);
        Assert.InRange(after.Since(before, "kitworks_orders_total", "status=\"cancelled\""), 1, double.MaxValue);
        Assert.InRange(after.Since(before, "kitworks_reservations_total"), 26 + 10, double.MaxValue);
        Assert.InRange(after.Since(before, "kitworks_shortages_total"), 10, double.MaxValue);
        Assert.InRange(after.Since(before, "kitworks_kit_duration_seconds_count"), 3, double.MaxValue);
        Assert.InRange(after.Since(before, "kitworks_cut_plan_duration_seconds_count"), 3, double.MaxValue);
        Assert.InRange(after.Since(before, "kitworks_command_duration_seconds_count", "command=\"PlaceOrder\"", "ended=\"replayed\""), 1, double.MaxValue);
        Assert.InRange(after.Since(before, "kitworks_command_duration_seconds_count", "command=\"PlaceOrder\"", "ended=\"stock.short\""), 1, double.MaxValue);
        Assert.InRange(after.Since(before, "http_server_request_duration_seconds_count", "http_route=\"/api/orders", "http_response_status_code=\"409\""), 1, double.MaxValue);
    }

    [Fact]
    public async Task Metrics_WhenReadByPrometheus_HaveNoFaultOfOurs()
    {
        if (!File.Exists("/usr/bin/promtool")) Assert.Skip("promtool is not installed (Debian: prometheus).");
        await using var shop = await OpenShop.Open();
        (await shop.Storefront.Order(Designs.SmallDome)).Is(201);
        var text = (await shop.Nobody.Get("/metrics")).Is(200).Text;

        using var promtool = Process.Start(new ProcessStartInfo("promtool", ["check", "metrics"]) { RedirectStandardInput = true, RedirectStandardError = true })!;
        await promtool.StandardInput.WriteAsync(text);
        promtool.StandardInput.Close();
        var complaints = await promtool.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await promtool.WaitForExitAsync(TestContext.Current.CancellationToken);

        // 1 is for what could not be read; 3 for names that could be better, and the platform has such.
        Assert.NotEqual(1, promtool.ExitCode);
        Assert.DoesNotContain("kitworks", complaints, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Metrics_WhenAskedThroughAProxy_NeedAKeyOfTheShop()
    {
        await using var shop = await OpenShop.Open();

        (await AskedFor(shop.Nobody)).IsProblem(403, "metrics.outside");
        (await AskedFor(shop.Storefront)).IsProblem(403, "metrics.outside");
        (await AskedFor(shop.Bench)).Is(200);

        static Task<Answer> AskedFor(Caller caller) =>
            caller.Send(new(HttpMethod.Get, "/metrics") { Headers = { { "X-Forwarded-For", "203.0.113.7" } } });
    }

    [Fact]
    public async Task Dashboard_WhenItAsksForAFigure_AsksForOneThatThereIs()
    {
        await using var shop = await OpenShop.Open();
        (await shop.Storefront.Order(Designs.SmallDome)).Is(201);
        var figures = (await shop.Nobody.Get("/metrics")).Is(200).Text;
        var dashboard = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "dashboard.json"), TestContext.Current.CancellationToken);

        var asked = Regex.Matches(dashboard, "(?:kitworks|http_server|dotnet|kestrel|aspnetcore)_[a-z_]+").Select(m => m.Value).Distinct().ToList();

        Assert.InRange(asked.Count, 8, 100);
        Assert.All(asked.Where(a => a != "kitworks_print_jobs_total"), a => Assert.Matches($@"(?m)^{a}(\{{| )", figures));
    }

    [Fact]
    public async Task Traces_WhenTheCallerHasOne_GoOnInItToTheCollector()
    {
        await using var collector = await Collector.Open();
        await using var shop = await OpenShop.Open(settings: [("Telemetry:Otlp", collector.Address), ("Telemetry:OtlpProtocol", "HttpProtobuf")]);
        const string trace = "0af7651916cd43dd8448eb211c80319c";

        (await shop.Storefront.Send(new(HttpMethod.Post, "/api/quotes")
        {
            Headers = { { "traceparent", $"00-{trace}-b7ad6b7169203331-01" } },
            Content = System.Net.Http.Json.JsonContent.Create(new { design = Designs.SmallDome, quantity = 1 }),
        })).Is(201);

        // The protocol carries a trace's number as sixteen bytes, and names as text (OpenTelemetry protocol, trace.proto).
        var number = System.Text.Encoding.Latin1.GetString(Convert.FromHexString(trace));
        await collector.Until(sent => ((string[])[number, "MakeQuote", "make kit", "POST /api/quotes"]).All(part => sent.Contains(part, StringComparison.Ordinal)), TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task Logs_WhenTheyShallBeJson_AreJsonLineByLine()
    {
        var folder = Directory.CreateTempSubdirectory("kitworks-logs-");
        using var process = KitWorksProcess.Start(folder.FullName,
            [("Logging:Format", "json"), ("Logging:LogLevel:Default", "Information")], "serve", "--urls", "http://127.0.0.1:0");
        try
        {
            var lines = new List<JsonElement>();
            while (lines.Count == 0 || !lines[^1].ToString().Contains("Application started", StringComparison.Ordinal))
                lines.Add(JsonSerializer.Deserialize<JsonElement>((await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken))!));

            Assert.All(lines, line => Assert.NotEmpty(line.Text("Category")));
            Assert.All(lines, line => Assert.True(DateTimeOffset.TryParse(line.Text("Timestamp"), CultureInfo.InvariantCulture, out _)));
        }
        finally
        {
            process.Kill();
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            folder.Delete(recursive: true);
        }
    }
}

/// <summary>The figures of one reading of <c>/metrics</c>.</summary>
sealed class Figures(IReadOnlyList<string> lines)
{
    public static async Task<Figures> Read(OpenShop shop) => new((await shop.Nobody.Get("/metrics")).Is(200).Text.Split('\n'));

    public double Since(Figures before, string name, params string[] labels) => Of(name, labels) - before.Of(name, labels);

    double Of(string name, string[] labels) => lines
        .Where(l => (l.StartsWith(name + "{", StringComparison.Ordinal) || l.StartsWith(name + " ", StringComparison.Ordinal)) && labels.All(label => l.Contains(label, StringComparison.Ordinal)))
        .Sum(l => double.Parse(l[(l.LastIndexOf('}') + 1)..].Trim().Split(' ')[0], CultureInfo.InvariantCulture));
}

/// <summary>Takes what is sent to it, as a collector of traces does.</summary>
sealed class Collector : IAsyncDisposable
{
    readonly WebApplication app;
    readonly System.Collections.Concurrent.ConcurrentQueue<byte[]> bodies = new();
    readonly SemaphoreSlim came = new(0);

    Collector()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        app = builder.Build();
        app.Urls.Add("http://127.0.0.1:0");
        app.MapPost("/v1/{signal}", async (HttpRequest request) =>
        {
            using var body = new MemoryStream();
            await request.Body.CopyToAsync(body);
            bodies.Enqueue(body.ToArray());
            came.Release();
            return Results.Ok();
        });
    }

    public string Address => app.Urls.First();

    public static async Task<Collector> Open()
    {
        var collector = new Collector();
        await collector.app.StartAsync();
        return collector;
    }

    /// <summary>Waits until all that came, read byte by byte as text, is as wanted.</summary>
    public async Task Until(Predicate<string> wanted, CancellationToken cancellationToken)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        patience.CancelAfter(TimeSpan.FromMinutes(1));
        while (!wanted(string.Concat(bodies.Select(System.Text.Encoding.Latin1.GetString)))) await came.WaitAsync(patience.Token);
    }

    public async ValueTask DisposeAsync()
    {
        await app.DisposeAsync();
        came.Dispose();
    }
}
