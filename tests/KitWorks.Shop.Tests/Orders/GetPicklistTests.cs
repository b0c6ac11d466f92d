using System.Text.Json;

namespace KitWorks.Shop.Tests.Orders;

public sealed class GetPicklistTests(OneShop one) : IClassFixture<OneShop>
{
    [Fact]
    public async Task Picklist_WhenTwoKitsAreOrdered_ListsTwiceWhatTheKitTakes()
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.Greenhouse, quantity: 2)).Created;

        var picklist = (await shop.Storefront.Get($"/api/orders/{order.Id()}/picklist")).Ok;

        Shape.Holds("""{ "lines": [{ "tier": 0, "sku": "…", "description": "…", "tag": null, "quantity": 1, "bin": "…" }] }""", picklist);
        Assert.Equal(2 * 165, Sum(picklist, "pipe-"));
        Assert.Equal(2 * 61, Sum(picklist, "hub-"));
        Assert.Equal(2 * 347, Sum(picklist, "tie-"));
        Assert.Equal(2 * 15, Sum(picklist, "stake-"));
        Assert.All(picklist.List("lines"), l => Assert.NotEmpty(l.Text("bin")));
        Assert.All(picklist.List("lines"), l => Assert.Equal(l.Text("sku").StartsWith("pipe-", StringComparison.Ordinal), !l.IsNull("tag")));
        Assert.Equal(["orange", "reddish purple", "sky blue"], picklist.List("lines").Where(l => !l.IsNull("tag")).Select(l => l.Text("tag/colour")).Distinct().Order());
        var tiers = picklist.List("lines").Select(l => l.Int("tier")).ToList();
        Assert.Equal(tiers.Order(), tiers);
    }

    [Fact]
    public async Task Bundles_WhenTheirContentsAreAddedUp_AreTheKit()
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.Greenhouse)).Created;

        var bundles = (await shop.Storefront.Get($"/api/orders/{order.Id()}/bundles")).Ok;
        var kit = (await shop.Storefront.Get($"/api/orders/{order.Id()}/kit")).Ok;

        Shape.Holds("""
            { "bundles": [{ "code": "…", "tier": 0, "contents": [{ "sku": "…", "code": null, "description": "…", "count": 1 }], "massGrams": 1, "lengthMm": 1, "status": "open" }] }
            """, bundles);
        var contents = bundles.List("bundles").SelectMany(b => b.List("contents"), (b, item) => (Tier: b.Int("tier"), Item: item)).ToList();
        foreach (var tier in kit.List("tiers"))
        {
            foreach (var struts in tier.List("struts"))
                Assert.Equal(struts.Int("count"), contents.Where(c => c.Tier == tier.Int("number") && CodeOf(c.Item) == struts.Text("code")).Sum(c => c.Item.Int("count")));
            Assert.Equal(tier.List("hubs").Sum(h => h.Int("count")),
                contents.Where(c => c.Tier == tier.Int("number") && c.Item.Text("sku").StartsWith("hub-", StringComparison.Ordinal)).Sum(c => c.Item.Int("count")));
        }
        Assert.Equal((165, 61, 347, 15), (
            contents.Where(c => CodeOf(c.Item) is not null).Sum(c => c.Item.Int("count")), Of("hub-"), Of("tie-"), Of("stake-")));
        Assert.Equal(kit.Int("totals/massGrams"), bundles.List("bundles").Sum(b => b.Int("massGrams")));
        Assert.All(bundles.List("bundles"), b => Assert.Equal("open", b.Text("status")));
        Assert.Equal(bundles.List("bundles").Count, bundles.Texts("bundles", "code").Distinct().Count());

        int Of(string sku) => contents.Where(c => c.Item.Text("sku").StartsWith(sku, StringComparison.Ordinal)).Sum(c => c.Item.Int("count"));
    }

    [Fact]
    public async Task PicklistCsv_WhenRead_SaysWhatThePicklistSays()
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.Greenhouse)).Created;

        var answer = (await shop.Storefront.Get($"/api/orders/{order.Id()}/picklist.csv")).Is(200);
        var picklist = (await shop.Storefront.Get($"/api/orders/{order.Id()}/picklist")).Ok;

        Assert.Equal("text/csv", answer.MediaType);
        var lines = answer.Text.Split("\r\n");
        Assert.Equal("tier,bin,sku,code,description,tag,quantity", lines[0]);
        Assert.Equal("", lines[^1]);
        Assert.Equal(picklist.List("lines").Select(l => l.Int("quantity")), lines[1..^1].Select(l => int.Parse(l[(l.LastIndexOf(',') + 1)..])));
        // A description with a comma stands in quotes.
        Assert.Contains(lines, l => l.Contains("\"Ring hub 100, six ways\"", StringComparison.Ordinal));
    }

    static int Sum(JsonElement picklist, string sku) =>
        picklist.List("lines").Where(l => l.Text("sku").StartsWith(sku, StringComparison.Ordinal)).Sum(l => l.Int("quantity"));

    static string? CodeOf(JsonElement item) => item.IsNull("code") ? null : item.Text("code");
}
