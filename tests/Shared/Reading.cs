using System.Text.Json;

namespace KitWorks.Tests;

/// <summary>Reads values out of JSON by paths such as <c>totals/hubs</c> and <c>bundles/0/code</c>.</summary>
static class Reading
{
    public static JsonElement At(this JsonElement json, string path) => path.Split('/').Aggregate(json, (at, part) =>
        at.ValueKind == JsonValueKind.Array && int.TryParse(part, out var index) ? at[index]
        : at.ValueKind == JsonValueKind.Object && at.TryGetProperty(part, out var value) ? value
        : throw new InvalidOperationException($"There is no '{part}' on the way to '{path}' in {json}"));

    public static int Int(this JsonElement json, string path) => json.At(path).GetInt32();

    public static double Number(this JsonElement json, string path) => json.At(path).GetDouble();

    public static string Text(this JsonElement json, string path) => json.At(path).GetString()!;

    public static Guid Id(this JsonElement json, string path = "id") => json.At(path).GetGuid();

    public static bool IsNull(this JsonElement json, string path) => json.At(path).ValueKind == JsonValueKind.Null;

    public static IReadOnlyList<JsonElement> List(this JsonElement json, string path) => [.. json.At(path).EnumerateArray()];

    public static IEnumerable<string> Texts(this JsonElement json, string path, string field) => json.List(path).Select(e => e.Text(field));
}
