using KitWorks.Api.Access;
using KitWorks.Shop.Storage;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.Extensions.FileProviders;

namespace KitWorks.Api.Pages;

/// <summary>The bench: pages for the shop's people, without a build step and with a strict content policy.</summary>
static class PagesSetup
{
    /// <summary>No script and no style but our own files; nothing from elsewhere.</summary>
    const string Policy = "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data: blob:; connect-src 'self'; "
        + "form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    public static void AddPages(this IServiceCollection services)
    {
        services.AddRazorPages(pages =>
        {
            pages.Conventions.AuthorizeFolder("/", KeyAuthentication.Staff);
            foreach (var open in (string[])["/SignIn", "/First", "/Bundle"]) pages.Conventions.AllowAnonymousToPage(open);
            foreach (var page in (string[])["/Settings/Keys", "/Settings/Staff"]) pages.Conventions.AuthorizePage(page, KeyAuthentication.AdminOnly);
        });
        services.AddRouting(routes => routes.LowercaseUrls = true);
        services.AddAntiforgery(antiforgery =>
        {
            antiforgery.Cookie.Name = "kitworks-form";
            antiforgery.SuppressXFrameOptionsHeader = true;
        });
        services.AddDataProtection().SetApplicationName("KitWorks").PersistKeysToDbContext<ShopDb>();
    }

    public static void UsePageFiles(this WebApplication app)
    {
        app.Use(async (context, next) =>
        {
            context.Response.OnStarting(() =>
            {
                var headers = context.Response.Headers;
                if (context.Response.ContentType?.StartsWith("text/html", StringComparison.Ordinal) is not true) return Task.CompletedTask;
                headers.ContentSecurityPolicy = Policy;
                // A page shows what is so now, and nobody else's browser keeps it.
                headers.CacheControl = "no-store";
                return Task.CompletedTask;
            });
            await next(context);
        });
        app.UseStaticFiles(Files(Path.Combine(AppContext.BaseDirectory, "wwwroot"), ""));
        // The pages are set in the same face as the labels.
        app.UseStaticFiles(Files(Path.Combine(AppContext.BaseDirectory, "labels-templates", "fonts"), "/fonts"));
    }

    static StaticFileOptions Files(string folder, string address) => new()
    {
        FileProvider = new PhysicalFileProvider(folder),
        RequestPath = address,
        OnPrepareResponse = file => file.Context.Response.Headers.CacheControl = file.Context.Request.Query.ContainsKey("v") || address == "/fonts" ? "public, max-age=31536000, immutable" : "no-cache",
    };
}
