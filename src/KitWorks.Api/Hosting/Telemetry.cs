using System.Net;
using OpenTelemetry.Exporter;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace KitWorks.Api.Hosting;

/// <summary>
/// What the service tells of itself: figures at <c>/metrics</c>, traces and figures to a collector where
/// <c>Telemetry:Otlp</c> names one, and logs as JSON where <c>Logging:Format</c> says so.
/// </summary>
static class Telemetry
{
    /// <summary>Where figures are read.</summary>
    public const string Metrics = "/metrics";

    public static void AddTelemetry(this WebApplicationBuilder builder)
    {
        var settings = builder.Configuration;
        if (settings.Word("Logging:Format", "Text", "Json") == "Json")
            builder.Logging.AddJsonConsole(console => (console.IncludeScopes, console.TimestampFormat, console.UseUtcTimestamp) = (true, "O", true));
        else
            builder.Logging.AddSimpleConsole(console => console.SingleLine = true);

        var collector = settings.Url("Telemetry:Otlp");
        var protocol = settings.Word("Telemetry:OtlpProtocol", "Grpc", "HttpProtobuf") == "Grpc" ? OtlpExportProtocol.Grpc : OtlpExportProtocol.HttpProtobuf;
        var telemetry = builder.Services.AddOpenTelemetry()
            .ConfigureResource(resource => resource.AddService("kitworks", serviceVersion: typeof(Telemetry).Assembly.GetName().Version?.ToString(3)))
            .WithMetrics(metrics =>
            {
                metrics.AddAspNetCoreInstrumentation().AddRuntimeInstrumentation().AddMeter("KitWorks.*", "Microsoft.AspNetCore.RateLimiting").AddPrometheusExporter(figures => figures.ScrapeResponseCacheDurationMilliseconds = 0);
                if (collector is not null) metrics.AddOtlpExporter(otlp => At(otlp, "metrics"));
            });
        // Spans that nobody collects are not worth their cost on each request.
        if (collector is not null)
            telemetry.WithTracing(traces => traces
                .AddAspNetCoreInstrumentation(http => http.Filter = context => !IsProbe(context.Request.Path))
                .AddSource("KitWorks.*", "Npgsql").AddOtlpExporter(otlp => At(otlp, "traces")));

        void At(OtlpExporterOptions otlp, string signal) => (otlp.Protocol, otlp.Endpoint) =
            (protocol, protocol == OtlpExportProtocol.Grpc ? collector : new Uri($"{collector.ToString().TrimEnd('/')}/v1/{signal}"));
    }

    public static void MapMetrics(this WebApplication app)
    {
        app.UseWhen(context => context.Request.Path == Metrics, metrics => metrics.Use((context, next) =>
            IsNear(context) || context.User.IsInRole(nameof(Shop.Role.Admin)) || context.User.IsInRole(nameof(Shop.Role.Bench))
                ? next(context)
                : Http.Problems.Of(StatusCodes.Status403Forbidden, "metrics.outside", "Figures are shown to this machine and its private network, or to a key of role bench or admin.").ExecuteAsync(context)));
        app.MapPrometheusScrapingEndpoint(Metrics);
    }

    /// <summary>Asked from this machine or its private network, and by no proxy: a proxy that is not trusted may pass on anybody's question.</summary>
    static bool IsNear(HttpContext context) =>
        !context.Request.Headers.ContainsKey("X-Forwarded-For") && !context.Request.Headers.ContainsKey("Forwarded") && !context.Request.Headers.ContainsKey("Via")
        && context.Connection.RemoteIpAddress is { } address && Near.Any(network => network.Contains(address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address));

    /// <summary>Loopback, private and link-local networks (RFC 1918, RFC 3927, RFC 4193, RFC 4291).</summary>
    static readonly IPNetwork[] Near =
        [.. ((string[])["127.0.0.0/8", "10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "169.254.0.0/16", "::1/128", "fc00::/7", "fe80::/10"]).Select(n => IPNetwork.Parse(n))];

    static bool IsProbe(PathString path) => path.StartsWithSegments("/health") || path == Metrics;
}
