using System.Collections.Concurrent;
using System.Diagnostics;

namespace KitWorks.Shop.Tests.Load;

/// <summary>Many clients at once on the same few items, by way of two instances on one database.</summary>
public sealed class HotStockTests
{
    const int Clients = 64;

    [Fact]
    public async Task Stock_WhenManyOrderCancelAndReceiveAtRandom_IsNeverOversoldAndNothingIsLost()
    {
        await using var shop = await OpenShop.Open();
        await using var second = await shop.AnotherInstance();
        await shop.Stock(stakes: 200);
        var quote = (await shop.Storefront.Post("/api/quotes", new { design = Designs.SmallDome, quantity = 1 })).Created.Id();
        var acknowledged = new ConcurrentDictionary<Guid, string>();
        var received = 200;
        var until = Stopwatch.StartNew();

        await Task.WhenAll(Enumerable.Range(0, Clients).Select(client => Task.Run(() => Work(client))));

        foreach (var (id, status) in acknowledged)
        {
            var now = (await shop.Storefront.Get($"/api/orders/{id}")).Ok.Text("status");
            Assert.True(now == status || (status == "waiting" && now == "reserved"), $"Order {id} was answered as {status}, and is {now}.");
        }
        var orders = await shop.All("/api/orders?limit=200");
        Assert.Equal(acknowledged.Count, orders.Count);
        Assert.Equal(Enumerable.Range(1001, orders.Count), orders.Select(o => o.Int("number")).Order());
        var stakes = await shop.Bench.Item("stake-450");
        Assert.Equal(received, stakes.Int("onHand"));
        Assert.Equal(10 * orders.Count(o => o.Text("status") == "reserved"), stakes.Int("reserved"));
        Assert.True(stakes.Int("available") < 10 || orders.All(o => o.Text("status") != "waiting"), "Stock lies there, and orders wait for it.");
        await shop.LedgerAddsUp();

        async Task Work(int client)
        {
            var random = new Random(client);
            var at = client % 2 == 0 ? shop : second;
            var mine = new List<Guid>();
            while (until.Elapsed < Durations.OfLoad)
            {
                var what = random.Next(10);
                if (what == 0)
                {
                    var quantity = random.Next(1, 30);
                    _ = (await at.Bench.Receive("stake-450", quantity)).Ok;
                    Interlocked.Add(ref received, quantity);
                }
                else if (what < 4 && mine.Count > 0)
                {
                    var id = mine[random.Next(mine.Count)];
                    var answer = await at.Storefront.Post($"/api/orders/{id}/cancel", once: Guid.NewGuid().ToString());
                    if (answer.Status == 409) answer.IsProblem(409, "order.status");
                    else acknowledged[id] = answer.Ok.Text("status");
                }
                else
                {
                    var order = (await at.Storefront.Post("/api/orders", new { quoteId = quote, customer = new { name = $"Client {client}" } }, Guid.NewGuid().ToString())).Created;
                    mine.Add(order.Id());
                    acknowledged[order.Id()] = order.Text("status");
                }
            }
        }
    }
}
