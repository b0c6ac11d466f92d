using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Api.Tests.Access;

public sealed class KeyAuthenticationTests(OneShop one) : IClassFixture<OneShop>
{
    const string SomeOrder = "01970000-0000-7000-8000-000000000000";

    /// <summary>What asks for no key and no sign-in: a bundle's page, which a customer opens from a label; where one signs in; the docs; the health of the process.</summary>
    static readonly string[] Open = ["/b/{code}", "/sign-in", "/first", "/health/live", "/health/ready", "/metrics", "/openapi/{documentName}.json", "/docs"];

    [Theory]
    [InlineData("GET", "/api/shapes")]
    [InlineData("POST", "/api/shapes/cuts")]
    [InlineData("POST", "/api/kits/preview")]
    [InlineData("POST", "/api/frames")]
    [InlineData("POST", "/api/drawings")]
    [InlineData("POST", "/api/cut-plans/preview")]
    [InlineData("POST", "/api/quotes")]
    [InlineData("GET", "/api/quotes/" + SomeOrder)]
    [InlineData("POST", "/api/orders")]
    [InlineData("GET", "/api/orders")]
    [InlineData("GET", "/api/orders/" + SomeOrder)]
    [InlineData("POST", "/api/orders/" + SomeOrder + "/ship")]
    [InlineData("GET", "/api/stock")]
    [InlineData("POST", "/api/stock/receipts")]
    [InlineData("POST", "/api/scans")]
    [InlineData("PUT", "/api/catalog/prices")]
    public async Task Call_WhenThereIsNoKeyThatWorks_IsAskedForOne(string method, string path)
    {
        foreach (var key in (string?[])[null, "", "kitworks_0000", new string('x', 5000), "Robert'); DROP TABLE api_keys;--"])
        {
            var answer = await one.Shop.With(key).SendText(new(method), path, "{}");
            answer.IsProblem(401, "access.no-key");
            Assert.Equal("Bearer", answer.Headers.WwwAuthenticate.Single().Scheme);
        }
    }

    [Fact]
    public async Task Call_WhenTheKeyComesByAnotherScheme_IsAskedForOne()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/orders");
        request.Headers.Authorization = new("Basic", one.Shop.Keys.Bench);

        (await one.Shop.Nobody.Send(request)).IsProblem(401, "access.no-key");
    }

    [Theory]
    [InlineData("GET", "/api/stock", 403, 200, 200)]
    [InlineData("GET", "/api/stock/stake-450", 403, 200, 200)]
    [InlineData("GET", "/api/stock/stake-450/movements", 403, 200, 200)]
    [InlineData("POST", "/api/stock/receipts", 403, 422, 422)]
    [InlineData("POST", "/api/stock/counts", 403, 422, 422)]
    [InlineData("POST", "/api/stock/adjustments", 403, 422, 422)]
    [InlineData("POST", "/api/scans", 403, 422, 422)]
    [InlineData("POST", "/api/orders/" + SomeOrder + "/ship", 403, 404, 404)]
    [InlineData("GET", "/api/catalog/hub-systems", 403, 200, 200)]
    [InlineData("PUT", "/api/catalog/hub-systems", 403, 403, 400)]
    [InlineData("PUT", "/api/catalog/prices", 403, 403, 400)]
    [InlineData("GET", "/api/orders", 200, 200, 200)]
    [InlineData("GET", "/api/shapes", 200, 200, 200)]
    public async Task Call_WhenTheRoleMayOrMayNot_IsAnsweredSo(string method, string path, int storefront, int bench, int admin)
    {
        foreach (var (caller, status) in new[] { (one.Shop.Storefront, storefront), (one.Shop.Bench, bench), (one.Shop.Admin, admin) })
        {
            var answer = method == "GET" ? await caller.Get(path) : await caller.SendText(new(method), path, "{}");
            answer.Is(status);
            if (status == 403) answer.IsProblem(403, "access.role");
        }
    }

    [Fact]
    public void Routes_WhenListed_AllAskForAKeyButTheOpenOnes()
    {
        var routes = one.Shop.Services.GetRequiredService<IEnumerable<EndpointDataSource>>().SelectMany(s => s.Endpoints).OfType<RouteEndpoint>().ToList();
        Assert.NotEmpty(routes);

        var unguarded = routes.Where(r => r.Metadata.GetMetadata<IAuthorizeData>() is null || r.Metadata.GetMetadata<IAllowAnonymous>() is not null).Select(r => "/" + r.RoutePattern.RawText!.TrimStart('/')).Distinct();

        Assert.DoesNotContain(unguarded, path => path.StartsWith("/api", StringComparison.Ordinal));
        Assert.All(unguarded, path => Assert.Contains(path, Open));
    }

    [Fact]
    public async Task BootstrapKey_WhenNoneIsSet_OpensNothing()
    {
        await using var shop = await OpenShop.Open(settings: ("Access:BootstrapAdminKey", ""));

        (await shop.With(OpenShop.BootstrapKey).Get("/api/stock")).IsProblem(401, "access.no-key");
        (await shop.With("").Get("/api/stock")).IsProblem(401, "access.no-key");
    }

    [Fact]
    public async Task BootstrapKey_WhenItIsSet_IsAnAdmins() =>
        (await one.Shop.With(OpenShop.BootstrapKey).Put("/api/catalog/workshop", new { })).Is(200);
}
