using System.Net.Sockets;
using System.Text;

namespace KitWorks.Api.Tests.Http;

/// <summary>Whoever asks too often, too much or too slowly is told so, and takes nothing from others.</summary>
public sealed class LimitsTests
{
    [Fact]
    public async Task Key_WhenItAsksTooOften_WaitsAndTheOthersDoNot()
    {
        await using var shop = await OpenShop.Open(settings: [("Limits:PerKeyPerSecond", "1")]);

        var refused = await UntilRefused(shop.Storefront, "/api/shapes");

        refused.IsProblem(429, "limit.rate");
        Assert.InRange(refused.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 10);
        (await shop.OtherStorefront.Get("/api/shapes")).Is(200);
        (await shop.Bench.Get("/api/stock")).Is(200);
        (await shop.Nobody.Get("/health/live")).Is(200);
    }

    [Fact]
    public async Task Address_WhenItTriesManyKeys_IsStopped()
    {
        await using var shop = await OpenShop.Open(settings: [("Limits:PerAddressPerSecond", "1")]);
        var answers = new List<Answer>();

        answers.AddRange(await Task.WhenAll(Enumerable.Range(0, 40).Select(i => shop.With($"kitworks_{i:x64}").Get("/api/shapes"))));

        Assert.Contains(answers, a => a.Status == 401);
        Assert.Contains(answers, a => a.Status == 429);
        (await shop.Storefront.Get("/api/shapes")).Is(200);
    }

    [Fact]
    public async Task Address_WhenATrustedProxyTellsIt_IsTheCallersOwn()
    {
        await using var shop = await OpenShop.Open(settings: [("Limits:PerAddressPerSecond", "1"), ("Proxies:Trusted", "127.0.0.0/8, ::1")]);

        (await UntilRefused(shop.Nobody, "/b/0", "203.0.113.7")).Is(429);

        (await From(shop.Nobody, "/b/0", "203.0.113.8")).Is(404);
        // What the caller wrote there itself counts for nothing: the last address is the one that the proxy saw.
        (await From(shop.Nobody, "/b/0", "203.0.113.99, 203.0.113.7")).Is(429);
    }

    [Fact]
    public async Task Address_WhenAnybodyTellsIt_IsNotBelieved()
    {
        await using var shop = await OpenShop.Open(settings: [("Limits:PerAddressPerSecond", "1")]);

        (await UntilRefused(shop.Nobody, "/b/0", "203.0.113.7")).Is(429);

        (await From(shop.Nobody, "/b/0", "203.0.113.8")).Is(429);
    }

    [Theory]
    [InlineData("/api/kits/preview", null)]
    [InlineData("/api/quotes", null)]
    [InlineData("/api/orders", "a-large-one")]
    public async Task Body_WhenItsLengthIsNotAnnouncedAndItIsTooLarge_IsRefusedInSoManyWords(string path, string? once)
    {
        await using var shop = await OpenShop.Open();
        var body = Encoding.ASCII.GetBytes("{\"design\": \"" + new string('x', 3 * 1024 * 1024) + "\"}");
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new StreamContent(new MemoryStream(body)) };
        request.Headers.TransferEncodingChunked = true;
        request.Content.Headers.ContentType = new("application/json");
        if (once is not null) request.Headers.Add("Idempotency-Key", once);

        (await shop.Storefront.Send(request)).IsProblem(413, "request.too-large");
    }

    [Fact]
    public async Task Body_WhenItComesByTheByte_IsNotWaitedFor()
    {
        await using var shop = await OpenShop.Open();
        using var slow = new TcpClient();
        await slow.ConnectAsync(shop.Address.Host, shop.Address.Port, TestContext.Current.CancellationToken);
        var stream = slow.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(
            $"POST /api/kits/preview HTTP/1.1\r\nHost: shop\r\nAuthorization: Bearer {shop.Keys.Storefront}\r\nContent-Type: application/json\r\nContent-Length: 100000\r\n\r\n"),
            TestContext.Current.CancellationToken);
        var dribble = Dribble(stream);

        var answer = new StringBuilder();
        var buffer = new byte[4096];
        try
        {
            for (int read; (read = await stream.ReadAsync(buffer, TestContext.Current.CancellationToken)) > 0;) answer.Append(Encoding.ASCII.GetString(buffer, 0, read));
        }
        catch (IOException)
        {
            // Broken off while we were sending.
        }
        await dribble;

        Assert.StartsWith("HTTP/1.1 408", answer.ToString(), StringComparison.Ordinal);

        static async Task Dribble(NetworkStream stream)
        {
            try
            {
                for (var i = 0; i < 600; i++)
                {
                    stream.WriteByte((byte)' ');
                    await Task.Delay(TimeSpan.FromMilliseconds(100));
                }
                Assert.Fail("The service took a byte at a time for a minute.");
            }
            catch (IOException)
            {
                // The service has hung up.
            }
        }
    }

    [Fact]
    public async Task Computing_WhenOneCallerHasMuchOfIt_IsDividedAndRefusedInWords()
    {
        await using var shop = await OpenShop.Open(settings: [("Limits:ComputingAtOnce", "2"), ("Limits:ComputingWaiting", "1")]);
        // Lengths that hardly fit each other, so that the search takes all of its time.
        var pieces = string.Join(',', Enumerable.Range(0, 60).Select(i => $$"""{"cutLength":"{{397 + i * 13.7:0.0}} mm","count":{{7 + i % 9}}}"""));
        string Job(int i) => $$"""{"pieces":[{{pieces}},{"cutLength":"{{500 + i}} mm","count":1}],"stock":[{"length":"3048 mm"}],"kerf":"3 mm","timeLimitSeconds":3}""";

        using var http = new HttpClient { BaseAddress = shop.Address };
        http.DefaultRequestHeaders.Authorization = new("Bearer", shop.Keys.Storefront);
        var greedy = Enumerable.Range(0, 6).Select(i => http.PostAsync("/api/cut-plans/preview", new StringContent(Job(i), Encoding.UTF8, "application/json"))).ToList();
        // Once one of them is refused, the others are at work or wait.
        var first = await await Task.WhenAny(greedy);
        var other = await shop.OtherStorefront.PostText("/api/cut-plans/preview", """{"pieces":[{"cutLength":"1 m","count":3}],"stock":[{"length":"3048 mm"}]}""");
        var answers = await Task.WhenAll(greedy);

        other.Is(200);
        Assert.Equal(System.Net.HttpStatusCode.ServiceUnavailable, first.StatusCode);
        Assert.All(answers, answer => Assert.True((int)answer.StatusCode is 200 or 503));
        Assert.Contains("service.busy", await first.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.InRange(first.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 60);
    }

    [Fact]
    public async Task Answers_WhateverTheyAre_TellBrowsersToBeCareful()
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        foreach (var path in (string[])["/docs", "/openapi/v1.json", "/api/shapes", "/api/orders", "/nowhere", "/b/1001B0011", "/health/live", $"/api/orders/{order.Id()}/labels.svg?bundle={order.Text("bundles/0/code")}"])
        {
            var answer = await shop.Bench.Get(path);
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
            Assert.Contains("frame-ancestors 'none'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
            Assert.NotEmpty(answer.Headers.GetValues("Referrer-Policy").Single());
            Assert.False(answer.Headers.Contains("Server"));
            if (path.StartsWith("/api", StringComparison.Ordinal)) Assert.True(answer.Headers.CacheControl!.Private);
        }
    }

    static Task<Answer> From(Caller caller, string path, string address) =>
        caller.Send(new(HttpMethod.Get, path) { Headers = { { "X-Forwarded-For", address } } });

    /// <summary>More at once than may come at once.</summary>
    static async Task<Answer> UntilRefused(Caller caller, string path, string? address = null) =>
        (await Task.WhenAll(Enumerable.Range(0, 40).Select(_ => address is null ? caller.Get(path) : From(caller, path, address))))
        .FirstOrDefault(answer => answer.Status == 429) ?? throw new InvalidOperationException("Forty requests at once were served, and ten may come.");
}
