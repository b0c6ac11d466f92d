using System.Text.Json;
using System.Text.Json.Serialization;
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
        options.DefaultIgnoreCondition = JsonIgnoreCondition.Never;
        options.Converters.Add(new LengthText());
        options.Converters.Add(new MoneyJson());
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false));
    }
}

/// <summary>Money as <c>{"amount": "129.50", "currency": "USD"}</c>; the amount is text, so that no client makes a fraction of it.</summary>
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
        writer.WriteString("amount", value.Amount.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture));
        writer.WriteString("currency", value.Currency);
        writer.WriteEndObject();
    }
}
