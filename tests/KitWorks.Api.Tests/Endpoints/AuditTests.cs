namespace KitWorks.Api.Tests.Endpoints;

public sealed class AuditTests
{
    [Fact]
    public async Task Audit_WhenThingsAreChanged_SaysByWhomAndNothingOfCustomers()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 10);
        var order = (await shop.Storefront.Order(Designs.SmallDome, customer: "Ms Nobody", once: "audit-1")).Created;
        (await shop.Storefront.Order(Designs.SmallDome, customer: "Ms Nobody", once: "audit-1")).Is(201);
        (await shop.Storefront.Order(Designs.SmallDome, whenShort: "refuse")).IsProblem(409, "stock.short");
        _ = (await shop.Bench.Post("/api/stock/adjustments", new { sku = "tie-n120", quantity = -3, reason = "broken" })).Ok;
        _ = (await shop.Bench.Post($"/api/orders/{order.Id()}/cancel")).Ok;
        (await shop.Admin.Post("/api/keys", new { name = "till", role = "bench" })).Is(201);

        var answer = (await shop.Admin.Get("/api/audit?limit=5")).Is(200);
        var entries = answer.Json.List("items").Select(e => $"{e.Text("actor")} {e.Text("role")} {e.Text("action")}").ToList();

        Assert.Equal(["bootstrap admin CreateKey", "bench bench CancelOrder", "bench bench AdjustStock", "storefront storefront PlaceOrder", "bench bench ReceiveStock"], entries);
        Assert.Contains("name=till role=Bench", answer.Json.Text("items/0/about"), StringComparison.Ordinal);
        Assert.Contains($"number={order.Int("number")}", answer.Json.Text("items/3/about"), StringComparison.Ordinal);
        Assert.Contains("sku=tie-n120 quantity=-3 reason=broken", answer.Json.Text("items/2/about"), StringComparison.Ordinal);
        Assert.All(answer.Json.List("items"), e => Assert.Contains("127.0.0.1", e.Text("address"), StringComparison.Ordinal));
        Assert.DoesNotContain("Nobody", answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Audit_WhenReadInPages_LeavesNothingOut()
    {
        await using var shop = await OpenShop.Open();
        for (var i = 0; i < 7; i++) _ = (await shop.Bench.Receive("stake-450", i + 1)).Ok;

        var read = new List<string>();
        for (string? after = ""; after is not null;)
        {
            var page = (await shop.Admin.Get($"/api/audit?limit=3&actor=bench&action=ReceiveStock&after={after}")).Ok;
            read.AddRange(page.List("items").Select(e => e.Text("action")));
            after = page.IsNull("next") ? null : page.Text("next");
        }

        Assert.Equal(7, read.Count);
        (await shop.Bench.Get("/api/audit")).IsProblem(403, "access.role");
        (await shop.Storefront.Get("/api/audit")).IsProblem(403, "access.role");
    }
}
