using System.Security.Cryptography;
using KitWorks.Geometry;
using MediatR;
using Microsoft.Net.Http.Headers;

namespace KitWorks.Api.Http;

/// <summary>From outcomes to answers.</summary>
static class Answers
{
    /// <summary>200 with the value, or the problem.</summary>
    public static IResult Ok<T, TAnswer>(this Outcome<T> outcome, Func<T, TAnswer> answer) =>
        outcome.Succeeds(out var value, out var refusal) ? TypedResults.Ok(answer(value)) : Problems.Of(refusal);

    /// <summary>201 with the value and where it is, or the problem.</summary>
    public static IResult Created<T, TAnswer>(this Outcome<T> outcome, Func<T, string> location, Func<T, TAnswer> answer) =>
        outcome.Succeeds(out var value, out var refusal) ? TypedResults.Created(location(value), answer(value)) : Problems.Of(refusal);

    /// <summary>A result made from the value, or the problem.</summary>
    public static IResult Else<T>(this Outcome<T> outcome, Func<T, IResult> result) =>
        outcome.Succeeds(out var value, out var refusal) ? result(value) : Problems.Of(refusal);

    /// <summary>Sends a message and answers 200 with what comes of it.</summary>
    public static async Task<IResult> Ask<T, TAnswer>(this IMediator mediator, IRequest<Outcome<T>> message, Func<T, TAnswer> answer, CancellationToken cancellationToken) =>
        (await mediator.Send(message, cancellationToken)).Ok(answer);

    /// <summary>As above, the value being the answer.</summary>
    public static Task<IResult> Ask<T>(this IMediator mediator, IRequest<Outcome<T>> message, CancellationToken cancellationToken) =>
        mediator.Ask(message, value => value, cancellationToken);

    /// <summary>Bytes that do not change as long as what they are made from does not: with an ETag, and 304 to who has them.</summary>
    public static IResult Unchanging(byte[] content, string contentType, string? fileName = null) => TypedResults.File(
        content, contentType, fileName, entityTag: new EntityTagHeaderValue($"\"{Convert.ToHexStringLower(SHA256.HashData(content)[..12])}\""));

    /// <summary>The same from a stream, which is closed when it is sent.</summary>
    public static async Task<IResult> Unchanging(Stream content, string contentType, CancellationToken cancellationToken)
    {
        var hash = await SHA256.HashDataAsync(content, cancellationToken);
        content.Position = 0;
        return TypedResults.Stream(content, contentType, entityTag: new EntityTagHeaderValue($"\"{Convert.ToHexStringLower(hash[..12])}\""));
    }
}
