using System.Globalization;

namespace KitWorks.Api.Hosting;

/// <summary>Reads settings of each form; what is wrong with one is said in a sentence that names it and what would be right.</summary>
static class Settings
{
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

    /// <summary>An address on the web; null where nothing is said.</summary>
    public static Uri? Url(this IConfiguration settings, string key) =>
        settings[key] is not { Length: > 0 } given ? null
        : Uri.TryCreate(given, UriKind.Absolute, out var url) && url.Scheme is "http" or "https" ? url
        : throw new SettingException($"{key} is '{given}'; it is an address such as http://collector:4317.");
}
