using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net.Http.Json;

namespace KitWorks.Shop.Tests.Load;

/// <summary>The program itself, killed without warning at random moments while clients order.</summary>
public sealed class CrashTests
{
    const int Clients = 8;

    /// <summary>One program, and two on the one database, of which one is killed while the other goes on.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public async Task Orders_WhenTheProgramIsKilledUnderLoad_AreThereWholeOrNotAtAll(int instances)
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 2_000);
        var quote = (await shop.Storefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity = 1 })).Created.Id();
        var asked = new ConcurrentDictionary<string, string?>();
        var random = new Random(1);
        using var http = new HttpClient();

        for (var kill = 0; kill < Durations.Kills; kill += instances)
        {
            var programs = await Task.WhenAll(Enumerable.Range(0, instances).Select(_ => RunningProgram.Start(shop)));
            using var stop = new CancellationTokenSource();
            var clients = Enumerable.Range(0, Clients).Select(i => Client(programs[i % instances], stop.Token)).ToList();
            // A program that has just started answers late; it is to be killed at work.
            await Task.WhenAny(clients.Select(c => c.Answered));
            await Task.Delay(random.Next(200), TestContext.Current.CancellationToken);
            programs[0].Kill();
            await stop.CancelAsync();
            await Task.WhenAll(clients.Select(c => c.Done));
            foreach (var program in programs) program.Dispose();
        }

        Assert.Contains(asked.Values, answer => answer is not null);
        // Every key is asked again: who had an answer gets the same; who had none gets the one order there is, or a new one.
        foreach (var (key, answer) in asked)
        {
            var again = await shop.Storefront.Post("/api/orders", Body(), key);
            Assert.Equal(201, again.Status);
            if (answer is null) continue;
            Assert.True(again.Replayed, $"{key} was answered, and is not remembered.");
            Assert.Equal(answer, again.Text);
        }
        var list = await shop.All("/api/orders?limit=200");
        Assert.Equal(asked.Count, list.Count);
        Assert.Equal(Enumerable.Range(1001, list.Count), list.Select(o => o.Int("number")).Order());
        Assert.Equal(10 * list.Count(o => o.Text("status") == "reserved"), (await shop.Bench.Item("stake-450")).Int("reserved"));
        await shop.LedgerAddsUp();

        object Body() => new { quoteId = quote, customer = new { name = "A. Customer" } };

        (Task Answered, Task Done) Client(RunningProgram program, CancellationToken stop)
        {
            var answered = new TaskCompletionSource();
            return (answered.Task, Order(program, answered, stop));
        }

        async Task Order(RunningProgram program, TaskCompletionSource answered, CancellationToken stop)
        {
            while (!stop.IsCancellationRequested)
            {
                var key = Guid.NewGuid().ToString();
                asked[key] = null;
                try
                {
                    using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(program.Address, "/api/orders")) { Content = JsonContent.Create(Body()) };
                    request.Headers.Authorization = new("Bearer", shop.Keys.Storefront);
                    request.Headers.Add("Idempotency-Key", key);
                    using var response = await http.SendAsync(request, CancellationToken.None);
                    var text = await response.Content.ReadAsStringAsync(CancellationToken.None);
                    Assert.Equal(201, (int)response.StatusCode);
                    asked[key] = text;
                    answered.TrySetResult();
                }
                catch (HttpRequestException)
                {
                    return;
                }
            }
        }
    }
}

/// <summary>The built program, serving a test's database in a process of its own.</summary>
sealed class RunningProgram : IDisposable
{
    readonly Process process;

    RunningProgram(Process process, Uri address) => (this.process, Address) = (process, address);

    public Uri Address { get; }

    public static async Task<RunningProgram> Start(OpenShop shop, params (string Key, string? Value)[] settings)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "KitWorks.Api.dll"), "serve", "--urls", "http://127.0.0.1:0"])
        {
            RedirectStandardOutput = true,
        };
        foreach (var (key, value) in shop.Database.Settings.Concat(settings)) start.Environment[key.Replace(":", "__", StringComparison.Ordinal)] = value;
        start.Environment["Logging__LogLevel__Default"] = "Warning";
        start.Environment["Logging__LogLevel__Microsoft.Hosting.Lifetime"] = "Information";
        start.Environment["Shop__PublicUrl"] = "https://kits.example.com";
        var process = Process.Start(start)!;
        const string sign = "Now listening on: ";
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.IndexOf(sign, StringComparison.Ordinal) is var at and >= 0)
            {
                _ = process.StandardOutput.ReadToEndAsync();
                return new(process, new(line[(at + sign.Length)..].Trim()));
            }
        }
        throw new InvalidOperationException($"The program ended with {process.ExitCode} before it listened.");
    }

    /// <summary>SIGKILL: no chance to finish anything.</summary>
    public void Kill()
    {
        process.Kill();
        process.WaitForExit();
    }

    public void Dispose()
    {
        if (!process.HasExited) Kill();
        process.Dispose();
    }
}
