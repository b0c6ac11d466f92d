using System.Net;
using KitWorks.Api.Http;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using IPNetwork = System.Net.IPNetwork;

namespace KitWorks.Api.Hosting;

/// <summary>How the service listens: what it takes in, how slowly it may come, and which proxies it believes.</summary>
static class Listening
{
    public static void AddListening(this WebApplicationBuilder builder)
    {
        var settings = builder.Configuration;
        builder.WebHost.UseUrls(settings["urls"] ?? ShopHost.DefaultUrl);
        var connections = settings.Whole("Limits:Connections", 10_000, 1, 1_000_000);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            var limits = kestrel.Limits;
            limits.MaxRequestBodySize = BodyLimit.StillTaken;
            limits.MaxConcurrentConnections = connections;
            limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
            // Slower than any line in use: whoever sends or takes in so little holds the connection only to hold it.
            limits.MinRequestBodyDataRate = limits.MinResponseDataRate = new MinDataRate(bytesPerSecond: 1024, gracePeriod: TimeSpan.FromSeconds(5));
        });
        var patience = TimeSpan.FromSeconds(settings.Whole("Shutdown:Seconds", 30, 1, 600));
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = patience);
        if (Proxies(settings) is not [_, ..] proxies) return;
        builder.Services.Configure<ForwardedHeadersOptions>(forwarded =>
        {
            forwarded.ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto | ForwardedHeaders.XForwardedHost;
            forwarded.ForwardLimit = null;
            forwarded.KnownProxies.Clear();
            forwarded.KnownIPNetworks.Clear();
            foreach (var proxy in proxies) forwarded.KnownIPNetworks.Add(proxy);
        });
    }

    /// <summary>The caller's own address and scheme, where a trusted proxy passes them on.</summary>
    public static void UseTrustedProxies(this WebApplication app)
    {
        if (Proxies(app.Configuration).Length > 0) app.UseForwardedHeaders();
    }

    static IPNetwork[] Proxies(IConfiguration settings) =>
    [
        .. (settings["Proxies:Trusted"] ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(proxy =>
            IPNetwork.TryParse(proxy, out var network) ? network
            : IPAddress.TryParse(proxy, out var address) ? new IPNetwork(address, address.GetAddressBytes().Length * 8)
            : throw new SettingException($"Proxies:Trusted holds '{proxy}'; it is addresses and networks separated by commas, such as 10.0.0.7, 172.18.0.0/16.")),
    ];
}
