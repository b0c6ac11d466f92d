using System.Net;

namespace KitWorks.Api.Pages;

/// <summary>A page without a sign-in and without the bench around it: for what is written by hand, and for what went wrong.</summary>
static class PlainPage
{
    /// <summary>Whether somebody with a browser asks, and not a program.</summary>
    public static bool IsWanted(HttpRequest request) =>
        !request.Path.StartsWithSegments("/api") && !request.Path.StartsWithSegments("/openapi") && request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal);

    public static string Write(string title, string body, string? script = null) => $"""
        <!doctype html>
        <html lang="en">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <meta name="color-scheme" content="light dark">
        <title>{WebUtility.HtmlEncode(title)}</title>
        <link rel="icon" href="/mark.svg" type="image/svg+xml">
        <link rel="stylesheet" href="/bench.css">
        {(script is null ? "" : $"<script src=\"{script}\" defer></script>")}
        </head>
        <body class="plain"><main id="main">{body}</main></body>
        </html>
        """;

    /// <summary>What went wrong, for a person; nothing was changed.</summary>
    public static IResult Of(int status, string detail)
    {
        var title = status switch
        {
            StatusCodes.Status400BadRequest => "This form is too old",
            StatusCodes.Status403Forbidden => "Not for this account",
            StatusCodes.Status404NotFound => "There is nothing here",
            StatusCodes.Status409Conflict => "Somebody was faster",
            StatusCodes.Status503ServiceUnavailable => "Not now",
            _ => "That did not work",
        };
        return TypedResults.Content(Write(title, $"<h1>{title}</h1><p>{WebUtility.HtmlEncode(detail)}</p><p><a class=\"button\" href=\"/\">To the bench</a></p>"), "text/html; charset=utf-8", statusCode: status);
    }
}
