using System.Security.Cryptography;
using System.Text;
using KitWorks.Shop;

namespace KitWorks.Api.Http;

/// <summary>
/// Reads <c>Idempotency-Key</c> and says to the shop under which key, and for which request, it is called. The answer of a
/// repeat carries <c>Idempotent-Replayed: true</c>.
/// </summary>
sealed class OnceOnlyHeader(RequestDelegate next)
{
    public const string Header = "Idempotency-Key";

    public async Task InvokeAsync(HttpContext context, Call call)
    {
        if (!HttpMethods.IsPost(context.Request.Method) || !context.Request.Headers.TryGetValue(Header, out var values))
        {
            if (context.GetEndpoint()?.Metadata.GetMetadata<OnceOnlyRequired>() is not null)
            {
                await Problems.Of(StatusCodes.Status400BadRequest, "idempotency.key-missing",
                    "Send an Idempotency-Key header with a new random value, so that a repeat of this request does nothing twice.").ExecuteAsync(context);
                return;
            }
            await next(context);
            return;
        }
        var key = values.ToString();
        if (key.Length is 0 or > 200 || key.Any(c => c is < ' ' or > '~'))
        {
            await Problems.Of(StatusCodes.Status400BadRequest, "idempotency.key-malformed", "An Idempotency-Key is 1 to 200 printable ASCII characters.").ExecuteAsync(context);
            return;
        }
        // In memory: no larger body gets here, and there may be no folder to write to.
        context.Request.EnableBuffering(BodyLimit.Most);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Encoding.UTF8.GetBytes(context.Request.Path + "\n"));
        var buffer = new byte[8192];
        for (int read; (read = await context.Request.Body.ReadAsync(buffer, context.RequestAborted)) > 0;) hash.AppendData(buffer, 0, read);
        context.Request.Body.Position = 0;
        call.OnceOnly = new(key, Convert.ToHexStringLower(hash.GetHashAndReset()));
        context.Response.OnStarting(() =>
        {
            if (call.Replayed) context.Response.Headers["Idempotent-Replayed"] = "true";
            return Task.CompletedTask;
        });
        await next(context);
    }
}

/// <summary>On an endpoint that must not be called without an idempotency key.</summary>
sealed class OnceOnlyRequired;
