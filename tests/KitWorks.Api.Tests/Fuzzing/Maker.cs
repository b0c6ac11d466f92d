using System.Text.Json;
using System.Text.Json.Nodes;

namespace KitWorks.Api.Tests.Fuzzing;

/// <summary>Makes values after schemas, and spoils them.</summary>
sealed class Maker(Description description, Words words, Random random)
{
    const int Deepest = 8;

    static readonly double[] Numbers = [0, 1, -1, 0.5, 2, 10, 318.6, 36355, 2900, 1e-9, 1e9, 1e300, -1e300, 4e-324];
    static readonly long[] Integers = [0, 1, 2, 3, 4, 5, 6, 10, 16, 17, 100, 101, 200, 201, -1, 1000, 65536, int.MaxValue, int.MinValue, (long)int.MaxValue + 1, long.MaxValue];

    /// <summary>A value of a schema: of its form, and not always of its meaning.</summary>
    public JsonNode? Of(JsonElement schema, string field, int depth = 0)
    {
        var isLength = schema.TryGetProperty("$ref", out var reference) && reference.GetString()!.EndsWith("/Length", StringComparison.Ordinal);
        schema = description.Resolve(schema);
        if (depth > Deepest) return null;
        if (schema.TryGetProperty("oneOf", out var either)) return Of(Any([.. either.EnumerateArray().Where(e => !IsNull(e) || random.Next(3) == 0)]), field, depth);
        if (schema.TryGetProperty("enum", out var choices) && random.Next(20) > 0) return JsonNode.Parse(Any([.. choices.EnumerateArray()]).GetRawText());
        return TypeOf(schema) switch
        {
            "object" => Object(schema, field, depth),
            "array" => new JsonArray([.. Enumerable.Range(0, random.Next(50) == 0 ? 300 : random.Next(4)).Select(_ => Of(schema.At("items"), field, depth + 1))]),
            "integer" => random.Next(4) == 0 ? Any(Integers) : random.Next(1, 5),
            "number" => Any(Numbers),
            "boolean" => random.Next(2) == 0,
            "null" => null,
            _ => words.For(field, isLength),
        };
    }

    JsonObject Object(JsonElement schema, string field, int depth)
    {
        var made = new JsonObject();
        if (schema.TryGetProperty("properties", out var properties))
            foreach (var property in properties.EnumerateObject())
                if (random.Next(100) < 60 || IsRequired(schema, property.Name)) made[property.Name] = Of(property.Value, property.Name, depth + 1);
        if (schema.TryGetProperty("additionalProperties", out var more) && more.ValueKind == JsonValueKind.Object)
            for (var i = random.Next(4); i > 0; i--) made[words.For("sku")] = Of(more, field, depth + 1);
        return made;
    }

    /// <summary>The same with something somewhere in it changed, left out, repeated or made monstrous.</summary>
    public JsonNode? Spoil(JsonNode? value)
    {
        var places = new List<(JsonNode Parent, string? Name, int Index)>();
        Walk(value, places);
        if (places.Count == 0) return Monster();
        var (parent, name, index) = Any(places);
        var old = name is not null ? parent[name] : parent[index];
        var next = random.Next(8) switch
        {
            0 => null,
            1 => Monster(),
            2 => JsonValue.Create(words.AnyHostile()),
            3 => JsonValue.Create(Any(Integers)),
            4 => JsonValue.Create(Any(Numbers)),
            5 => new JsonArray(old?.DeepClone(), old?.DeepClone()),
            6 => new JsonObject { ["value"] = old?.DeepClone() },
            _ => JsonValue.Create(name is null ? words.AnyHostile() : words.For(name)),
        };
        if (name is null) ((JsonArray)parent)[index] = next;
        else if (random.Next(6) == 0) ((JsonObject)parent).Remove(name);
        else ((JsonObject)parent)[name] = next;
        return value;
    }

    /// <summary>Too deep, too long, or too many.</summary>
    JsonNode? Monster()
    {
        switch (random.Next(3))
        {
            case 0:
                JsonNode? deep = 1;
                for (var i = random.Next(2, 60); i > 0; i--) deep = i % 2 == 0 ? new JsonArray(deep) : new JsonObject { ["shelter"] = deep };
                return deep;
            case 1: return new string('x', random.Next(100_000));
            default: return new JsonArray([.. Enumerable.Range(0, random.Next(5_000)).Select(i => (JsonNode?)i)]);
        }
    }

    static void Walk(JsonNode? node, List<(JsonNode, string?, int)> places)
    {
        if (node is JsonObject o)
            foreach (var (name, child) in o)
            {
                places.Add((o, name, 0));
                Walk(child, places);
            }
        if (node is JsonArray list)
            foreach (var (i, child) in list.Index())
            {
                places.Add((list, null, i));
                Walk(child, places);
            }
    }

    string? TypeOf(JsonElement schema)
    {
        if (!schema.TryGetProperty("type", out var type)) return null;
        if (type.ValueKind == JsonValueKind.String) return type.GetString();
        var types = type.EnumerateArray().Select(t => t.GetString()).Where(t => t != "null" || random.Next(4) == 0).ToList();
        return types.Count == 0 ? "null" : types[random.Next(types.Count)];
    }

    static bool IsNull(JsonElement schema) => schema.TryGetProperty("type", out var type) && type.ValueKind == JsonValueKind.String && type.GetString() == "null";

    static bool IsRequired(JsonElement schema, string name) => schema.TryGetProperty("required", out var required) && required.EnumerateArray().Any(r => r.GetString() == name);

    T Any<T>(IReadOnlyList<T> of) => of[random.Next(of.Count)];
}
