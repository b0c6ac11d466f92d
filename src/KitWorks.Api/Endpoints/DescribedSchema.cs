using System.Text.Json.Nodes;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using Length = KitWorks.Geometry.Length;

namespace KitWorks.Api.Endpoints;

/// <summary>Completes the description of each object where the platform's is not what is read and written.</summary>
static class DescribedSchema
{
    public static Task Complete(OpenApiSchema schema, OpenApiSchemaTransformerContext context, CancellationToken cancellationToken)
    {
        var type = context.JsonTypeInfo.Type;
        if (type == typeof(Length) || type == typeof(Length?))
        {
            schema.Type = JsonSchemaType.String;
            schema.Description = "A length with its unit.";
            schema.Examples = [JsonValue.Create("6 m")!];
        }
        // A word that may be left out is still one of the words.
        if ((Nullable.GetUnderlyingType(type) ?? type).IsEnum)
        {
            schema.Type = JsonSchemaType.String;
            schema.Enum = [.. schema.Enum?.Where(word => word is not null && word.GetValueKind() == System.Text.Json.JsonValueKind.String) ?? []];
        }
        // The platform calls every parameter of a record required; the reader asks for those only that may not be null.
        if (IsRead(type) && schema.Required is { Count: > 0 } required)
            required.ExceptWith(context.JsonTypeInfo.Properties.Where(p => !p.IsRequired).Select(p => p.Name));
        // Left out where no field is at fault.
        if (type == typeof(Http.Problem)) schema.Required?.Remove("errors");
        return Task.CompletedTask;
    }

    static bool IsRead(Type type) => type.Name.EndsWith("Body", StringComparison.Ordinal) || type.Namespace == typeof(Kits.Catalog.ShopCatalog).Namespace;
}
