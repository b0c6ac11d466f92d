using System.Text.Json;
using KitWorks.Api.Pages;
using KitWorks.Geometry;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Api.Http;

/// <summary>Where every no becomes a problem document (RFC 9457), expected or not.</summary>
static class Problems
{
    /// <summary>The answer to a refusal.</summary>
    public static IResult Of(Refusal refusal) => Result(DocumentOf(refusal));

    /// <summary>The answer to a refusal, to be kept: the same request will be refused again.</summary>
    public static KeptAnswer Kept(Refusal refusal)
    {
        var problem = DocumentOf(refusal);
        return new(problem.Status, ContentType, JsonSerializer.SerializeToUtf8Bytes(problem, ProblemJson));
    }

    /// <summary>A problem document.</summary>
    public static IResult Of(int status, string code, string detail, params FieldProblem[] errors) => Result(DocumentOf(status, code, detail, errors));

    static Problem DocumentOf(Refusal refusal) => DocumentOf(
        refusal.Kind switch
        {
            RefusalKind.Malformed => StatusCodes.Status400BadRequest,
            RefusalKind.NotFound => StatusCodes.Status404NotFound,
            RefusalKind.Conflict => StatusCodes.Status409Conflict,
            RefusalKind.Impossible => StatusCodes.Status422UnprocessableEntity,
            RefusalKind.Forbidden => StatusCodes.Status403Forbidden,
        },
        refusal.Code, refusal.Detail, [.. refusal.Errors.Select(e => new FieldProblem(e.Field.Length == 0 ? "#" : "#/" + e.Field, e.Detail))]);

    static Problem DocumentOf(int status, string code, string detail, FieldProblem[] errors) =>
        new("about:blank", Microsoft.AspNetCore.WebUtilities.ReasonPhrases.GetReasonPhrase(status), status, code, detail, errors.Length == 0 ? null : errors);

    static Microsoft.AspNetCore.Http.HttpResults.JsonHttpResult<Problem> Result(Problem problem) => TypedResults.Json(problem, ProblemJson, ContentType, problem.Status);

    const string ContentType = "application/problem+json";

    /// <summary>Turns what was thrown into a problem document. Details of a bug go to the log only.</summary>
    public static async Task Answer(HttpContext context)
    {
        var thrown = context.Features.Get<IExceptionHandlerFeature>()!.Error;
        var problem = thrown switch
        {
            BadHttpRequestException { InnerException: JsonException json } => Of(UnreadableJson.Refuse(json)),
            BadHttpRequestException { StatusCode: StatusCodes.Status413PayloadTooLarge } =>
                Of(StatusCodes.Status413PayloadTooLarge, "request.too-large", BodyLimit.Detail),
            BadHttpRequestException { StatusCode: StatusCodes.Status415UnsupportedMediaType } =>
                Of(StatusCodes.Status415UnsupportedMediaType, "request.media-type", WrongMediaType),
            BadHttpRequestException { StatusCode: StatusCodes.Status400BadRequest } bad when UnreadableParameter.Refuse(bad) is { } refusal => Of(refusal),
            BadHttpRequestException bad => Of(bad.StatusCode, "request.malformed", "The request could not be read: a body or a parameter is missing or not of its form."),
            BusyException => Of(StatusCodes.Status503ServiceUnavailable, "service.busy", "The service has as much to compute as it can. Nothing was changed; ask again in a moment."),
            DbUpdateConcurrencyException => Of(StatusCodes.Status409Conflict, "state.changed", "Somebody changed this at the same moment. Read it again, and ask again."),
            _ when StorageFaults.IsUnavailable(thrown) =>
                Of(StatusCodes.Status503ServiceUnavailable, "storage.unavailable", "The shop cannot write to its database at the moment; nothing was changed. Try again later."),
            _ => Of(StatusCodes.Status500InternalServerError, "internal", "Something went wrong here; it is logged. Nothing was changed."),
        };
        if (PlainPage.IsWanted(context.Request) && problem is IStatusCodeHttpResult { StatusCode: { } status } && problem is IValueHttpResult { Value: Problem { Detail: var words } })
            problem = PlainPage.Of(status, words);
        if (problem is IStatusCodeHttpResult { StatusCode: StatusCodes.Status503ServiceUnavailable }) context.Response.Headers.RetryAfter = "5";
        await problem.ExecuteAsync(context);
    }

    /// <summary>Answers without a body (no such address, wrong method) become problem documents too.</summary>
    public static Task AnswerStatus(StatusCodeContext context)
    {
        var status = context.HttpContext.Response.StatusCode;
        if (PlainPage.IsWanted(context.HttpContext.Request)) return AnswerPage(status).ExecuteAsync(context.HttpContext);
        var (code, detail) = status switch
        {
            StatusCodes.Status401Unauthorized => ("access.no-key", "Send a key that works: Authorization: Bearer <key>."),
            StatusCodes.Status403Forbidden => ("access.role", "This key's role may not do this."),
            StatusCodes.Status404NotFound => ("address.unknown", "There is nothing at this address. See /docs."),
            StatusCodes.Status405MethodNotAllowed => ("address.method", "This address does not take this method. See /docs."),
            StatusCodes.Status413PayloadTooLarge => ("request.too-large", BodyLimit.Detail),
            StatusCodes.Status415UnsupportedMediaType => ("request.media-type", WrongMediaType),
            _ => ("request.failed", "The request could not be served."),
        };
        return Of(status, code, detail).ExecuteAsync(context.HttpContext);
    }

    /// <summary>The same for somebody with a browser. A form that is refused before any page sees it was loaded under another sign-in.</summary>
    static IResult AnswerPage(int status) => PlainPage.Of(status, status switch
    {
        StatusCodes.Status400BadRequest => "It was loaded before you signed in, or before the service was set up anew. Load the page again; nothing was changed.",
        StatusCodes.Status403Forbidden => "An admin may do this. Nothing was changed.",
        StatusCodes.Status404NotFound => "No page has this address.",
        _ => "The request could not be served. Nothing was changed.",
    });

    const string WrongMediaType = "Send the body as application/json.";

    static readonly JsonSerializerOptions ProblemJson = new(JsonSerializerDefaults.Web)
    {
        DefaultIgnoreCondition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };
}

/// <summary>A problem document.</summary>
/// <param name="Type">Always <c>about:blank</c>; the code tells problems apart.</param>
/// <param name="Title">The status in words.</param>
/// <param name="Status">The HTTP status.</param>
/// <param name="Code">A stable, dotted code.</param>
/// <param name="Detail">What was wrong, and what would be right.</param>
/// <param name="Errors">The fields at fault.</param>
sealed record Problem(string Type, string Title, int Status, string Code, string Detail, FieldProblem[]? Errors);

/// <summary>A field at fault.</summary>
/// <param name="Pointer">A JSON pointer into the request body, as a URI fragment.</param>
/// <param name="Detail">What was wrong with it, and what would be right.</param>
sealed record FieldProblem(string Pointer, string Detail);
