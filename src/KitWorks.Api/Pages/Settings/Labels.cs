using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace KitWorks.Api.Pages.Settings;

/// <summary>What the catalog's fields are called for people. A field without words of its own takes its name, spelt out.</summary>
static partial class Labels
{
    static readonly Dictionary<string, string> Words = new()
    {
        ["sku"] = "Stock code",
        ["code"] = "Code in designs",
        ["name"] = "Name",
        ["allowance"] = "Hub takes off each strut end",
        ["tiesPerEnd"] = "Ties to a strut end",
        ["tieSku"] = "Its tie's stock code",
        ["stake"] = "Stake",
        ["perBaseHub"] = "Stakes to a base hub",
        ["hubs"] = "Hubs",
        ["ways"] = "Ways",
        ["massGrams"] = "Weighs, in grams",
        ["stockLength"] = "Sold in lengths of",
        ["outsideDiameter"] = "Outside diameter",
        ["wall"] = "Wall",
        ["gramsPerMetre"] = "Grams to a metre",
        ["modulusMPa"] = "Stiffness (Young's modulus), MPa",
        ["longTermModulusMPa"] = "Stiffness after months under load, MPa",
        ["strengthMPa"] = "Strength, MPa",
        ["ratedNewtons"] = "Rated for, in newtons",
        ["seamAllowance"] = "Added along each edge for the seam",
        ["gramsPerM2"] = "Grams to a square metre",
        ["currency"] = "Currency",
        ["unitCosts"] = "Cost of one of each part",
        ["perCut"] = "One saw cut, tagging included",
        ["perBundle"] = "Packing and labelling one bundle",
        ["markupPercent"] = "Overhead and margin, per cent",
        ["sawStep"] = "Finest step of the saw's stop",
        ["kerf"] = "Width of one saw cut",
        ["endTrim"] = "Taken off each pipe before the first cut",
        ["shortestRemnant"] = "Shortest offcut worth keeping",
        ["jointSlack"] = "Slack of a tied joint",
        ["bundlePieces"] = "Pieces to a bundle, at most",
        ["bundleGrams"] = "Grams to a bundle, at most",
        ["spareTiesPercent"] = "Spare ties, per cent",
        ["leadDays"] = "Working days from order to carrier",
        ["restockDays"] = "Working days to refill a short shelf",
    };

    public static string Of(string name) => Words.TryGetValue(name, out var words) ? words : Spelt(name);

    /// <summary>An item by the name that it has itself.</summary>
    public static string NameIn(JsonNode item, int place) =>
        item is JsonObject known && (known["name"] ?? known["code"] ?? known["sku"])?.ToString() is { Length: > 0 } name ? name : $"No. {place + 1}";

    static string Spelt(string name) => Capital().Replace(name, m => " " + m.Value.ToLowerInvariant()) is { Length: > 0 } spelt ? char.ToUpperInvariant(spelt[0]) + spelt[1..] : name;

    [GeneratedRegex("[A-Z]+(?![a-z])|[A-Z]")]
    private static partial Regex Capital();
}
