using System.Text.Json;
using Microsoft.AspNetCore.Http.Json;

namespace KitWorks.Api.Http;

/// <summary>What stands in an address as JSON, read and refused as it would be in a body.</summary>
static class Address
{
    public static T? Read<T>(string text, JsonOptions json) where T : class
    {
        try
        {
            return JsonSerializer.Deserialize<T>(text, json.SerializerOptions);
        }
        catch (JsonException wrong)
        {
            throw new BadHttpRequestException("The address could not be read.", wrong);
        }
    }
}
