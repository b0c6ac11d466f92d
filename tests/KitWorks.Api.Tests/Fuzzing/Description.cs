using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace KitWorks.Api.Tests.Fuzzing;

/// <summary>Our OpenAPI document, read as a stranger reads it.</summary>
sealed class Description
{
    readonly JsonElement document;
    readonly Dictionary<string, JsonSchema?> answers = [];

    public Description(JsonElement document)
    {
        this.document = document;
        Operations = [.. document.At("paths").EnumerateObject().SelectMany(path => path.Value.EnumerateObject(), (path, operation) => new Operation(path.Name, operation.Name.ToUpperInvariant(), operation.Value))];
    }

    public IReadOnlyList<Operation> Operations { get; }

    /// <summary>A schema, the one that it refers to where it does.</summary>
    public JsonElement Resolve(JsonElement schema)
    {
        while (schema.ValueKind == JsonValueKind.Object && schema.TryGetProperty("$ref", out var at)) schema = document.At(at.GetString()![2..]);
        return schema;
    }

    /// <summary>What an answer has that its description does not allow, or lacks.</summary>
    public string? FaultIn(Operation operation, int status, JsonElement answer)
    {
        var name = $"{operation} {status}";
        if (!answers.TryGetValue(name, out var schema)) answers[name] = schema = SchemaOf(operation, status);
        if (schema is null) return null;
        var result = schema.Evaluate(answer, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return result.IsValid ? null : string.Join("; ", result.Details!.Where(d => d.Errors is not null).Take(4).Select(d => $"{d.InstanceLocation}: {string.Join(", ", d.Errors!.Values)}"));
    }

    JsonSchema? SchemaOf(Operation operation, int status)
    {
        var responses = operation.Json.At("responses");
        if (!responses.TryGetProperty($"{status}", out var response) && !responses.TryGetProperty("default", out response)) return null;
        if (!response.TryGetProperty("content", out var content)) return null;
        var media = content.EnumerateObject().FirstOrDefault(m => m.Name.Contains("json", StringComparison.Ordinal));
        if (media.Value.ValueKind != JsonValueKind.Object || !media.Value.TryGetProperty("schema", out var schema)) return null;
        var whole = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["allOf"] = new JsonArray(JsonNode.Parse(schema.GetRawText())),
            ["$defs"] = JsonNode.Parse(document.At("components/schemas").GetRawText()),
        };
        return JsonSchema.FromText(whole.ToJsonString().Replace("#/components/schemas/", "#/$defs/", StringComparison.Ordinal));
    }
}

/// <summary>One operation of the description.</summary>
sealed record Operation(string Path, string Method, JsonElement Json)
{
    public IEnumerable<JsonElement> Parameters(string place) =>
        Json.TryGetProperty("parameters", out var all) ? all.EnumerateArray().Where(p => p.Text("in") == place) : [];

    public JsonElement? Body => Json.TryGetProperty("requestBody", out var body) ? body.At("content").GetProperty("application/json").GetProperty("schema") : null;

    public override string ToString() => $"{Method} {Path}";
}
