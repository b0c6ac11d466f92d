using KitWorks.Shop.Webhooks;

namespace KitWorks.Api.Hosting;

/// <summary>Reads how webhooks are told: <c>Webhooks:OwnNetwork</c>, <c>BeatSeconds</c> and <c>AnswerSeconds</c>.</summary>
static class WebhookSettings
{
    public static WebhookPace Of(IConfiguration configuration) => new()
    {
        Beat = configuration.Seconds("Webhooks:BeatSeconds", 1),
        ToAnswer = configuration.Seconds("Webhooks:AnswerSeconds", 10),
        OwnNetwork = configuration["Webhooks:OwnNetwork"] is not { } word ? false
            : bool.TryParse(word, out var own) ? own
            : throw new SettingException($"Webhooks:OwnNetwork is '{word}'; it is true, where webhooks may go to addresses of the shop's own network, or false."),
    };
}

/// <summary>Keeps the webhooks told as long as the service runs.</summary>
sealed class WebhookService(WebhookWork work) : BackgroundService
{
    protected override Task ExecuteAsync(CancellationToken stoppingToken) => work.Run(stoppingToken);
}
