using KitWorks.Api.Access;
using KitWorks.Api.Http;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace KitWorks.Api.Endpoints;

/// <summary>Completes the description of each operation: its name for clients, whose key it needs, its headers, and what it answers.</summary>
static class DescribedOperation
{
    public static async Task Complete(OpenApiOperation operation, OpenApiOperationTransformerContext context, CancellationToken cancellationToken)
    {
        var metadata = context.Description.ActionDescriptor.EndpointMetadata;
        var method = context.Description.HttpMethod ?? "GET";
        operation.OperationId ??= NameOf(method, context.Description.RelativePath ?? "");
        operation.Description ??= $"{operation.Summary}. {WhoMay(metadata)}";
        if (metadata.OfType<IAuthorizeData>().Any())
            operation.Security = [new() { [new OpenApiSecuritySchemeReference("key", context.Document)] = [] }];
        if (HttpMethods.IsPost(method)) (operation.Parameters ??= []).Add(OnceOnly(required: metadata.OfType<OnceOnlyRequired>().Any()));
        operation.Responses ??= [];
        foreach (var produced in metadata.OfType<IProducesResponseTypeMetadata>().Where(p => p.Type == typeof(void)))
            if (operation.Responses.TryGetValue($"{produced.StatusCode}", out var response) && response is OpenApiResponse { Content: null or { Count: 0 } } empty)
                empty.Content = produced.ContentTypes.ToDictionary(type => type, _ => new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String, Format = "binary" } });
        var problem = await context.GetOrCreateSchemaAsync(typeof(Problem), null, cancellationToken);
        context.Document?.AddComponent("Problem", problem);
        operation.Responses["default"] = new OpenApiResponse
        {
            Description = "A problem document that says what was wrong and what would be right.",
            Content = new Dictionary<string, OpenApiMediaType> { ["application/problem+json"] = new() { Schema = new OpenApiSchemaReference("Problem", context.Document) } },
        };
    }

    /// <summary><c>GET /api/orders/{id}/labels.pdf</c> is <c>getOrdersByIdLabelsPdf</c>.</summary>
    static string NameOf(string method, string path) => method.ToLowerInvariant() + string.Concat(path
        .Split('/', '.', '-').Where(part => part.Length > 0 && part != "api")
        .Select(part => part[0] == '{' ? $"By{Capital(part[1..].TrimEnd('}').Split(':')[0])}" : Capital(part)));

    static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];

    static string WhoMay(IList<object> metadata)
    {
        var policies = metadata.OfType<IAuthorizeData>().Select(a => a.Policy).ToList();
        return policies.Count == 0 ? "Needs no key."
            : policies.Contains(KeyAuthentication.AdminOnly) ? "Needs a key of role admin."
            : policies.Contains(KeyAuthentication.Staff) ? "Needs a key of role bench or admin."
            : "Needs a key.";
    }

    static OpenApiParameter OnceOnly(bool required) => new()
    {
        Name = OnceOnlyHeader.Header,
        In = ParameterLocation.Header,
        Required = required,
        Description = "A new random value for each new request; a repeat under the same key does nothing twice.",
        Schema = new OpenApiSchema { Type = JsonSchemaType.String, MinLength = 1, MaxLength = 200 },
    };
}
