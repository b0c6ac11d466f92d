using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;

namespace KitWorks.Tests;

/// <summary>What came back. No answer, whatever the request, may be a fault of the service or show its insides.</summary>
sealed class Answer
{
    Answer(HttpResponseMessage response, byte[] bytes)
    {
        (Status, Headers, MediaType, Bytes) = ((int)response.StatusCode, response.Headers, response.Content.Headers.ContentType?.MediaType, bytes);
        Assert.True(Status < 500, $"{response.RequestMessage?.Method} {response.RequestMessage?.RequestUri}: {Status} {Text}");
        if (Status >= 400) ShowsNothingInside();
    }

    public int Status { get; }
    public HttpResponseHeaders Headers { get; }
    public string? MediaType { get; }
    public byte[] Bytes { get; }
    public string Text => Encoding.UTF8.GetString(Bytes);
    public JsonElement Json => JsonSerializer.Deserialize<JsonElement>(Bytes);
    public bool Replayed => Headers.TryGetValues("Idempotent-Replayed", out var values) && values.Single() == "true";

    public static async Task<Answer> Read(HttpResponseMessage response) => new(response, await response.Content.ReadAsByteArrayAsync());

    /// <summary>This answer, if its status is the one expected.</summary>
    public Answer Is(int status)
    {
        Assert.True(Status == status, $"{status} was expected, and it is {Status}: {(MediaType is "application/pdf" or "image/png" ? MediaType : Text)}");
        return this;
    }

    /// <summary>The JSON of an answer that says 200.</summary>
    public JsonElement Ok => Is(200).Json;

    /// <summary>The JSON of an answer that says 201.</summary>
    public JsonElement Created => Is(201).Json;

    /// <summary>Whether this is a whole problem document with this code, which points at this field where one is given.</summary>
    public JsonElement IsProblem(int status, string code, string? pointer = null)
    {
        Is(status);
        Assert.Equal("application/problem+json", MediaType);
        var problem = Json;
        Assert.Equal(code, problem.Text("code"));
        Assert.Equal(status, problem.Int("status"));
        Assert.NotEmpty(problem.Text("title"));
        Assert.NotEmpty(problem.Text("detail"));
        if (pointer is null) return problem;
        var errors = problem.List("errors");
        Assert.Contains(pointer, errors.Select(e => e.Text("pointer")));
        Assert.All(errors, e => Assert.NotEmpty(e.Text("detail")));
        return problem;
    }

    void ShowsNothingInside()
    {
        foreach (var inside in (string[])["KitWorks.", "System.", "Microsoft.", "Exception", "   at ", ".cs:line", "SQLite"])
            Assert.DoesNotContain(inside, Text, StringComparison.Ordinal);
    }
}
