namespace KitWorks.Api.Tests.Http;

public sealed class AddressTests(OneShop one) : IClassFixture<OneShop>
{
    [Theory]
    [InlineData("GET", "/api/nothing", 404, "address.unknown")]
    [InlineData("GET", "/api/orders/17", 404, "address.unknown")]
    [InlineData("GET", "/nothing", 404, "address.unknown")]
    [InlineData("DELETE", "/api/orders", 405, "address.method")]
    [InlineData("GET", "/api/scans", 405, "address.method")]
    public async Task Call_WhenTheAddressIsWrong_SaysSoInAProblemDocument(string method, string path, int status, string code)
    {
        using var request = new HttpRequestMessage(new(method), path);

        (await one.Shop.Bench.Send(request)).IsProblem(status, code);
    }
}
