using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using Length = KitWorks.Geometry.Length;

namespace KitWorks.Api.Endpoints;

/// <summary>The description of the interface: for machines at /openapi/v1.json, for people at /docs.</summary>
static class Docs
{
    public static void AddDocs(this IServiceCollection services) => services.AddOpenApi("v1", openApi =>
    {
        openApi.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        openApi.AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new()
            {
                Title = "KitWorks",
                Version = "1",
                Description = "From an order for a geodesic shelter to the box in which nothing is missing. "
                    + "Lengths in requests are texts with a unit; in answers numbers in millimetres named …Mm. Errors are problem documents (RFC 9457).",
            };
            document.Components ??= new();
            document.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>
            {
                ["key"] = new OpenApiSecurityScheme { Type = SecuritySchemeType.Http, Scheme = "bearer", Description = "A key of role storefront, bench or admin." },
            };
            return Task.CompletedTask;
        });
        openApi.AddOperationTransformer((operation, context, _) =>
        {
            var metadata = context.Description.ActionDescriptor.EndpointMetadata;
            if (metadata.OfType<IAuthorizeData>().Any())
                operation.Security = [new() { [new OpenApiSecuritySchemeReference("key", context.Document)] = [] }];
            if (HttpMethods.IsPost(context.Description.HttpMethod ?? ""))
            {
                operation.Parameters ??= [];
                operation.Parameters.Add(new OpenApiParameter
                {
                    Name = Http.OnceOnlyHeader.Header,
                    In = ParameterLocation.Header,
                    Required = metadata.OfType<Http.OnceOnlyRequired>().Any(),
                    Description = "A new random value for each new request; a repeat under the same key does nothing twice.",
                    Schema = new OpenApiSchema { Type = JsonSchemaType.String, MinLength = 1, MaxLength = 200 },
                });
            }
            operation.Responses ??= [];
            operation.Responses["default"] = new OpenApiResponse
            {
                Description = "A problem document that says what was wrong and what would be right.",
                Content = new Dictionary<string, OpenApiMediaType> { ["application/problem+json"] = new() },
            };
            return Task.CompletedTask;
        });
        openApi.AddSchemaTransformer((schema, context, _) =>
        {
            if (context.JsonTypeInfo.Type == typeof(Length) || context.JsonTypeInfo.Type == typeof(Length?))
            {
                schema.Type = JsonSchemaType.String;
                schema.Description = "A length with its unit.";
                schema.Examples = [JsonValue.Create("6 m")!];
            }
            return Task.CompletedTask;
        });
    });

    public static void MapDocs(this IEndpointRouteBuilder app)
    {
        app.MapOpenApi("/openapi/{documentName}.json");
        app.MapGet("/docs", async ([FromKeyedServices("v1")] IOpenApiDocumentProvider description, CancellationToken cancellationToken) =>
            TypedResults.Content(DocsPage.Write(await description.GetOpenApiDocumentAsync(cancellationToken)), "text/html; charset=utf-8"))
            .ExcludeFromDescription();
    }
}
