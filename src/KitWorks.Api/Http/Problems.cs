using System.Text.Json;
using KitWorks.Geometry;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Api.Http;

/// <summary>Where every no becomes a problem document (RFC 9457), expected or not.</summary>
static class Problems
{
    /// <summary>The answer to a refusal.</summary>
    public static IResult Of(Refusal refusal) => Of(
        refusal.Kind switch
        {
            RefusalKind.Malformed => StatusCodes.Status400BadRequest,
            RefusalKind.NotFound => StatusCodes.Status404NotFound,
            RefusalKind.Conflict => StatusCodes.Status409Conflict,
            RefusalKind.Impossible => StatusCodes.Status422UnprocessableEntity,
            RefusalKind.Forbidden => StatusCodes.Status403Forbidden,
        },
        refusal.Code, refusal.Detail, [.. refusal.Errors.Select(e => new FieldProblem(e.Field.Length == 0 ? "#" : "#/" + e.Field, e.Detail))]);

    /// <summary>A problem document.</summary>
    public static IResult Of(int status, string code, string detail, params FieldProblem[] errors) => TypedResults.Json(
        new Problem("about:blank", Microsoft.AspNetCore.WebUtilities.ReasonPhrases.GetReasonPhrase(status), status, code, detail, errors.Length == 0 ? null : errors),
        ProblemJson, "application/problem+json", status);

    /// <summary>Turns what was thrown into a problem document. Details of a bug go to the log only.</summary>
    public static async Task Answer(HttpContext context)
    {
        var thrown = context.Features.Get<IExceptionHandlerFeature>()!.Error;
        var problem = thrown switch
        {
            BadHttpRequestException { InnerException: JsonException json } => Of(Unreadable(json)),
            BadHttpRequestException { StatusCode: StatusCodes.Status413PayloadTooLarge } =>
                Of(StatusCodes.Status413PayloadTooLarge, "request.too-large", TooLarge),
            BadHttpRequestException bad => Of(bad.StatusCode, "request.malformed", bad.StatusCode == StatusCodes.Status415UnsupportedMediaType
                ? "Send the body as application/json." : "The request could not be read: a body or a parameter is missing or not of its form."),
            DbUpdateConcurrencyException => Of(StatusCodes.Status409Conflict, "state.changed", "Somebody changed this at the same moment. Read it again, and ask again."),
            Microsoft.Data.Sqlite.SqliteException { SqliteErrorCode: 5 or 6 or 8 or 13 or 10 or 14 } or DbUpdateException { InnerException: Microsoft.Data.Sqlite.SqliteException { SqliteErrorCode: 5 or 6 or 8 or 13 or 10 or 14 } } =>
                Of(StatusCodes.Status503ServiceUnavailable, "storage.unavailable", "The shop cannot write to its database at the moment; nothing was changed. Try again later."),
            _ => Of(StatusCodes.Status500InternalServerError, "internal", "Something went wrong here; it is logged. Nothing was changed."),
        };
        if (problem is IStatusCodeHttpResult { StatusCode: StatusCodes.Status503ServiceUnavailable }) context.Response.Headers.RetryAfter = "5";
        await problem.ExecuteAsync(context);
    }

    /// <summary>Answers without a body (no such address, wrong method) become problem documents too.</summary>
    public static Task AnswerStatus(StatusCodeContext context)
    {
        var status = context.HttpContext.Response.StatusCode;
        var (code, detail) = status switch
        {
            StatusCodes.Status401Unauthorized => ("access.no-key", "Send a key that works: Authorization: Bearer <key>."),
            StatusCodes.Status403Forbidden => ("access.role", "This key's role may not do this."),
            StatusCodes.Status404NotFound => ("address.unknown", "There is nothing at this address. See /docs."),
            StatusCodes.Status405MethodNotAllowed => ("address.method", "This address does not take this method. See /docs."),
            StatusCodes.Status413PayloadTooLarge => ("request.too-large", TooLarge),
            StatusCodes.Status415UnsupportedMediaType => ("request.media-type", "Send the body as application/json."),
            _ => ("request.failed", "The request could not be served."),
        };
        return Of(status, code, detail).ExecuteAsync(context.HttpContext);
    }

    static string TooLarge => $"A request body is at most {Hosting.ShopHost.MaxBodyBytes / 1024} KiB.";

    static Refusal Unreadable(JsonException json)
    {
        var field = PointerOf(json.Path);
        var unknown = json.Message.Contains("could not be mapped to any .NET member", StringComparison.Ordinal);
        var detail = unknown ? $"There is no field '{json.Message.Split('\'')[1]}' here. See /docs for the fields."
            : json.Message.Contains("Duplicate property", StringComparison.Ordinal) ? "A field stands here twice."
            : json.Message.Contains("could not be converted", StringComparison.Ordinal) ? "The value is not of this field's form. See /docs."
            : json.Message.Contains("maximum configured depth", StringComparison.Ordinal) ? "The body is nested too deep."
            : json.Message.Contains("LineNumber", StringComparison.Ordinal) ? $"The body is not JSON: see line {json.LineNumber + 1}, byte {json.BytePositionInLine + 1}."
            : json.Message;
        return new(RefusalKind.Malformed, unknown ? "request.unknown-field" : "request.malformed", detail) { Errors = [new(field, detail)] };
    }

    /// <summary><c>$.lines[0].sku</c> as a JSON pointer without its first slash.</summary>
    static string PointerOf(string? path) => (path ?? "$")
        .Replace("$", "", StringComparison.Ordinal).Replace("[", ".", StringComparison.Ordinal).Replace("]", "", StringComparison.Ordinal)
        .Replace("'", "", StringComparison.Ordinal).Trim('.').Replace('.', '/');

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
