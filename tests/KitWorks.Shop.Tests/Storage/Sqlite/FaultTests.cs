using System.Data.Common;
using System.Net.Http.Json;
using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Shop.Tests.Storage.Sqlite;

/// <summary>A disk that is full and a file that may not be written, as SQLite itself reports them.</summary>
public sealed class FaultTests
{
    [Theory]
    [InlineData("PRAGMA max_page_count = 1")]
    [InlineData("PRAGMA query_only = 1")]
    public async Task Writing_WhenTheDatabaseCannot_IsAnsweredPlainlyAndRecovers(string fault)
    {
        var faults = new Faults();
        await using var shop = await OpenShop.Open(change: services => services.ConfigureDbContext<ShopDb>(db => db.AddInterceptors(faults)));
        await shop.Stock(stakes: 1000);
        _ = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        faults.Now = fault;
        // A page that is half empty takes a few more orders before the disk is needed.
        var refused = 0;
        for (var i = 0; i < 30 && refused == 0; i++) refused = await Place(shop, $"k-{i}") == 503 ? i + 1 : 0;
        Assert.NotEqual(0, refused);
        _ = (await shop.Bench.Get("/api/orders")).Ok;

        faults.Now = "PRAGMA max_page_count = 1000000; PRAGMA query_only = 0";
        Assert.Equal(201, await Place(shop, $"k-{refused - 1}"));
        Assert.Equal(1 + refused, (await shop.Bench.Get("/api/orders")).Ok.List("items").Count);
        await shop.LedgerAddsUp();
    }

    /// <summary>Past <see cref="Answer"/>, which takes any 5xx for a fault of ours.</summary>
    static async Task<int> Place(OpenShop shop, string key)
    {
        using var http = new HttpClient { BaseAddress = shop.Address };
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/orders") { Content = JsonContent.Create(new { design = Designs.SmallDome, customer = new { name = "A" } }) };
        request.Headers.Authorization = new("Bearer", shop.Keys.Storefront);
        request.Headers.Add("Idempotency-Key", key);
        using var response = await http.SendAsync(request);
        if (response.StatusCode == System.Net.HttpStatusCode.ServiceUnavailable)
        {
            Assert.NotNull(response.Headers.RetryAfter);
            Assert.Contains("storage.unavailable", await response.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }
        return (int)response.StatusCode;
    }

    /// <summary>Says something to every connection that is opened.</summary>
    sealed class Faults : DbConnectionInterceptor
    {
        public string? Now { get; set; }

        public override async Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            if (Now is null) return;
            await using var command = connection.CreateCommand();
            command.CommandText = Now;
            await command.ExecuteNonQueryAsync(cancellationToken);
        }
    }
}
