using Microsoft.AspNetCore.Http.Features;

namespace KitWorks.Api.Http;

/// <summary>
/// Refuses a body that is too large. Where its length is announced, the answer is given before anything is read, and the
/// server takes in the rest up to <see cref="StillTaken"/>: cut off at once, most clients report a broken connection and never see the answer.
/// </summary>
sealed class BodyLimit(RequestDelegate next)
{
    public const int Most = 1024 * 1024;

    /// <summary>What the server reads of a request at all.</summary>
    public const int StillTaken = 16 * Most;

    public static string Detail => $"A request body is at most {Most / 1024} KiB.";

    public Task InvokeAsync(HttpContext context)
    {
        if (context.Request.ContentLength > Most)
            return Problems.Of(StatusCodes.Status413PayloadTooLarge, "request.too-large", Detail).ExecuteAsync(context);
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit) limit.MaxRequestBodySize = Most;
        return next(context);
    }
}
