using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using KitWorks.Geometry;
using KitWorks.Kits;
using Microsoft.AspNetCore.Http.Json;
using Microsoft.Extensions.Caching.Hybrid;
using Microsoft.Extensions.Options;

namespace KitWorks.Api.Http;

/// <summary>
/// Answers that depend on nothing but the request and the catalog: each is computed once and kept, refusals too, under what
/// it was computed from. So none is ever stale, and none needs to be forgotten but for room.
/// </summary>
sealed class PureAnswers(HybridCache cache, Turns turns, IOptions<JsonOptions> json)
{
    /// <summary>The answer to the body of a request. A body that came before, to the byte, is not even read as JSON.</summary>
    /// <param name="context">The request.</param>
    /// <param name="what">The name of the computation.</param>
    /// <param name="from">What else it depends on: the version of the catalog, or nothing.</param>
    /// <param name="compute">The computation.</param>
    public async Task<IResult> ToBody<T>(HttpContext context, string what, string from, Func<T, KeptAnswer> compute) where T : class
    {
        if (!context.Request.HasJsonContentType()) throw new BadHttpRequestException("The body is no JSON.", StatusCodes.Status415UnsupportedMediaType);
        using var body = new MemoryStream();
        await context.Request.Body.CopyToAsync(body, context.RequestAborted);
        var asked = body.GetBuffer().AsMemory(0, (int)body.Length);
        return await Keep(context, what, from, asked, () => compute(Read<T>(asked.Span)));
    }

    /// <summary>The answer to what stands in an address as JSON, <paramref name="part"/>, and besides it.</summary>
    public async Task<IResult> ToAddress<T>(HttpContext context, string what, string from, string part, Func<T, KeptAnswer> compute) where T : class
    {
        var asked = Encoding.UTF8.GetBytes(part);
        return await Keep(context, what, $"{from} {context.Request.QueryString}", asked, () => compute(Read<T>(asked)));
    }

    /// <summary>A value as JSON, or its refusal.</summary>
    public KeptAnswer AsJson<T>(Outcome<T> outcome) => outcome.Succeeds(out var value, out var refusal)
        ? new(StatusCodes.Status200OK, "application/json; charset=utf-8", JsonSerializer.SerializeToUtf8Bytes(value, json.Value.SerializerOptions))
        : Problems.Kept(refusal);

    /// <summary>A text, or its refusal.</summary>
    public static KeptAnswer AsText(string contentType, Outcome<string> outcome) => outcome.Succeeds(out var text, out var refusal)
        ? new(StatusCodes.Status200OK, contentType, Encoding.UTF8.GetBytes(text))
        : Problems.Kept(refusal);

    T Read<T>(ReadOnlySpan<byte> text) where T : class
    {
        try
        {
            return JsonSerializer.Deserialize<T>(text, json.Value.SerializerOptions) ?? throw new BadHttpRequestException("There is no body.");
        }
        catch (JsonException wrong)
        {
            throw new BadHttpRequestException("The body could not be read.", wrong);
        }
    }

    ValueTask<KeptAnswer> Keep(HttpContext context, string what, string from, ReadOnlyMemory<byte> asked, Func<KeptAnswer> compute)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Encoding.UTF8.GetBytes($"{Kit.EngineVersion}\0{from}\0"));
        hash.AppendData(asked.Span);
        var key = $"{what} {Convert.ToHexStringLower(hash.GetHashAndReset())}";
        return cache.GetOrCreateAsync(key, (turns, context, compute), static async (work, cancellation) =>
        {
            using var turn = await work.turns.Take(work.context, cancellation);
            return work.compute();
        }, cancellationToken: context.RequestAborted);
    }
}
