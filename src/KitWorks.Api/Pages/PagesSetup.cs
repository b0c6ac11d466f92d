using KitWorks.Api.Access;
using KitWorks.Shop.Storage;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.Extensions.FileProviders;

namespace KitWorks.Api.Pages;

/// <summary>The bench: pages for the shop's people, without a build step.</summary>
static class PagesSetup
{
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
