namespace KitWorks.Api.Http;

/// <summary>
/// What tells browsers to be careful with every answer: guess no types, frame nothing, load nothing from elsewhere, tell no
/// other site where they came from, and keep nothing that was meant for one caller where another may find it.
/// </summary>
static class SafeHeaders
{
    const string Data = "default-src 'none'; frame-ancestors 'none'";

    /// <summary>No script and no style but our own files; nothing from elsewhere.</summary>
    const string Pages = "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data: blob:; connect-src 'self'; "
        + "form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    /// <summary>A drawing opened by itself may be styled, and do nothing.</summary>
    const string Drawings = "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:; frame-ancestors 'none'; sandbox";

    public static void UseSafeHeaders(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        context.Response.OnStarting(Set, context);
        return next(context);
    });

    static Task Set(object state)
    {
        var context = (HttpContext)state;
        var headers = context.Response.Headers;
        var type = context.Response.ContentType ?? "";
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        var isPage = type.StartsWith("text/html", StringComparison.Ordinal);
        headers.ContentSecurityPolicy = isPage ? Pages : type.StartsWith("image/svg", StringComparison.Ordinal) ? Drawings : Data;
        if (context.Request.IsHttps) headers.StrictTransportSecurity = "max-age=31536000";
        // A page shows what is so now, and nobody else's browser keeps it.
        if (isPage) headers.CacheControl = "no-store";
        // Kept by whoever asked, and asked for again before it is used again.
        if (headers.CacheControl.Count == 0 && context.Request.Path.StartsWithSegments("/api")) headers.CacheControl = "private, no-cache";
        return Task.CompletedTask;
    }
}
