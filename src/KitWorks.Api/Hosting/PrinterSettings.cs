using System.Collections.Immutable;
using KitWorks.Labels;
using KitWorks.Shop.Printing;

namespace KitWorks.Api.Hosting;

/// <summary>Reads the printers from the settings: <c>Printers:0:Name</c>, <c>Uri</c>, and, where the defaults are not right, <c>Form</c>, <c>Labels</c> and <c>Paper</c>.</summary>
static class PrinterSettings
{
    public static ImmutableArray<PrinterSetting> Of(IConfiguration configuration, IReadOnlyList<LabelStock> ownStocks)
    {
        var stocks = OrderLabelPress.StocksOf(ownStocks);
        var printers = configuration.GetSection("Printers").GetChildren().Select(p => One(p, stocks)).ToImmutableArray();
        return printers.GroupBy(p => p.Name).FirstOrDefault(g => g.Count() > 1) is { Key: var twice }
            ? throw new SettingException($"Printers holds two of the name '{twice}'; each needs a name of its own.")
            : printers;
    }

    public static PrintingPace Pace(IConfiguration configuration) => new()
    {
        Beat = configuration.Seconds("Printing:BeatSeconds", 1),
        ToAnswer = configuration.Seconds("Printing:AnswerSeconds", 4),
        ToTake = configuration.Seconds("Printing:TakeSeconds", 60),
    };

    static PrinterSetting One(IConfigurationSection section, IReadOnlyList<LabelStock> stocks)
    {
        var name = section["Name"] is { Length: > 0 and <= 100 } given ? given : throw new SettingException($"{section.Path}:Name is missing or longer than 100 characters; it is what the bench calls the printer.");
        // A password in an address would show in answers and logs.
        var uri = Uri.TryCreate(section["Uri"], UriKind.Absolute, out var address) && address is { Scheme: "ipp" or "ipps", UserInfo: "" }
            ? address
            : throw new SettingException($"{section.Path}:Uri is '{section["Uri"]}'; it is an address such as ipp://printer.local/ipp/print, without name and password.");
        return new(name, uri)
        {
            Form = Word(section, "Form", DocumentForm.Auto),
            Paper = Word(section, "Paper", PaperSize.A4),
            Labels = (section["Labels"] ?? LabelStock.Page100x150.Name) is var stock && stocks.FirstOrDefault(s => s.Name == stock) is { } named
                ? named
                : throw new SettingException($"{section.Path}:Labels is '{stock}'; it is one of {string.Join(", ", stocks.Select(s => s.Name))}."),
        };
    }

    static T Word<T>(IConfigurationSection section, string key, T otherwise) where T : struct, Enum =>
        section[key] is not { } word ? otherwise
        : Enum.GetNames<T>().Any(n => n.Equals(word, StringComparison.OrdinalIgnoreCase)) ? Enum.Parse<T>(word, ignoreCase: true)
        : throw new SettingException($"{section.Path}:{key} is '{word}'; it is one of {string.Join(", ", Enum.GetNames<T>())}.");
}

/// <summary>Keeps the print jobs going as long as the service runs.</summary>
sealed class PrintingService(PrintWork work) : BackgroundService
{
    protected override Task ExecuteAsync(CancellationToken stoppingToken) => work.Run(stoppingToken);
}
