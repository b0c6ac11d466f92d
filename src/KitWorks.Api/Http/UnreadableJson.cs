using System.Text.Json;
using KitWorks.Geometry;

namespace KitWorks.Api.Http;

/// <summary>What a body that could not be read gets told: which field, and what would be right. The reader's own words name types, so they are never passed on.</summary>
static class UnreadableJson
{
    const int LongestName = 60;

    public static Refusal Refuse(JsonException json)
    {
        var at = PointerOf(json.Path);
        var message = json.Message;
        if (json is NullItemException list) return Malformed("A list holds no nulls.", Under(at, list.List));
        if (Says("could not be mapped to any .NET member"))
        {
            var detail = $"There is no field '{Quoted().First()}' here. See /docs for the fields.";
            return Malformed(detail, at) with { Code = "request.unknown-field" };
        }
        if (Says("was missing required properties"))
            return Malformed("A field is missing.", [.. Quoted().Skip(1).Select(field => Under(at, field))]);
        return Malformed(
            Says("Duplicate property") ? "A field stands here twice."
            : Says("could not be converted") ? $"The value is not of this field's form; it is {FormIn(json.InnerException?.Message) ?? FormIn(message) ?? "described at /docs"}."
            : Says("doesn't allow setting null values") || Says("disallows null values") ? "This field cannot be null."
            : Says("maximum configured depth") ? "The body is nested too deep."
            : Says("LineNumber") ? $"The body is not JSON: see line {json.LineNumber + 1}, byte {json.BytePositionInLine + 1}."
            : message, at);

        bool Says(string words) => message.Contains(words, StringComparison.Ordinal);

        IEnumerable<string> Quoted() => message.Split('\'').Where((_, i) => i % 2 == 1).Select(name => name.Length <= LongestName ? name : name[..LongestName] + "…");
    }

    /// <summary>
    /// The form that the reader wanted, in words; null where it says nothing that is known outside. For the fields of a record
    /// the reader names the record, and only the fault inside says of which type the field is.
    /// </summary>
    static string? FormIn(string? message) => message switch
    {
        null => null,
        _ when message.Contains("out of bounds for an Int32", StringComparison.Ordinal) => "a whole number, without quotes, from -2147483648 to 2147483647",
        _ when message.Contains("Guid", StringComparison.Ordinal) => "an id as an answer gave it, such as \"0193a1b2-0000-7000-8000-000000000001\"",
        _ when message.Contains("as a number", StringComparison.Ordinal) => "a number, without quotes",
        _ when message.Contains("as a string", StringComparison.Ordinal) => "a text in quotes",
        _ when message.Contains("as a boolean", StringComparison.Ordinal) => "true or false",
        _ when message.Contains("System.Int", StringComparison.Ordinal) => "a whole number, without quotes",
        _ when message.Contains("System.Double", StringComparison.Ordinal) || message.Contains("System.Decimal", StringComparison.Ordinal) => "a number, without quotes",
        _ when message.Contains("System.Boolean", StringComparison.Ordinal) => "true or false",
        _ when message.Contains("System.String", StringComparison.Ordinal) => "a text in quotes",
        _ when message.Contains(nameof(Shop.Orders.WhenShort), StringComparison.Ordinal) => "\"wait\" or \"refuse\"",
        _ when message.Contains("KitWorks.Shop.Role", StringComparison.Ordinal) => "\"storefront\", \"bench\" or \"admin\"",
        _ when message.Contains("System.DateTimeOffset", StringComparison.Ordinal) => "a time such as \"2027-12-31T00:00:00Z\"",
        _ when message.Contains("[]", StringComparison.Ordinal) || message.Contains("List", StringComparison.Ordinal) => "a list, [ … ]",
        _ when message.Contains("Body", StringComparison.Ordinal) => "an object, { … }",
        _ => null,
    };

    static Refusal Malformed(string detail, params string[] pointers) =>
        new(RefusalKind.Malformed, "request.malformed", detail) { Errors = [.. pointers.Select(p => new FieldError(p, detail))] };

    static string Under(string pointer, string field) => pointer.Length == 0 ? field : $"{pointer}/{field}";

    /// <summary><c>$.lines[0].sku</c> as a JSON pointer without its first slash.</summary>
    static string PointerOf(string? path) => (path ?? "$")
        .Replace("$", "", StringComparison.Ordinal).Replace("[", ".", StringComparison.Ordinal).Replace("]", "", StringComparison.Ordinal)
        .Replace("'", "", StringComparison.Ordinal).Trim('.').Replace('.', '/');
}

/// <summary>A list in a body holds a null.</summary>
sealed class NullItemException(string list) : JsonException("A list holds a null.")
{
    /// <summary>The field that is the list.</summary>
    public string List => list;
}
