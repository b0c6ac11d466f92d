using System.Security.Claims;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using KitWorks.Shop;
using KitWorks.Shop.Access;
using MediatR;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace KitWorks.Api.Access;

/// <summary>Who calls, by the key in <c>Authorization: Bearer</c>.</summary>
sealed class KeyAuthentication(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, KnownKeys known, Call call, IConfiguration configuration)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    public const string SchemeName = "key";

    /// <summary>Any key will do.</summary>
    public const string AnyKey = "any key";

    /// <summary>The shop's own people.</summary>
    public const string Staff = "staff";

    /// <summary>Whoever may change keys and catalog.</summary>
    public const string AdminOnly = "admin";

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        const string bearer = "Bearer ";
        var header = Request.Headers.Authorization.ToString();
        if (!header.StartsWith(bearer, StringComparison.OrdinalIgnoreCase)) return AuthenticateResult.NoResult();
        var secret = header[bearer.Length..].Trim();
        if (secret.Length > 200) return AuthenticateResult.Fail("The key is too long.");
        var holder = BootstrapKey.Is(secret, configuration)
            ? new KeyHolder(Call.Bootstrap, Role.Admin)
            : known.Find(secret) ?? await Find(secret);
        if (holder is null) return AuthenticateResult.Fail("The key is unknown, expired or revoked.");

        (call.Actor, call.Role, call.Address) = (holder.Name, holder.Role, Context.Connection.RemoteIpAddress?.ToString());
        var identity = new ClaimsIdentity([new(ClaimTypes.Name, holder.Name), new(ClaimTypes.Role, holder.Role.ToString())], SchemeName);
        return AuthenticateResult.Success(new(new(identity), SchemeName));
    }

    async Task<KeyHolder?> Find(string secret) =>
        (await Context.RequestServices.GetRequiredService<IMediator>().Send(new FindKey(secret), Context.RequestAborted)).Succeeds(out var found, out _) ? found : null;

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers.WWWAuthenticate = "Bearer";
        return base.HandleChallengeAsync(properties);
    }
}

/// <summary>The admin key of the settings, with which a new shop begins.</summary>
static class BootstrapKey
{
    const string Setting = "Access:BootstrapAdminKey";

    public static bool IsSet(IConfiguration configuration) => configuration[Setting] is { Length: > 0 };

    public static bool Is(string secret, IConfiguration configuration) => configuration[Setting] is { Length: > 0 } bootstrap
        && CryptographicOperations.FixedTimeEquals(SHA256.HashData(Encoding.UTF8.GetBytes(secret)), SHA256.HashData(Encoding.UTF8.GetBytes(bootstrap)));
}

/// <summary>Writes down when keys were used, as long as the service runs.</summary>
sealed class KeyUseService(KeyUses uses) : BackgroundService
{
    protected override Task ExecuteAsync(CancellationToken stoppingToken) => uses.Run(stoppingToken);
}

static class KeyAccess
{
    public static IServiceCollection AddKeyAccess(this IServiceCollection services)
    {
        const string either = "key or cookie";
        services.AddAuthentication(either)
            .AddPolicyScheme(either, null, policy => policy.ForwardDefaultSelector = StaffCookie.SchemeFor)
            .AddCookie(StaffCookie.SchemeName, StaffCookie.Configure)
            .AddScheme<AuthenticationSchemeOptions, KeyAuthentication>(KeyAuthentication.SchemeName, null);
        services.AddAuthorizationBuilder()
            .AddPolicy(KeyAuthentication.AnyKey, p => p.RequireAuthenticatedUser())
            .AddPolicy(KeyAuthentication.Staff, p => p.RequireRole(nameof(Role.Bench), nameof(Role.Admin)))
            .AddPolicy(KeyAuthentication.AdminOnly, p => p.RequireRole(nameof(Role.Admin)));
        return services;
    }
}
