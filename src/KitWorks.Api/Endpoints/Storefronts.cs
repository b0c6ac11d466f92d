using Microsoft.AspNetCore.Cors.Infrastructure;

namespace KitWorks.Api.Endpoints;

/// <summary>Which web sites may ask the interface from their visitors' browsers: the setting <c>Storefront:Origins</c>, none by default.</summary>
static class Storefronts
{
    const string Setting = "Storefront:Origins";

    public static void AddStorefronts(this IServiceCollection services, IConfiguration configuration)
    {
        var origins = Origins(configuration);
        services.AddCors(cors => cors.AddDefaultPolicy(policy => Allow(policy, origins)));
    }

    /// <summary>With a key in a header and never with a cookie, so that a visitor who works at the bench lends nobody their sign-in.</summary>
    static void Allow(CorsPolicyBuilder policy, string[] origins) => policy.WithOrigins(origins)
        .WithMethods("GET", "POST").WithHeaders("Authorization", "Content-Type", Http.OnceOnlyHeader.Header)
        .WithExposedHeaders("Location", "ETag", "Idempotent-Replayed", "Retry-After").SetPreflightMaxAge(TimeSpan.FromHours(1));

    static string[] Origins(IConfiguration configuration)
    {
        var origins = configuration.GetSection(Setting).GetChildren().Select(c => c.Value ?? "").Concat((configuration[Setting] ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries)).Where(o => o.Length > 0).ToArray();
        foreach (var origin in origins)
            if (!Uri.TryCreate(origin, UriKind.Absolute, out var uri) || uri.Scheme is not ("http" or "https") || uri.GetLeftPart(UriPartial.Authority) != origin)
                throw new Hosting.SettingException($"{Setting} holds '{origin}'; an origin is an address without a path, such as https://shop.example.com.");
        return origins;
    }
}
