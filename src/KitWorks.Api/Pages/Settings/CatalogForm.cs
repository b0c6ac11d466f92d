using System.Collections;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Length = KitWorks.Geometry.Length;

namespace KitWorks.Api.Pages.Settings;

/// <summary>
/// A section of the catalog as fields of a form and back. It follows the section's own type, so that a new property there is a
/// new field here. What is sent becomes the very JSON that the interface takes, and is refused in the same words.
/// </summary>
static class CatalogForm
{
    /// <summary>The fields of a value, those of one more item at the end of each list left empty.</summary>
    public static List<FormPart> Parts(JsonNode? value, Type type, string path = "")
    {
        var parts = new List<FormPart>();
        foreach (var property in type.GetProperties().Where(p => p.CanWrite))
        {
            var name = JsonNamingPolicy.CamelCase.ConvertName(property.Name);
            var at = path.Length == 0 ? name : $"{path}/{name}";
            var given = (value as JsonObject)?[name];
            if (IsLeaf(property.PropertyType)) parts.Add(new(at, Labels.Of(name), given?.ToString() ?? "", LeafOf(property.PropertyType), []));
            else if (IsTable(property.PropertyType)) parts.Add(new(at, Labels.Of(name), "", Leaf.Table, [.. (given as JsonObject ?? []).OrderBy(e => e.Key, StringComparer.Ordinal).Select(e => new FormPart($"{at}/{e.Key}", e.Key, e.Value?.ToString() ?? "", Leaf.Number, []))]));
            else if (ItemOf(property.PropertyType) is { } item) parts.Add(new(at, Labels.Of(name), "", Leaf.List, Items(given as JsonArray, item, at)));
            else parts.Add(new(at, Labels.Of(name), "", Leaf.Group, Parts(given, property.PropertyType, at)));
        }
        return parts;
    }

    /// <summary>The items of a list, and an empty one to fill in.</summary>
    public static List<FormPart> Items(JsonArray? values, Type item, string path) =>
        [.. (values ?? []).Append(null).Select((v, i) => new FormPart(path.Length == 0 ? $"{i}" : $"{path}/{i}", v is null ? "One more" : Labels.NameIn(v, i), "", Leaf.Group, Parts(v, item, path.Length == 0 ? $"{i}" : $"{path}/{i}")))];

    /// <summary>What was sent, as JSON of the type; items of which nothing is filled in are not there.</summary>
    public static JsonNode? Read(IFormCollection form, Type type, string path = "")
    {
        if (IsLeaf(type)) return LeafIn(form[path].ToString().Trim(), LeafOf(type));
        if (IsTable(type))
        {
            var table = new JsonObject();
            foreach (var field in form.Keys.Where(k => k.StartsWith(path + "/", StringComparison.Ordinal)))
                if (LeafIn(form[field].ToString().Trim(), Leaf.Number) is { } number) table[field[(path.Length + 1)..]] = number;
            return table;
        }
        if (ItemOf(type) is { } item)
        {
            var list = new JsonArray();
            var prefix = path.Length == 0 ? "" : path + "/";
            for (var i = 0; form.Keys.Any(k => k.StartsWith($"{prefix}{i}/", StringComparison.Ordinal)); i++)
                if (form[$"{prefix}{i}/leave-out"].Count == 0 && form.Any(f => f.Key.StartsWith($"{prefix}{i}/", StringComparison.Ordinal) && f.Value.ToString().Trim().Length > 0))
                    list.Add(Read(form, item, $"{prefix}{i}"));
            return list;
        }
        var value = new JsonObject();
        foreach (var property in type.GetProperties().Where(p => p.CanWrite))
        {
            var name = JsonNamingPolicy.CamelCase.ConvertName(property.Name);
            if (Read(form, property.PropertyType, path.Length == 0 ? name : $"{path}/{name}") is { } part) value[name] = part;
        }
        return value;
    }

    /// <summary>A number as a number where it is one; anything else stays text, and is refused as the interface would refuse it.</summary>
    static JsonValue? LeafIn(string text, Leaf leaf) => text.Length == 0 ? null
        : leaf is Leaf.Number or Leaf.Whole && decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            ? decimal.IsInteger(number) && Math.Abs(number) < int.MaxValue ? JsonValue.Create((int)number) : JsonValue.Create(number)
        : leaf == Leaf.Choice && bool.TryParse(text, out var yes) ? JsonValue.Create(yes)
        : JsonValue.Create(text);

    static bool IsLeaf(Type type) => type == typeof(string) || type == typeof(Length) || (Nullable.GetUnderlyingType(type) ?? type) is { IsPrimitive: true } or { IsEnum: true }
        || (Nullable.GetUnderlyingType(type) ?? type) == typeof(decimal) || Nullable.GetUnderlyingType(type) == typeof(Length);

    static Leaf LeafOf(Type type) => (Nullable.GetUnderlyingType(type) ?? type) switch
    {
        var t when t == typeof(int) => Leaf.Whole,
        var t when t == typeof(decimal) || t == typeof(double) => Leaf.Number,
        var t when t == typeof(Length) => Leaf.Length,
        var t when t == typeof(bool) => Leaf.Choice,
        _ => Leaf.Text,
    };

    static bool IsTable(Type type) => type.IsGenericType && type.GetInterfaces().Any(i => i == typeof(IDictionary));

    public static Type? ItemOf(Type type) => type.IsArray ? type.GetElementType()
        : type != typeof(string) && type.IsGenericType && typeof(IEnumerable).IsAssignableFrom(type) && type.GenericTypeArguments.Length == 1 ? type.GenericTypeArguments[0] : null;
}

/// <summary>What a field of a form takes.</summary>
enum Leaf
{
    Text,
    Whole,
    Number,
    Length,
    Choice,
    Group,
    List,
    Table,
}

/// <summary>A field, or a group of fields, of a form.</summary>
sealed record FormPart(string Path, string Label, string Value, Leaf Kind, IReadOnlyList<FormPart> Parts)
{
    public bool IsField => Kind is not (Leaf.Group or Leaf.List or Leaf.Table);
}
