using System.Net;
using System.Text;
using KitWorks.Api.Pages;
using Microsoft.OpenApi;

namespace KitWorks.Api.Endpoints;

/// <summary>The description of the interface as a page: what each address takes and answers, and the fields of every object. No script, nothing fetched.</summary>
static class DocsPage
{
    public static string Write(OpenApiDocument document)
    {
        var operations = document.Paths.SelectMany(p => p.Value.Operations ?? [], (p, o) => (Path: p.Key, Method: o.Key.Method, Operation: o.Value)).ToList();
        var groups = operations.GroupBy(o => o.Operation.Tags?.FirstOrDefault()?.Name ?? "Other").ToList();
        var html = new StringBuilder(Head(document.Info));
        html.Append("<nav class=\"tabs\" aria-label=\"Parts\">").AppendJoin(' ', groups.Select(g => $"<a href=\"#{Text(g.Key)}\">{Text(g.Key)}</a>")).Append(" <a href=\"#objects\">Objects</a></nav>");
        foreach (var group in groups)
        {
            html.Append($"<h2 id=\"{Text(group.Key)}\">{Text(group.Key)}</h2>");
            foreach (var (path, method, operation) in group) WriteOperation(html, path, method, operation);
        }
        html.Append("<h2 id=\"objects\">Objects</h2>");
        foreach (var (name, schema) in document.Components?.Schemas?.OrderBy(s => s.Key, StringComparer.Ordinal) ?? Enumerable.Empty<KeyValuePair<string, IOpenApiSchema>>()) WriteObject(html, name, schema);
        return PlainPage.Write($"{document.Info.Title}: the HTTP interface", $"<div class=\"docs\">{html}</div>");
    }

    static void WriteOperation(StringBuilder html, string path, string method, OpenApiOperation operation)
    {
        html.Append($"<section><h3><b>{Text(method)}</b> <code>{Text(path)}</code></h3><p>{Text(operation.Summary)}</p>");
        if (operation.Parameters is { Count: > 0 } parameters)
            html.Append("<p>With ").AppendJoin(", ", parameters.Select(p => $"<code>{Text(p.Name)}</code> {(p.In is ParameterLocation.Header ? "(header" : p.In is ParameterLocation.Path ? "(in the address" : "(query")}{(p.Required ? ")" : ", optional)")}")).Append("</p>");
        if (operation.RequestBody?.Content?.Values.FirstOrDefault()?.Schema is { } body) html.Append($"<p>Takes {Form(body)}</p>");
        foreach (var (status, response) in operation.Responses?.Where(r => r.Key != "default") ?? [])
            html.Append($"<p>Answers {Text(status)}{(response.Content?.FirstOrDefault() is { Key: { } type } content ? $" {(content.Value.Schema is { } schema ? Form(schema) : Text(type))}" : "")}</p>");
        html.Append("</section>");
    }

    static void WriteObject(StringBuilder html, string name, IOpenApiSchema schema)
    {
        html.Append($"<section id=\"{Text(name)}\"><h3>{Text(name)}</h3><p>{Text(schema.Description)}</p>");
        if (schema.Enum is { Count: > 0 } words) html.Append("<p>One of ").AppendJoin(", ", words.Select(w => $"<code>{Text(w?.ToJsonString())}</code>")).Append("</p>");
        if (schema.Properties is { Count: > 0 } properties)
        {
            html.Append("<table>");
            foreach (var (field, form) in properties)
                html.Append($"<tr><td><code>{Text(field)}</code><td>{Form(form)}<td>{Text(DescriptionOf(form))}");
            html.Append("</table>");
        }
        html.Append("</section>");
    }

    static string? DescriptionOf(IOpenApiSchema schema) => schema.OneOf?.FirstOrDefault(s => s.Type != JsonSchemaType.Null)?.Description ?? schema.Description;

    /// <summary>The form of a value in words, with a link where it is an object of its own.</summary>
    static string Form(IOpenApiSchema schema) => schema switch
    {
        OpenApiSchemaReference { Reference.Id: { } id } => $"<a href=\"#{Text(id)}\">{Text(id)}</a>",
        { OneOf: { Count: > 0 } either } => string.Join(" or ", either.Select(Form)),
        { Items: { } items } => $"list of {Form(items)}",
        { AdditionalProperties: { } values } => $"object of {Form(values)} by name",
        { Type: { } type } => Text(string.Join(" or ", Enum.GetValues<JsonSchemaType>().Where(t => type.HasFlag(t)).Select(Word)) + (schema.Format is { } format && !format.StartsWith("int", StringComparison.Ordinal) ? $" ({format})" : "")),
        _ => "any value",
    };

    static string Word(JsonSchemaType type) => type switch
    {
        JsonSchemaType.Null => "null",
        JsonSchemaType.Boolean => "true or false",
        JsonSchemaType.Integer => "whole number",
        JsonSchemaType.Number => "number",
        JsonSchemaType.String => "text",
        JsonSchemaType.Object => "object",
        JsonSchemaType.Array => "list",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    static string Text(string? text) => WebUtility.HtmlEncode(text ?? "");

    static string Head(OpenApiInfo info) =>
        $"<h1>{Text(info.Title)}</h1><p>{Text(info.Description)}</p><p>The same for machines: <a href=\"/openapi/v1.json\">/openapi/v1.json</a>. Send a key as <code>Authorization: Bearer &lt;key&gt;</code>.</p>";
}
