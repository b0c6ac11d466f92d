namespace KitWorks.Api.Tests.Http;

/// <summary>What does not change is computed once, and sent once to who keeps it.</summary>
public sealed class PureAnswersTests(OneShop one) : IClassFixture<OneShop>
{
    const string Shelter = """{"kind":"dome","frequency":2,"cut":"1/2","size":{"height":"2 m"}}""";
    const string Design = $$"""{"shelter":{{Shelter}},"hubSystem":"ring-100","strutStock":"pvc-33"}""";

    [Theory]
    [InlineData("/api/kits/preview?design=" + Design)]
    [InlineData("/api/frames?shelter=" + Shelter)]
    [InlineData("/api/drawings?view=plan&shelter=" + Shelter)]
    [InlineData("/api/shapes")]
    public async Task Get_WhenTheCallerHasTheAnswer_SaysThatItStands(string address)
    {
        var first = (await one.Shop.Storefront.Get(address)).Is(200);
        var tag = first.Headers.ETag!.ToString();

        var again = (await one.Shop.Storefront.Get(address, ifNoneMatch: tag)).Is(304);

        Assert.Empty(again.Bytes);
        Assert.Equal(tag, again.Headers.ETag!.ToString());
        Assert.Equal(first.Bytes, (await one.Shop.Storefront.Get(address, ifNoneMatch: "\"another\"")).Is(200).Bytes);
    }

    [Theory]
    [InlineData("/api/kits/preview", "design", Design)]
    [InlineData("/api/frames", "shelter", Shelter)]
    [InlineData("/api/drawings", "shelter", Shelter)]
    public async Task Post_WhenTheSameIsAsked_AnswersToTheByteAsGetDoes(string address, string part, string text)
    {
        var body = $$"""{"{{part}}":{{text}}}""";
        var posted = (await one.Shop.Storefront.PostText(address, body)).Is(200);
        var again = (await one.Shop.Storefront.PostText(address, body)).Is(200);
        var got = (await one.Shop.Storefront.Get($"{address}?{part}={Uri.EscapeDataString(text)}")).Is(200);

        Assert.Equal(posted.Bytes, again.Bytes);
        Assert.Equal(posted.Bytes, got.Bytes);
        Assert.Equal(posted.Headers.ETag, got.Headers.ETag);
    }

    [Fact]
    public async Task Post_WhenTheDesignIsRefusedTwice_IsRefusedAlike()
    {
        const string body = """{"design":{"shelter":{"kind":"dome","frequency":99,"cut":"1/2","size":{"height":"2 m"}},"hubSystem":"ring-100"}}""";

        var first = await one.Shop.Storefront.PostText("/api/kits/preview", body);
        var again = await one.Shop.Storefront.PostText("/api/kits/preview", body);

        first.IsProblem(422, "shelter.frequency", "#/design/shelter/frequency");
        Assert.Equal(first.Bytes, again.Bytes);
    }

    [Fact]
    public async Task Preview_WhenTheCatalogChanges_IsComputedAnew()
    {
        await using var shop = await OpenShop.Open();
        const string body = $$"""{"design":{{Design}}}""";
        var before = (await shop.Storefront.PostText("/api/kits/preview", body)).Ok;
        var workshop = System.Text.Json.Nodes.JsonNode.Parse((await shop.Admin.Get("/api/catalog/workshop")).Is(200).Bytes)!;
        workshop["spareTiesPercent"] = workshop["spareTiesPercent"]!.GetValue<int>() + 50;
        _ = (await shop.Admin.Put("/api/catalog/workshop", workshop)).Ok;

        var after = (await shop.Storefront.PostText("/api/kits/preview", body)).Ok;

        Assert.True(after.Int("totals/tiesWithSpares") > before.Int("totals/tiesWithSpares"));
    }

    [Fact]
    public async Task Order_WhenNothingHappened_StandsAsItWasRead()
    {
        await using var shop = await OpenShop.Open();
        await shop.Stock(stakes: 10);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var address = $"/api/orders/{order.Id()}";
        var tag = (await shop.Storefront.Get(address)).Is(200).Headers.ETag!.ToString();

        (await shop.Storefront.Get(address, ifNoneMatch: tag)).Is(304);
        _ = (await shop.Storefront.Post(address + "/cancel")).Ok;

        Assert.Equal("cancelled", (await shop.Storefront.Get(address, ifNoneMatch: tag)).Ok.Text("status"));
    }
}
