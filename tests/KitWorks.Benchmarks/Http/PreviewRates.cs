using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using KitWorks.Api.Demo;
using KitWorks.Api.Hosting;
using KitWorks.Shop;
using KitWorks.Shop.Access;
using MediatR;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace KitWorks.Benchmarks.Http;

/// <summary>
/// Requests a second over HTTP, made by wrk: previews of a kit that was asked for before, and of kits that never were, and
/// quotes; beside a bare endpoint in the same process, that writes JSON of the same size and does nothing else. What each
/// takes of the process's processor time is told too: it is much the same on a machine that does other things meanwhile.
/// </summary>
static class PreviewRates
{
    const int Connections = 32;

    const string Design = """{"design":{"shelter":{"kind":"dome","class":1,"frequency":3,"cut":"5/8","size":{"floorDiameter":"6000 mm"}},"hubSystem":"ring-100","strutStock":"pvc-33","cover":{"layers":1}}}""";

    public static int Print(string[] args) => Run(args is [var seconds] ? int.Parse(seconds, CultureInfo.InvariantCulture) : 6).GetAwaiter().GetResult();

    static async Task<int> Run(int seconds)
    {
        var folder = Directory.CreateTempSubdirectory("kitworks-rates-");
        await using var shop = ShopHost.Build(
            ("ConnectionStrings:KitWorks", $"Data Source={Path.Combine(folder.FullName, "kitworks.db")}"), ("urls", "http://127.0.0.1:0"),
            ("Limits:PerKeyPerSecond", "0"), ("Logging:LogLevel:Default", "Warning"));
        await shop.Prepare(default);
        var key = await Open(shop);
        await shop.StartAsync();
        var preview = shop.Urls.First() + "/api/kits/preview";
        var answer = await Preview(preview, key);

        await using var bare = Bare(JsonSerializer.Deserialize<JsonElement>(answer));
        await bare.StartAsync();
        var once = Script(folder, "once", key, $"wrk.body = [[{Design}]]");
        var always = Script(folder, "new", key, $$"""
            math.randomseed(os.time())
            local n = math.random(1000, 9000) * 10000
            request = function()
              n = n + 1
              return wrk.format(nil, nil, nil, ([[{{Design}}]]):gsub("6000 mm", string.format("%d.%d mm", 3000 + n % 6000, n % 10)))
            end
            """);

        Console.WriteLine($"{answer.Length} bytes of JSON, {Connections} connections, {Environment.ProcessorCount} processors, wrk among them");
        var (bareAt, quotesAt) = (bare.Urls.First() + "/bare", shop.Urls.First() + "/api/quotes");
        await Wrk(bareAt, once, seconds);
        var yardstick = Report("bare JSON", await Wrk(bareAt, once, seconds), null);
        await Wrk(preview, once, seconds);
        Report("preview, kept", await Wrk(preview, once, seconds), yardstick);
        Report("preview, new each time", await Wrk(preview, always, seconds), yardstick);
        Report("quote", await Wrk(quotesAt, once, seconds), yardstick);
        Report("bare JSON again", await Wrk(bareAt, once, seconds), yardstick);
        await shop.StopAsync();
        folder.Delete(recursive: true);
        return 0;
    }

    static async Task<string> Open(WebApplication shop)
    {
        await using var scope = shop.Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<Call>().Actor = "bench";
        var mediator = scope.ServiceProvider.GetRequiredService<IMediator>();
        _ = (await mediator.Send(DemoCatalog.Sections)).Value;
        return (await mediator.Send(new CreateKey("wrk", Role.Storefront))).Value.Secret;
    }

    static WebApplication Bare(JsonElement answer)
    {
        var builder = WebApplication.CreateBuilder();
        builder.Logging.ClearProviders();
        var bare = builder.Build();
        bare.Urls.Add("http://127.0.0.1:0");
        // An object is written, as an endpoint writes its answer; a JSON text that is there already would be cheaper.
        var value = answer.Deserialize<Dictionary<string, object>>()!;
        bare.MapPost("/bare", () => TypedResults.Ok(value));
        return bare;
    }

    static async Task<string> Preview(string url, string key)
    {
        using var http = new HttpClient();
        http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
        using var response = await http.PostAsync(new Uri(url), new StringContent(Design, Encoding.UTF8, "application/json"));
        return await response.EnsureSuccessStatusCode().Content.ReadAsStringAsync();
    }

    static string Script(DirectoryInfo folder, string name, string key, string lua)
    {
        var path = Path.Combine(folder.FullName, name + ".lua");
        File.WriteAllText(path, $"""
            wrk.method = "POST"
            wrk.headers["Content-Type"] = "application/json"
            wrk.headers["Authorization"] = "Bearer {key}"
            {lua}
            """);
        return path;
    }

    static async Task<(string Output, TimeSpan Processor)> Wrk(string url, string script, int seconds)
    {
        var before = Environment.CpuUsage.TotalTime;
        using var wrk = Process.Start(new ProcessStartInfo("wrk", ["-t1", $"-c{Connections}", $"-d{seconds}s", "-s", script, "--latency", url]) { RedirectStandardOutput = true })!;
        var output = await wrk.StandardOutput.ReadToEndAsync();
        await wrk.WaitForExitAsync();
        return output.Contains("Non-2xx", StringComparison.Ordinal) ? throw new InvalidOperationException(output) : (output, Environment.CpuUsage.TotalTime - before);
    }

    static (double Rate, double Processor) Report(string what, (string Output, TimeSpan Processor) run, (double Rate, double Processor)? yardstick)
    {
        var rate = double.Parse(Regex.Match(run.Output, @"Requests/sec:\s*([\d.]+)").Groups[1].Value, CultureInfo.InvariantCulture);
        var requests = double.Parse(Regex.Match(run.Output, @"(\d+) requests in").Groups[1].Value, CultureInfo.InvariantCulture);
        var each = run.Processor.TotalMicroseconds / requests;
        string At(string percent) => Regex.Match(run.Output, $@"{percent}%\s+(\S+)").Groups[1].Value;
        Console.WriteLine($"{what,-24} {rate,9:N0}/s  median {At("50"),9}  99 % {At("99"),9}  {each,9:N1} µs of processor each"
            + (yardstick is { } y ? $"  {rate / y.Rate:P0} of bare by rate, {y.Processor / each:P0} by processor" : ""));
        return (rate, each);
    }
}
