using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace KitWorks.Api.Tests.Endpoints;

public sealed class DocsTests(OneShop one) : IClassFixture<OneShop>
{
    [Fact]
    public async Task OpenApi_WhenRead_Is31AndListsEveryRoute()
    {
        var document = (await one.Shop.Nobody.Get("/openapi/v1.json")).Ok;
        var mapped = one.Shop.Services.GetRequiredService<IEnumerable<EndpointDataSource>>().SelectMany(s => s.Endpoints).OfType<RouteEndpoint>()
            .Where(r => r.RoutePattern.RawText!.TrimStart('/').StartsWith("api/", StringComparison.Ordinal))
            .SelectMany(r => r.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods, (r, method) => $"{method} /{Plain(r.RoutePattern.RawText!)}").Distinct().Order();
        var described = document.At("paths").EnumerateObject()
            .Where(p => p.Name.StartsWith("/api/", StringComparison.Ordinal))
            .SelectMany(p => p.Value.EnumerateObject(), (p, operation) => $"{operation.Name.ToUpperInvariant()} {p.Name}").Order();

        Assert.StartsWith("3.1", document.Text("openapi"), StringComparison.Ordinal);
        Assert.NotEmpty(mapped);
        Assert.Equal(mapped, described);
        Assert.All(document.At("paths").EnumerateObject().SelectMany(p => p.Value.EnumerateObject()), o => Assert.NotEmpty(o.Value.Text("summary")));
    }

    [Fact]
    public async Task OpenApi_WhenItRefersToAPart_HasThatPart()
    {
        var text = (await one.Shop.Nobody.Get("/openapi/v1.json")).Is(200).Text;
        var document = System.Text.Json.JsonDocument.Parse(text).RootElement;

        var references = Regex.Matches(text, "\"\\$ref\":\\s*\"#/([^\"]+)\"").Select(m => m.Groups[1].Value).Distinct().ToList();

        Assert.NotEmpty(references);
        Assert.All(references, path => _ = document.At(path));
        Assert.Contains("string", document.At("components/schemas/Length/type").ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task OpenApi_WhenAnOrderIsPlaced_SaysThatItsKeyIsNeeded()
    {
        var parameters = (await one.Shop.Nobody.Get("/openapi/v1.json")).Ok.At("paths").GetProperty("/api/orders").List("post/parameters");

        var key = parameters.Single(p => p.Text("name") == "Idempotency-Key");
        Assert.Equal("header", key.Text("in"));
        Assert.True(key.At("required").GetBoolean());
    }

    [Fact]
    public async Task Docs_WhenRead_NeedNothingFromElsewhere()
    {
        var page = (await one.Shop.Nobody.Get("/docs")).Is(200);

        Assert.Equal("text/html", page.MediaType);
        var resources = Regex.Matches(page.Text, "<(?:script|link|img|iframe)[^>]+(?:src|href)=\"([^\"]+)\"").Select(m => m.Groups[1].Value).ToList();
        Assert.Contains("/api/orders", page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(resources, r => r.Contains("//", StringComparison.Ordinal));
        foreach (var resource in resources.Where(r => !r.StartsWith("data:", StringComparison.Ordinal)))
            (await one.Shop.Nobody.Get(new Uri(new Uri("http://shop/docs/"), resource).PathAndQuery)).Is(200);
    }

    [Fact]
    public async Task Root_WhenOpenedByNobody_LeadsToTheSignIn()
    {
        var answer = (await one.Shop.Nobody.Get("/")).Is(302);

        Assert.Equal("/sign-in", answer.Headers.Location!.AbsolutePath);
    }

    [Fact]
    public async Task Health_WhenAsked_Answers()
    {
        (await one.Shop.Nobody.Get("/health/live")).Is(200);
        (await one.Shop.Nobody.Get("/health/ready")).Is(200);
    }

    /// <summary>As a description writes it: without constraints, and without a slash at the end.</summary>
    static string Plain(string pattern) => Regex.Replace(pattern.Trim('/'), @"\{(\w+):[^}]*\}", "{$1}");
}
