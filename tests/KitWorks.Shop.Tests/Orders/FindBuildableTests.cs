using System.Text.Json;

namespace KitWorks.Shop.Tests.Orders;

public sealed class FindBuildableTests
{
    [Theory]
    [InlineData(9, 0)]
    [InlineData(35, 3)]
    public async Task Buildable_WhenStakesRunOutFirst_SaysHowManyKitsTheyCover(int stakes, int kits)
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes);

        var buildable = (await shop.Bench.Get(Path(JsonSerializer.Serialize(Designs.SmallDome)))).Ok;

        Assert.Equal((kits, "stake-450"), (buildable.Int("kits"), buildable.Text("runsOutFirst")));
        Assert.Equal(10, buildable.List("items").Single(i => i.Text("sku") == "stake-450").Int("perKit"));
    }

    [Fact]
    public async Task Buildable_WhenStockIsPromised_CountsWhatIsAvailable()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 35);
        _ = (await shop.Storefront.Order(Designs.SmallDome, quantity: 2)).Created;

        Assert.Equal(1, (await shop.Bench.Get(Path(JsonSerializer.Serialize(Designs.SmallDome)))).Ok.Int("kits"));
    }

    [Theory]
    [InlineData("{}", 422)]
    [InlineData("null", 422)]
    [InlineData("[]", 400)]
    [InlineData("not json", 400)]
    [InlineData("{\"shelter\": {\"colour\": 1}}", 400)]
    public async Task Buildable_WhenTheDesignIsWrong_IsRefused(string design, int status)
    {
        await using var shop = await OpenShop.Open();

        var answer = await shop.Bench.Get(Path(design));

        answer.IsProblem(status, answer.Is(status).Json.Text("code"));
        (await shop.Bench.Get("/api/stock/buildable")).Is(400);
    }

    static string Path(string design) => $"/api/stock/buildable?design={Uri.EscapeDataString(design)}";
}
