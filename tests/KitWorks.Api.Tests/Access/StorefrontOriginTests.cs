namespace KitWorks.Api.Tests.Access;

/// <summary>Which web sites may ask from their visitors' browsers.</summary>
public sealed class StorefrontOriginTests
{
    static HttpRequestMessage Preflight(string origin) => new(HttpMethod.Options, "/api/orders")
    {
        Headers = { { "Origin", origin }, { "Access-Control-Request-Method", "POST" }, { "Access-Control-Request-Headers", "authorization,content-type,idempotency-key" } },
    };

    [Fact]
    public async Task Preflight_WhenTheOriginIsSet_IsAllowedWithAKeyAndWithoutCookies()
    {
        await using var shop = await OpenShop.Open(settings: ("Storefront:Origins", "https://garden.example https://other.example"));

        var answer = (await shop.Nobody.Send(Preflight("https://garden.example"))).Is(204);

        Assert.Equal("https://garden.example", answer.Headers.GetValues("Access-Control-Allow-Origin").Single());
        Assert.False(answer.Headers.Contains("Access-Control-Allow-Credentials"));
    }

    [Theory]
    [InlineData("https://evil.example")]
    [InlineData("http://garden.example")]
    public async Task Preflight_WhenTheOriginIsAnother_IsNotAllowed(string origin)
    {
        await using var shop = await OpenShop.Open(settings: ("Storefront:Origins", "https://garden.example"));

        Assert.False((await shop.Nobody.Send(Preflight(origin))).Headers.Contains("Access-Control-Allow-Origin"));
    }
}
