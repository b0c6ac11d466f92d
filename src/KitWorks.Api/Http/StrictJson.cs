using System.Collections;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using KitWorks.Kits.Catalog;

namespace KitWorks.Api.Http;

/// <summary>JSON as the HTTP interface reads and writes it: camelCase, unknown fields refused, lengths with units, money as text.</summary>
static class StrictJson
{
    public static void Configure(JsonSerializerOptions options)
    {
        options.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
        options.NumberHandling = JsonNumberHandling.Strict;
        options.AllowDuplicateProperties = false;
        options.MaxDepth = 32;
        options.RespectNullableAnnotations = true;
        options.TypeInfoResolver = (options.TypeInfoResolver ?? new DefaultJsonTypeInfoResolver()).WithAddedModifier(NothingLeftOut);
        options.DefaultIgnoreCondition = JsonIgnoreCondition.Never;
        options.Converters.Add(new LengthText());
        options.Converters.Add(new MoneyJson());
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false));
    }

    /// <summary>A value that may not be null must be given, and no list holds nulls; the reader by itself lets both pass.</summary>
    static void NothingLeftOut(JsonTypeInfo type)
    {
        if (type.Kind != JsonTypeInfoKind.Object) return;
        foreach (var property in type.Properties)
            if (property.AssociatedParameter is { HasDefaultValue: false, IsNullable: false }) property.IsRequired = true;
        var lists = type.Properties.Where(p => p.Get is not null && p.PropertyType != typeof(string) && typeof(IEnumerable).IsAssignableFrom(p.PropertyType)).ToArray();
        if (lists.Length == 0) return;
        type.OnDeserialized = value =>
        {
            foreach (var list in lists)
                if (list.Get!(value) is IEnumerable items && !IsMissing(list.PropertyType, items) && items.Cast<object?>().Contains(null))
                    throw new NullItemException(list.Name);
        };
    }

    /// <summary>Whether a list that is a struct was never set: the reader asks for missing fields only after this, and such a list cannot be walked.</summary>
    static bool IsMissing(Type type, object list) => type.IsValueType && list.Equals(Activator.CreateInstance(type));
}

/// <summary>Money as <c>{"amount": "129.50", "currency": "USD"}</c>; the amount is text, so that no client makes a fraction of it, with two decimals or as many as a cost has.</summary>
sealed class MoneyJson : JsonConverter<Money>
{
    public override Money Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using var document = JsonDocument.ParseValue(ref reader);
        return document.RootElement is { ValueKind: JsonValueKind.Object } money
            && money.TryGetProperty("amount", out var amount) && amount.ValueKind == JsonValueKind.String
            && decimal.TryParse(amount.GetString(), System.Globalization.NumberStyles.AllowDecimalPoint, System.Globalization.CultureInfo.InvariantCulture, out var value)
            && money.TryGetProperty("currency", out var currency) && currency.ValueKind == JsonValueKind.String
            ? new(value, currency.GetString()!)
            : throw new JsonException("Money is written {\"amount\": \"129.50\", \"currency\": \"USD\"}.");
    }

    public override void Write(Utf8JsonWriter writer, Money value, JsonSerializerOptions options)
    {
        writer.WriteStartObject();
        writer.WriteString("amount", value.Amount.ToString("0.00########", System.Globalization.CultureInfo.InvariantCulture));
        writer.WriteString("currency", value.Currency);
        writer.WriteEndObject();
    }
}
