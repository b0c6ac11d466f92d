using System.Security.Claims;
using KitWorks.Shop;
using KitWorks.Shop.Access;
using MediatR;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;

namespace KitWorks.Api.Access;

/// <summary>Who works at the bench, by the cookie of their sign-in. It is held against the database at each request, so that whoever is ended is out at once.</summary>
static class StaffCookie
{
    public const string SchemeName = "staff cookie";

    const string Cookie = "kitworks", Stamp = "stamp";

    public static void Configure(CookieAuthenticationOptions options)
    {
        options.Cookie.Name = Cookie;
        options.Cookie.HttpOnly = true;
        options.Cookie.SameSite = SameSiteMode.Lax;
        options.LoginPath = options.AccessDeniedPath = "/sign-in";
        options.ReturnUrlParameter = "to";
        options.ExpireTimeSpan = TimeSpan.FromHours(12);
        options.SlidingExpiration = true;
        options.Events.OnValidatePrincipal = Validate;
        // The interface answers in its own way, and a page that may not be seen says so.
        options.Events.OnRedirectToLogin = context => IsInterface(context.Request) ? Status(context.Response, StatusCodes.Status401Unauthorized) : Go(context);
        options.Events.OnRedirectToAccessDenied = context => Status(context.Response, StatusCodes.Status403Forbidden);
    }

    /// <summary>A key where one is sent; otherwise the cookie, on pages and for reading the interface. What changes something through the interface needs a key.</summary>
    public static string SchemeFor(HttpContext context)
    {
        var request = context.Request;
        if (request.Headers.Authorization.Count > 0) return KeyAuthentication.SchemeName;
        if (!IsInterface(request)) return SchemeName;
        return request.Cookies.ContainsKey(Cookie) && (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method)) ? SchemeName : KeyAuthentication.SchemeName;
    }

    public static Task SignIn(HttpContext context, SignedIn who) => context.SignInAsync(SchemeName, new ClaimsPrincipal(new ClaimsIdentity(
        [new(ClaimTypes.NameIdentifier, who.Id.ToString()), new(ClaimTypes.Name, who.Name), new(ClaimTypes.Role, who.Role.ToString()), new(Stamp, who.Stamp)], SchemeName)));

    static async Task Validate(CookieValidatePrincipalContext context)
    {
        var services = context.HttpContext.RequestServices;
        if (Guid.TryParse(context.Principal?.FindFirstValue(ClaimTypes.NameIdentifier), out var id) && context.Principal.FindFirstValue(Stamp) is { } stamp
            && (await services.GetRequiredService<IMediator>().Send(new FindSignedIn(id, stamp), context.HttpContext.RequestAborted)).Succeeds(out var who, out _))
        {
            var call = services.GetRequiredService<Call>();
            (call.Actor, call.Role) = (who.Name, who.Role);
            return;
        }
        context.RejectPrincipal();
        await context.HttpContext.SignOutAsync(SchemeName);
    }

    static bool IsInterface(HttpRequest request) => request.Path.StartsWithSegments("/api");

    static Task Status(HttpResponse response, int status)
    {
        response.StatusCode = status;
        return Task.CompletedTask;
    }

    static Task Go(RedirectContext<CookieAuthenticationOptions> context)
    {
        context.Response.Redirect(context.RedirectUri);
        return Task.CompletedTask;
    }
}
