using System.Diagnostics;
using KitWorks.Shop.Orders;
using Testcontainers.PostgreSql;

namespace KitWorks.Benchmarks.Orders;

/// <summary>
/// Orders a second, of twenty lines each on the same twenty items, durable, through the command's handler with an
/// idempotency key, beside the same rows written in raw SQL in the same run:
/// <c>orders [sqlite|postgresql|both] [seconds] [rounds] [grow]</c>. PostgreSQL runs in Docker (POSTGRES_IMAGE), or is the
/// server that POSTGRES names by a connection string. <c>grow</c> measures again with 1,000,000 movements and 100,000 orders.
/// </summary>
static class OrderRates
{
    public static int Print(string[] args) => Run(args).GetAwaiter().GetResult();

    static async Task<int> Run(string[] args)
    {
        var which = args.Length > 0 ? args[0] : "both";
        var length = TimeSpan.FromSeconds(args.Length > 1 ? int.Parse(args[1]) : 5);
        var rounds = args.Length > 2 ? int.Parse(args[2]) : 3;
        var grow = args.Contains("grow");
        if (which is "sqlite" or "both") await Sqlite(length, rounds, grow);
        if (which is "postgresql" or "both") await PostgreSql(length, rounds, grow);
        return 0;
    }

    static async Task Sqlite(TimeSpan length, int rounds, bool grow)
    {
        var folder = Directory.CreateTempSubdirectory("kitworks-orders-");
        try
        {
            await using var shop = await OrderShop.Open(("ConnectionStrings:KitWorks", $"Data Source={Path.Combine(folder.FullName, "shop.db")}"));
            var raw = new RawSqlite(Path.Combine(folder.FullName, "shop.db"), await shop.Sample());
            await Measure("SQLite", rounds, length,
            [
                new("raw SQL, one caller, one order a commit", 1, _ => raw.Open()),
                new("shop, 1 caller", 1, _ => shop.Caller()),
                new("shop, 8 callers", 8, _ => shop.Caller()),
            ]);
            if (!grow) return;
            await Growth("SQLite", shop, length, rounds, () => raw.Fill());
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    static async Task PostgreSql(TimeSpan length, int rounds, bool grow)
    {
        await using var container = Environment.GetEnvironmentVariable("POSTGRES") is null
            ? new PostgreSqlBuilder(Environment.GetEnvironmentVariable("POSTGRES_IMAGE") ?? "postgres:17").WithCommand("-c", "max_connections=200").Build()
            : null;
        if (container is not null) await container.StartAsync();
        var connection = Environment.GetEnvironmentVariable("POSTGRES") ?? container!.GetConnectionString();
        (string, string?)[] settings = [("Database:Provider", "PostgreSql"), ("ConnectionStrings:KitWorks", connection)];
        await using var shop = await OrderShop.Open(settings);
        await using var second = await OrderShop.Join(settings);
        var raw = await RawPostgreSql.Make(connection, await shop.Sample());
        await Measure("PostgreSQL", rounds, length,
        [
            new("SQL function, 8 callers", 8, _ => raw.Open()),
            new("SQL function, 32 callers", 32, _ => raw.Open()),
            new("shop, 8 callers, one instance", 8, _ => shop.Caller()),
            new("shop, 32 callers, one instance", 32, _ => shop.Caller()),
            new("shop, 8 callers, two instances", 8, i => (i % 2 == 0 ? shop : second).Caller()),
            new("shop, 32 callers, two instances", 32, i => (i % 2 == 0 ? shop : second).Caller()),
        ]);
        if (grow) await Growth("PostgreSQL", shop, length, rounds, raw.Fill);
    }

    static async Task Growth(string name, OrderShop shop, TimeSpan length, int rounds, Func<Task> fill)
    {
        await shop.Empty();
        var way = new Way("shop, 8 callers, a hundred orders", 8, _ => shop.Caller());
        var few = new List<double>();
        for (var i = 0; i < rounds; i++)
        {
            await shop.Empty();
            await Rates(way, TimeSpan.FromSeconds(0.2));
            few.Add((await Rates(way, length)).Rate);
        }
        await fill();
        await Rates(way, TimeSpan.FromSeconds(1));
        var many = new List<double>();
        for (var i = 0; i < rounds; i++) many.Add((await Rates(way, length)).Rate);
        Console.WriteLine($"{name}: {Median(few):0} orders/s from nothing, {Median(many):0} with 1,000,000 movements and 100,000 orders: {Median(few) / Median(many):0.00} times slower");
    }

    /// <summary>Takes turns between the ways, so that what else the machine does falls on all alike.</summary>
    static async Task Measure(string database, int rounds, TimeSpan length, Way[] ways)
    {
        foreach (var way in ways) await Rates(way, TimeSpan.FromSeconds(3));
        var found = ways.ToDictionary(w => w, _ => new List<Found>());
        for (var i = 0; i < rounds; i++)
            foreach (var way in ways) found[way].Add(await Rates(way, length));
        var yardstick = Median(found[ways[0]].ConvertAll(f => f.Rate));
        Console.WriteLine($"{database}: 20 lines an order, median of {rounds} times {length.TotalSeconds:0} s, warm");
        foreach (var way in ways)
        {
            var rate = Median(found[way].ConvertAll(f => f.Rate));
            Console.WriteLine(
                $"  {way.Name,-42} {rate,7:0} orders/s  {rate / yardstick,5:0.00} × the first"
                + $"   median {Median(found[way].ConvertAll(f => f.Half)),6:0.0} ms, p99 {Median(found[way].ConvertAll(f => f.Slow)),6:0.0} ms = {Median(found[way].ConvertAll(f => f.Slow / f.Half)):0.0} × it"
                + $"   {Median(found[way].ConvertAll(f => f.Busy)):0.00} ms of this process's CPU an order");
        }
    }

    static async Task<Found> Rates(Way way, TimeSpan length)
    {
        var callers = Enumerable.Range(0, way.Callers).Select(way.Caller).ToList();
        var used = Environment.CpuUsage.TotalTime;
        var stop = Stopwatch.StartNew();
        var times = await Task.WhenAll(callers.Select(caller => Task.Run(async () =>
        {
            var mine = new List<double>();
            while (stop.Elapsed < length)
            {
                var start = Stopwatch.GetTimestamp();
                await caller.Order();
                mine.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }
            return mine;
        })));
        var seconds = stop.Elapsed.TotalSeconds;
        var busy = (Environment.CpuUsage.TotalTime - used).TotalMilliseconds;
        foreach (var caller in callers) await caller.DisposeAsync();
        var all = times.SelectMany(t => t).Order().ToList();
        return new(all.Count / seconds, all[all.Count / 2], all[(int)(all.Count * 0.99)], busy / all.Count);
    }

    static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);

    sealed record Way(string Name, int Callers, Func<int, ICaller> Caller);

    readonly record struct Found(double Rate, double Half, double Slow, double Busy);
}

/// <summary>Somebody who places one order after the other.</summary>
interface ICaller : IAsyncDisposable
{
    Task Order();
}

/// <summary>What one order writes, for those who write it without the shop.</summary>
sealed record SampleOrder(
    string[] Skus, int[] Quantities, string StockLines, string Price, string DesignId, byte[] Kit, string Bundles, int BundleCount, string Answer);
