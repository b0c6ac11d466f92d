using System.Text.Json;

namespace KitWorks.Tests;

/// <summary>
/// Holds an answer against an example of what the contract promises: every field of the example is there, with a value of
/// the same kind. More fields may be there. An example's null stands for null or any value; the one item of an example's list for each item.
/// </summary>
static class Shape
{
    public static void Holds(string example, JsonElement answer) => Holds(JsonSerializer.Deserialize<JsonElement>(example), answer, "#");

    static void Holds(JsonElement example, JsonElement answer, string at)
    {
        switch (example.ValueKind)
        {
            case JsonValueKind.Null:
                return;
            case JsonValueKind.Object:
                Kind(answer, at, JsonValueKind.Object);
                foreach (var field in example.EnumerateObject())
                {
                    Assert.True(answer.TryGetProperty(field.Name, out var value), $"{at} has no '{field.Name}': {answer}");
                    Holds(field.Value, value, $"{at}/{field.Name}");
                }
                return;
            case JsonValueKind.Array:
                Kind(answer, at, JsonValueKind.Array);
                if (example.GetArrayLength() == 0) return;
                Assert.True(answer.GetArrayLength() > 0, $"{at} is empty.");
                foreach (var (i, item) in answer.EnumerateArray().Index()) Holds(example[0], item, $"{at}/{i}");
                return;
            case JsonValueKind.True or JsonValueKind.False:
                Kind(answer, at, JsonValueKind.True, JsonValueKind.False);
                return;
            default:
                Kind(answer, at, example.ValueKind);
                return;
        }
    }

    static void Kind(JsonElement answer, string at, params JsonValueKind[] kinds) =>
        Assert.True(kinds.Contains(answer.ValueKind), $"{at} is {answer.ValueKind}, not {kinds[0]}: {answer}");
}
