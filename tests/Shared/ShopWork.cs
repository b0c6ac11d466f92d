using System.Text.Json;

namespace KitWorks.Tests;

/// <summary>What people do in a shop, so that a test says it in a word.</summary>
static class ShopWork
{
    static readonly string[] PartsOfRing100 =
        ["hub-r100-5", "hub-r100-6", "pipe-pvc-33", "tie-n120", "stake-450", "cover-film-200"];

    /// <summary>Enough of everything for ring-100 on pvc-33, but only so many stakes: a small dome takes ten.</summary>
    public static async Task Stock(this OpenShop shop, int stakes)
    {
        var lines = PartsOfRing100.Where(sku => sku != "stake-450" || stakes > 0).Select(sku => new { sku, quantity = sku == "stake-450" ? stakes : 90_000 });
        _ = (await shop.Bench.Post("/api/stock/receipts", new { lines, reference = "opening" })).Ok;
    }

    public static Task<Answer> Order(
        this Caller caller, object design, int quantity = 1, string whenShort = "wait", string? once = null, string customer = "A. Customer", string? reference = null) =>
        caller.Post("/api/orders", new { design, quantity, customer = new { name = customer }, reference, whenShort }, once ?? Guid.NewGuid().ToString());

    public static Task<Answer> Receive(this Caller caller, string sku, int quantity) =>
        caller.Post("/api/stock/receipts", new { lines = new[] { new { sku, quantity } }, reference = "delivery" });

    public static async Task<JsonElement> Item(this Caller caller, string sku) => (await caller.Get($"/api/stock/{sku}")).Ok;

    public static async Task<string> StatusOf(this Caller caller, JsonElement order) => (await caller.Get($"/api/orders/{order.Id()}")).Ok.Text("status");

    public static Task<Answer> Scan(this Caller caller, string code, Guid? orderId = null) => caller.Post("/api/scans", new { code, station = "bench 1", orderId });

    /// <summary>Scans every bundle of an order.</summary>
    public static async Task Pack(this Caller caller, JsonElement order)
    {
        foreach (var code in order.Texts("bundles", "code")) _ = (await caller.Scan(code)).Ok;
    }
}
