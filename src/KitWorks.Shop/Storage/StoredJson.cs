using System.IO.Compression;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace KitWorks.Shop.Storage;

/// <summary>How values are written into the database.</summary>
static class StoredJson
{
    public static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
        AllowOutOfOrderMetadataProperties = true,
    };

    public static string Write<T>(T value) => JsonSerializer.Serialize(value, Options);

    public static T Read<T>(string text) => JsonSerializer.Deserialize<T>(text, Options)!;

    /// <summary>As <see cref="Write"/>, compressed: for kits, whose frames run to hundreds of kilobytes.</summary>
    public static byte[] Pack<T>(T value)
    {
        using var packed = new MemoryStream();
        using (var brotli = new BrotliStream(packed, CompressionLevel.Fastest)) JsonSerializer.Serialize(brotli, value, Options);
        return packed.ToArray();
    }

    public static T Unpack<T>(byte[] packed)
    {
        using var brotli = new BrotliStream(new MemoryStream(packed), CompressionMode.Decompress);
        return JsonSerializer.Deserialize<T>(brotli, Options)!;
    }
}
