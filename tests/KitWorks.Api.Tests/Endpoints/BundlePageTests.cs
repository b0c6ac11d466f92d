namespace KitWorks.Api.Tests.Endpoints;

public sealed class BundlePageTests
{
    [Fact]
    public async Task BundlePage_WhenACustomerScansALabel_SaysWhatIsInTheBundleAndNotWhoseItIs()
    {
        await using var shop = await OpenShop.Open();
        var order = (await shop.Storefront.Order(Designs.SmallDome, customer: "Mr Secret")).Created;
        var code = order.Text("bundles/0/code");

        var page = (await shop.Nobody.Get($"/b/{code}")).Is(200);

        Assert.Equal("text/html", page.MediaType);
        Assert.Contains(code, page.Text, StringComparison.Ordinal);
        Assert.Contains(order.Text("bundles/0/contents/0/description"), page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Secret", page.Text, StringComparison.Ordinal);
        (await shop.Nobody.Get($"/b/{code.ToLowerInvariant()}")).Is(200);
    }

    [Theory]
    [InlineData("1001B0010")]
    [InlineData("%3Cscript%3Ealert(1)%3C%2Fscript%3E")]
    public async Task BundlePage_WhenThereIsNoSuchBundle_SaysSoInWords(string code)
    {
        await using var shop = await OpenShop.Open();

        var page = (await shop.Nobody.Get($"/b/{code}")).Is(404);

        Assert.Equal("text/html", page.MediaType);
        Assert.DoesNotContain("<script>", page.Text, StringComparison.OrdinalIgnoreCase);
    }
}
