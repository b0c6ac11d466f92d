using System.CommandLine;
using KitWorks.Api.Hosting;

namespace KitWorks.Api.Verbs;

/// <summary><c>health</c>: asks a running service whether it can serve; for containers, whose image has no other program to ask with.</summary>
static class HealthVerb
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    public static Command Command()
    {
        var urls = ServeVerb.Urls();
        var command = new Command("health", "Ask the service that runs here whether it can serve") { urls };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var url = (parsed.GetValue(urls) ?? Environment.GetEnvironmentVariable("ASPNETCORE_URLS") ?? ShopHost.DefaultUrl).Split(';')[0]
                .Replace("+", "localhost", StringComparison.Ordinal).Replace("*", "localhost", StringComparison.Ordinal);
            try
            {
                using var http = new HttpClient { Timeout = Patience };
                using var answer = await http.GetAsync(new Uri(new Uri(url), "/health/ready"), cancellationToken);
                Console.WriteLine(await answer.Content.ReadAsStringAsync(cancellationToken));
                return answer.IsSuccessStatusCode ? 0 : 1;
            }
            catch (Exception wrong) when (wrong is HttpRequestException or TaskCanceledException or UriFormatException)
            {
                throw new SettingException($"Nobody answers at {url}. {wrong.Message}");
            }
        });
        return command;
    }
}
