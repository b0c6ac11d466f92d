using System.Text;
using KitWorks.Api.Http;
using KitWorks.Shop;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace KitWorks.Api.Endpoints;

/// <summary>The description of the interface: for machines at /openapi/v1.json, for people at /docs.</summary>
static class Docs
{
    public static void AddDocs(this IServiceCollection services)
    {
        services.AddOpenApi("v1", openApi =>
        {
            openApi.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
            openApi.AddDocumentTransformer((document, context, _) =>
            {
                Describe(document, context.ApplicationServices.GetRequiredService<ShopSettings>());
                return Task.CompletedTask;
            });
            openApi.AddOperationTransformer(DescribedOperation.Complete);
            openApi.AddSchemaTransformer(DescribedSchema.Complete);
        });
        services.AddSingleton<WrittenDocs>();
    }

    public static void MapDocs(this IEndpointRouteBuilder app)
    {
        app.MapGet("/openapi/{documentName}.json", async (string documentName, WrittenDocs docs) =>
            documentName == "v1" ? (IResult)(await docs.Written).Json : TypedResults.NotFound()).ExcludeFromDescription();
        app.MapGet("/docs", async (WrittenDocs docs) => (await docs.Written).Page).ExcludeFromDescription();
    }

    static void Describe(OpenApiDocument document, ShopSettings shop)
    {
        document.Info = new()
        {
            Title = "KitWorks",
            Version = "1",
            Description = "From an order for a geodesic shelter to the box in which nothing is missing. "
                + "Lengths in requests are texts with a unit; in answers numbers in millimetres named …Mm. Errors are problem documents (RFC 9457).",
            Contact = new() { Name = shop.ShopName, Url = shop.PublicUrl },
        };
        document.Servers = [new() { Url = "/" }];
        document.Components ??= new();
        document.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>
        {
            ["key"] = new OpenApiSecurityScheme { Type = SecuritySchemeType.Http, Scheme = "bearer", Description = "A key of role storefront, bench or admin." },
        };
    }
}

/// <summary>The description as it is sent. It is the same as long as the process runs, and dear to write: it is written once.</summary>
sealed class WrittenDocs(IServiceProvider services)
{
    readonly Lock gate = new();
    Task<(KeptAnswer Json, KeptAnswer Page)>? written;

    public Task<(KeptAnswer Json, KeptAnswer Page)> Written
    {
        get
        {
            lock (gate) return written is null or { IsFaulted: true } ? written = Write() : written;
        }
    }

    async Task<(KeptAnswer, KeptAnswer)> Write()
    {
        await using var scope = services.CreateAsyncScope();
        var document = await scope.ServiceProvider.GetRequiredKeyedService<IOpenApiDocumentProvider>("v1").GetOpenApiDocumentAsync();
        return (
            new(StatusCodes.Status200OK, "application/json; charset=utf-8", Encoding.UTF8.GetBytes(await document.SerializeAsJsonAsync(OpenApiSpecVersion.OpenApi3_1))),
            new(StatusCodes.Status200OK, "text/html; charset=utf-8", Encoding.UTF8.GetBytes(DocsPage.Write(document))));
    }
}
