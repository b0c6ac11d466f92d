using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Threading.RateLimiting;
using KitWorks.Api.Hosting;
using Microsoft.AspNetCore.RateLimiting;

namespace KitWorks.Api.Http;

/// <summary>
/// How much one caller may ask: so many requests a second for each key, and, where no key that works came with the request,
/// for each address.
/// </summary>
static class RateLimits
{
    public static void AddRateLimits(this WebApplicationBuilder builder)
    {
        var settings = builder.Configuration;
        var perKey = settings.Whole("Limits:PerKeyPerSecond", 500, 0, 1_000_000);
        var perAddress = settings.Whole("Limits:PerAddressPerSecond", 50, 0, 1_000_000);
        builder.Services.AddRateLimiter(limits =>
        {
            limits.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context =>
                context.User.Identity is { IsAuthenticated: true, Name: { } name } ? Bucket("key " + name, perKey) : Bucket("address " + AddressOf(context), perAddress));
            limits.OnRejected = Reject;
        });
    }

    /// <summary>Ten seconds' worth may come at once, as a storefront's page does, or a bench that scans.</summary>
    static RateLimitPartition<string> Bucket(string whose, int perSecond) => perSecond == 0
        ? RateLimitPartition.GetNoLimiter(whose)
        : RateLimitPartition.GetTokenBucketLimiter(whose, _ => new()
        {
            TokensPerPeriod = perSecond, ReplenishmentPeriod = TimeSpan.FromSeconds(1), TokenLimit = 10 * perSecond, AutoReplenishment = true,
        });

    static async ValueTask Reject(OnRejectedContext rejected, CancellationToken cancellationToken)
    {
        var context = rejected.HttpContext;
        var wait = rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out var least) ? least.TotalSeconds : 0;
        context.Response.Headers.RetryAfter = Math.Max(1, (int)Math.Ceiling(wait)).ToString(CultureInfo.InvariantCulture);
        await Problems.Of(StatusCodes.Status429TooManyRequests, "limit.rate", "Too many requests came from this caller. Wait as long as Retry-After says, and ask less often.")
            .ExecuteAsync(context);
    }

    /// <summary>An IPv6 caller has a whole network of addresses, of which the first 64 bits are given out.</summary>
    static string AddressOf(HttpContext context)
    {
        if (context.Connection.RemoteIpAddress is not { } address) return "unknown";
        if (address.IsIPv4MappedToIPv6) address = address.MapToIPv4();
        if (address.AddressFamily != AddressFamily.InterNetworkV6) return address.ToString();
        var bytes = address.GetAddressBytes();
        bytes.AsSpan(8).Clear();
        return new IPAddress(bytes).ToString();
    }
}
