using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace KitWorks.Api.Tests.Fuzzing;

/// <summary>
/// Requests by the thousand, made after our own description and then spoiled, to every operation and with every kind of key,
/// on a shop that remembers them all: none may find a fault in the service, none may break its books.
/// </summary>
[Collection(nameof(Alone))]
public sealed class FuzzTests
{
    /// <summary>How many requests; a longer run takes the number, and the seed of a run to repeat, from the environment.</summary>
    static int Requests => int.TryParse(Environment.GetEnvironmentVariable("KITWORKS_FUZZ"), out var asked) ? asked
        : Environment.GetEnvironmentVariable("CI") == "true" ? 24_000 : 6_000;

    static int Seed => int.TryParse(Environment.GetEnvironmentVariable("KITWORKS_FUZZ_SEED"), out var asked) ? asked : Environment.TickCount;

    /// <summary>What one request may take at the very most, on a machine that does much else.</summary>
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    [Fact]
    public async Task Service_WhateverItIsAsked_AnswersAndKeepsItsBooks()
    {
        await using var shop = await OpenShop.Open(settings: [("Limits:PerKeyPerSecond", "0"), ("Limits:PerAddressPerSecond", "0")]);
        await shop.Stock(stakes: 2_000);
        var description = new Description((await shop.Nobody.Get("/openapi/v1.json")).Ok);
        var catalog = await Catalog.Read(shop);
        var seed = Seed;
        var lanes = Enumerable.Range(0, 4).Select(lane => new Lane(shop, description, new Random(seed + lane), seed)).ToList();

        var halfWay = 0L;
        for (var round = 0; round < 20; round++)
        {
            // By then what is kept is kept, and the readers of our description are made, which take more than the service.
            if (round == 10) halfWay = GC.GetTotalMemory(forceFullCollection: true);
            await Task.WhenAll(lanes.Select(lane => Task.Run(() => lane.Ask(Requests / lanes.Count / 20))));
            // What was made of the catalog may leave nothing to order.
            await catalog.PutBack(shop);
        }

        Assert.True(lanes.All(l => l.Faults.Count == 0), string.Join("\n\n", lanes.SelectMany(l => l.Faults).Take(20)));
        await shop.LedgerAddsUp();
        var ended = lanes.SelectMany(l => l.Ended).GroupBy(e => e.Key, e => e.Value).ToDictionary(g => g.Key, g => g.Sum());
        // Requests that get no further than the reader try nothing.
        Assert.All(description.Operations.Where(o => o.Path.StartsWith("/api", StringComparison.Ordinal)), o => Assert.True(ended.Any(e => e.Key.StartsWith($"{o} ", StringComparison.Ordinal)), $"{o} was never asked."));
        Assert.InRange(ended.Where(e => e.Key.EndsWith(" 200", StringComparison.Ordinal) || e.Key.EndsWith(" 201", StringComparison.Ordinal)).Sum(e => e.Value), Requests / 20, Requests);
        var growth = GC.GetTotalMemory(forceFullCollection: true) - halfWay;
        Assert.True(growth < 200_000_000, $"As many requests again took {growth / 1_000_000} MB more.");
        TestContext.Current.TestOutputHelper?.WriteLine($"seed {seed}, {growth / 1_000_000} MB more in the second half\n" + string.Join('\n', ended.OrderBy(e => e.Key).Select(e => $"{e.Value,6} {e.Key}")));
    }

    /// <summary>One caller after another, each with a request of their own making.</summary>
    sealed class Lane
    {
        readonly OpenShop shop;
        readonly Description description;
        readonly Random random;
        readonly int seed;
        readonly Words words;
        readonly Maker maker;
        readonly Caller[] callers;

        public Lane(OpenShop shop, Description description, Random random, int seed)
        {
            (this.shop, this.description, this.random, this.seed) = (shop, description, random, seed);
            words = new(random);
            maker = new(description, words, random);
            callers = [shop.Storefront, shop.OtherStorefront, shop.Bench, shop.Admin, shop.Bench, shop.Admin, shop.Admin, shop.Nobody, shop.With("kitworks_x")];
        }

        public List<string> Faults { get; } = [];

        /// <summary>How often each operation ended with each status.</summary>
        public Dictionary<string, int> Ended { get; } = [];

        public async Task Ask(int requests)
        {
            for (var i = 0; i < requests; i++)
            {
                var operation = description.Operations[random.Next(description.Operations.Count)];
                var address = AddressOf(operation);
                var body = BodyOf(operation);
                var once = operation.Method == "POST" && random.Next(3) > 0 ? random.Next(2) == 0 ? Guid.NewGuid().ToString() : $"again-{random.Next(40)}" : null;
                Answer answer;
                try
                {
                    answer = await Send(operation, address, body, once).WaitAsync(Patience);
                }
                catch (Exception wrong)
                {
                    Faults.Add($"Seed {seed}: {operation.Method} {Short(address)}\n{Short(body)}\n{wrong.Message}");
                    continue;
                }
                Judge(operation, address, body, answer);
            }
        }

        Task<Answer> Send(Operation operation, string address, string? body, string? once)
        {
            var request = new HttpRequestMessage(new(operation.Method), address);
            if (body is not null)
            {
                request.Content = new ByteArrayContent(Encoding.UTF8.GetBytes(body));
                request.Content.Headers.ContentType = new MediaTypeHeaderValue(random.Next(40) == 0 ? "text/plain" : "application/json");
                if (random.Next(20) == 0) request.Headers.TransferEncodingChunked = true;
            }
            if (once is not null) request.Headers.Add("Idempotency-Key", once);
            return callers[random.Next(callers.Length)].Send(request);
        }

        string AddressOf(Operation operation)
        {
            var path = operation.Path;
            foreach (var parameter in operation.Parameters("path"))
            {
                var name = parameter.Text("name");
                path = path.Replace($"{{{name}}}", Uri.EscapeDataString(words.For(name)), StringComparison.Ordinal);
            }
            var query = operation.Parameters("query").Where(p => p.TryGetProperty("required", out var must) && must.GetBoolean() || random.Next(3) == 0)
                .Select(p => $"{p.Text("name")}={Uri.EscapeDataString(QueryOf(p))}");
            return path + (query.Any() ? "?" + string.Join('&', query) : "");
        }

        string QueryOf(JsonElement parameter) => parameter.Text("name") switch
        {
            "design" => Spoiled(JsonNode.Parse(Samples.Of["POST /api/kits/preview"][0])!["design"]),
            "shelter" => Spoiled(JsonNode.Parse(Samples.Of["POST /api/frames"][random.Next(2)])!["shelter"]),
            var name => maker.Of(parameter.At("schema"), name)?.ToString() ?? "",
        };

        string? BodyOf(Operation operation)
        {
            if (operation.Body is not { } schema) return null;
            if (random.Next(60) == 0) return words.AnyHostile();
            var dice = random.Next(10);
            if (Samples.Of.TryGetValue(operation.ToString(), out var samples) && dice < 7)
            {
                var sample = JsonNode.Parse(samples[random.Next(samples.Length)]);
                return dice < 2 ? sample!.ToJsonString() : Spoiled(sample);
            }
            var made = maker.Of(schema, "");
            return dice == 9 ? Spoiled(made) : made?.ToJsonString() ?? "null";
        }

        string Spoiled(JsonNode? value)
        {
            for (var i = random.Next(3); i >= 0; i--) value = maker.Spoil(value);
            var text = value?.ToJsonString() ?? "null";
            return random.Next(50) > 0 ? text : random.Next(2) == 0 ? text[..random.Next(text.Length)] : text.Replace("\":", "\":\"x\",\"" + words.For("kind") + "\":", StringComparison.Ordinal);
        }

        /// <summary>That it is no fault of the service, <see cref="Answer"/> has seen to.</summary>
        void Judge(Operation operation, string address, string? body, Answer answer)
        {
            var ended = $"{operation} {answer.Status}";
            Ended[ended] = Ended.GetValueOrDefault(ended) + 1;
            // The server itself refuses an address that is none, before there is anybody to find words.
            if (answer is { Status: 400 or 414, Bytes.Length: 0 }) return;
            if (answer.Status >= 400 && answer.MediaType != "application/problem+json") Faults.Add(Told($"{answer.Status} {answer.MediaType}"));
            if (answer.MediaType is not ("application/json" or "application/problem+json") || answer.Bytes.Length > 200_000) return;
            // With nothing in a parameter's place, it is another operation that answers.
            if (address.Split('?')[0].Split('/').Skip(1).Any(segment => segment is "" or "." or "..")) return;
            // The first answers of a kind and then some: holding each against its schema takes longer than the answer.
            if (Ended[ended] < 8 || random.Next(50) == 0)
                lock (description)
                {
                    var fault = description.FaultIn(operation, answer.Status, answer.Json);
                    if (fault is not null) Faults.Add(Told($"{answer.Status} is not as described: {fault}"));
                }
            if (answer.Status < 400) Note(answer.Json, "");

            string Told(string fault) => $"Seed {seed}: {operation.Method} {Short(address)}\n{Short(body)}\n{fault}";
        }

        static string? Short(string? text) => text?.Length > 3000 ? text[..3000] + "…" : text;

        void Note(JsonElement value, string field)
        {
            if (value.ValueKind == JsonValueKind.Object)
                foreach (var one in value.EnumerateObject()) Note(one.Value, one.Name);
            else if (value.ValueKind == JsonValueKind.Array)
                foreach (var one in value.EnumerateArray().Take(5)) Note(one, field);
            else if (value.ValueKind == JsonValueKind.String && field is "id" or "code" or "sku" or "next")
            {
                words.See(field, value.GetString()!);
                if (field == "id") words.See("quoteId", value.GetString()!);
                if (field == "id") words.See("orderId", value.GetString()!);
                if (field == "next") words.See("after", value.GetString()!);
                if (field == "code") words.See("bundle", value.GetString()!);
            }
        }
    }

    /// <summary>The catalog as it was before anybody tried to spoil it.</summary>
    sealed class Catalog(Dictionary<string, JsonElement> sections)
    {
        static readonly string[] Names = ["ties", "hub-systems", "strut-stocks", "covers", "palette", "prices", "workshop", "screening"];

        public static async Task<Catalog> Read(OpenShop shop)
        {
            var sections = new Dictionary<string, JsonElement>();
            foreach (var name in Names) sections[name] = (await shop.Admin.Get($"/api/catalog/{name}")).Ok;
            return new(sections);
        }

        public async Task PutBack(OpenShop shop)
        {
            foreach (var (name, section) in sections) (await shop.Admin.Put($"/api/catalog/{name}", section)).Is(200);
        }
    }
}

/// <summary>Memory is measured for the whole process; nothing else is to run in it.</summary>
[CollectionDefinition(DisableParallelization = true)]
public sealed class Alone;
