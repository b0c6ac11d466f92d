using System.Globalization;
using System.Text.RegularExpressions;

namespace KitWorks.Api.Hosting;

/// <summary>Reads settings of each form; what is wrong with one is said in a sentence that names it and what would be right.</summary>
static partial class Settings
{
    /// <summary>Every setting of ours, a list's number written as 0. The table in README.md has a line for each, which a test holds.</summary>
    public static readonly string[] Known =
    [
        "Access:BootstrapAdminKey",
        "Cache:MegaBytes", "Cache:Redis",
        "Database:Provider",
        "Labels:Fonts", "Labels:Stocks:0:Columns", "Labels:Stocks:0:GapX", "Labels:Stocks:0:GapY", "Labels:Stocks:0:Height", "Labels:Stocks:0:Left", "Labels:Stocks:0:Name",
        "Labels:Stocks:0:Page", "Labels:Stocks:0:Rows", "Labels:Stocks:0:Top", "Labels:Stocks:0:Width", "Labels:Templates",
        "Limits:ComputingAtOnce", "Limits:ComputingWaiting", "Limits:Connections", "Limits:PerAddressPerSecond", "Limits:PerKeyPerSecond",
        "Logging:Format",
        "Printers:0:Form", "Printers:0:Labels", "Printers:0:Name", "Printers:0:Paper", "Printers:0:Uri",
        "Printing:AnswerSeconds", "Printing:BeatSeconds", "Printing:TakeSeconds",
        "Proxies:Trusted",
        "Shop:Name", "Shop:PublicUrl",
        "Shutdown:Seconds",
        "Storefront:Origins",
        "Telemetry:Otlp", "Telemetry:OtlpProtocol",
        "Webhooks:AnswerSeconds", "Webhooks:BeatSeconds", "Webhooks:OwnNetwork",
    ];

    /// <summary>Refuses a setting of one of our sections that there is not: mistyped, it would be passed over in silence.</summary>
    public static void MustBeKnown(this IConfiguration settings)
    {
        var sections = Known.Select(k => k.Split(':')[0]).Where(s => s != "Logging").Distinct();
        foreach (var (key, value) in sections.SelectMany(s => settings.GetSection(s).AsEnumerable()))
            if (value is not null && !Known.Contains(Number().Replace(key, ":0:"), StringComparer.OrdinalIgnoreCase))
                throw new SettingException($"There is no setting {key}; in {key.Split(':')[0]} there are {string.Join(", ", Known.Where(k => k.StartsWith(key.Split(':')[0] + ":", StringComparison.OrdinalIgnoreCase)))}.");
    }

    [GeneratedRegex(@":\d+:")]
    private static partial Regex Number();

    /// <summary>One of some words, the first where nothing is said.</summary>
    public static string Word(this IConfiguration settings, string key, params string[] words) =>
        settings[key] is not { } given ? words[0]
        : words.FirstOrDefault(w => w.Equals(given, StringComparison.OrdinalIgnoreCase))
            ?? throw new SettingException($"{key} is '{given}'; it is one of {string.Join(", ", words)}.");

    /// <summary>A whole number within bounds.</summary>
    public static int Whole(this IConfiguration settings, string key, int otherwise, int least, int most) =>
        settings[key] is not { } given ? otherwise
        : int.TryParse(given, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most ? number
        : throw new SettingException($"{key} is '{given}'; it is a whole number from {least} to {most}.");

    /// <summary>A time in seconds, or parts of one.</summary>
    public static TimeSpan Seconds(this IConfiguration settings, string key, double otherwise) =>
        settings[key] is not { } given ? TimeSpan.FromSeconds(otherwise)
        : double.TryParse(given, NumberStyles.Float, CultureInfo.InvariantCulture, out var seconds) && seconds is >= 0.01 and <= 3600 ? TimeSpan.FromSeconds(seconds)
        : throw new SettingException($"{key} is '{given}'; it is a number of seconds from 0.01 to 3600.");

    /// <summary>An address on the web; null where nothing is said.</summary>
    public static Uri? Url(this IConfiguration settings, string key) =>
        settings[key] is not { Length: > 0 } given ? null
        : Uri.TryCreate(given, UriKind.Absolute, out var url) && url.Scheme is "http" or "https" ? url
        : throw new SettingException($"{key} is '{given}'; it is an address such as http://collector:4317.");
}
