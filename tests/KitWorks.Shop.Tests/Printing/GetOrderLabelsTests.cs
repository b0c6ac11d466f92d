using System.Diagnostics;
using UglyToad.PdfPig;

namespace KitWorks.Shop.Tests.Printing;

public sealed class GetOrderLabelsTests(OneShop one) : IClassFixture<OneShop>
{
    [Theory]
    [InlineData("", 1)]
    [InlineData("?sheet=4x6", 1)]
    [InlineData("?sheet=a4", 8)]
    [InlineData("?sheet=letter", 8)]
    public async Task LabelsPdf_WhenRead_HasAPageForEachBundleAndEveryCode(string query, int perPage)
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var codes = order.Texts("bundles", "code").ToList();

        var answer = (await shop.Storefront.Get($"/api/orders/{order.Id()}/labels.pdf{query}")).Is(200);

        Assert.Equal("application/pdf", answer.MediaType);
        using var pdf = PdfDocument.Open(answer.Bytes);
        Assert.Equal((codes.Count + perPage - 1) / perPage, pdf.NumberOfPages);
        var pages = pdf.GetPages().Select(p => string.Concat(p.Letters.Select(l => l.Value))).ToList();
        foreach (var (i, code) in codes.Index()) Assert.Contains(code, pages[i / perPage], StringComparison.Ordinal);
    }

    [Fact]
    public async Task LabelsPdf_WhenATierIsAskedFor_HasThatTiersBundles()
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        using var pdf = PdfDocument.Open((await shop.Storefront.Get($"/api/orders/{order.Id()}/labels.pdf?tier=1")).Is(200).Bytes);

        Assert.Equal(order.List("bundles").Count(b => b.Int("tier") == 1), pdf.NumberOfPages);
    }

    [Fact]
    public async Task LabelsPng_WhenScanned_GivesTheBundlesCodeAndTheAddressOfItsPage()
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var code = order.Text("bundles/2/code");

        var answer = (await shop.Storefront.Get($"/api/orders/{order.Id()}/labels.png?bundle={code}")).Is(200);

        Assert.Equal("image/png", answer.MediaType);
        Assert.Equal(["CODE-128:" + code, $"QR-Code:https://kits.example.com/b/{code}"], (await Zbar(answer.Bytes)).Order());
    }

    [Fact]
    public async Task LabelsSvg_WhenRead_IsADrawing()
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var answer = (await shop.Storefront.Get($"/api/orders/{order.Id()}/labels.svg")).Is(200);

        Assert.Equal("image/svg+xml", answer.MediaType);
        Assert.Equal("svg", System.Xml.Linq.XDocument.Parse(answer.Text).Root!.Name.LocalName);
    }

    [Fact]
    public async Task LabelsPdf_WhenNothingHasChanged_AreNotSentAgain()
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var path = $"/api/orders/{order.Id()}/labels.pdf";

        var first = (await shop.Storefront.Get(path)).Is(200);
        var again = (await shop.Storefront.Get(path, first.Headers.ETag!.ToString())).Is(304);

        Assert.Empty(again.Bytes);
        Assert.Equal(first.Headers.ETag, again.Headers.ETag);
        (await shop.Storefront.Get(path, "\"another\"")).Is(200);
        (await shop.Storefront.Get(path + "?sheet=a4", first.Headers.ETag!.ToString())).Is(200);
    }

    [Theory]
    [InlineData("labels.pdf?sheet=a3", 422, "label.stock")]
    [InlineData("labels.pdf?tier=99", 404, "label.none")]
    [InlineData("labels.pdf?tier=-1", 404, "label.none")]
    [InlineData("labels.pdf?bundle=1001B999Z", 404, "label.none")]
    [InlineData("labels.pdf?sheet=a4&startAt=0", 422, null)]
    [InlineData("labels.pdf?sheet=a4&startAt=9", 422, null)]
    [InlineData("labels.pdf?sheet=a4&startAt=2147483647", 422, null)]
    [InlineData("labels.png?dpi=0", 422, null)]
    [InlineData("labels.png?dpi=100000", 422, null)]
    [InlineData("labels.pdf?tier=first", 400, "request.malformed")]
    public async Task Labels_WhenAskedForWrongly_AreRefused(string path, int status, string? code)
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        var answer = await shop.Storefront.Get($"/api/orders/{order.Id()}/{path}");

        answer.IsProblem(status, code ?? answer.Json.Text("code"));
    }

    [Theory]
    [InlineData("labels.pdf?template=poster", "label.template-unknown", "#/template", "96x64")]
    [InlineData("labels.png?dpi=2400", "label.dpi", "#/dpi", "829")]
    [InlineData("labels.pdf?sheet=a4&template=100x150", "label.stock-too-small", null, "100 × 150 mm")]
    public async Task Labels_WhenTheyCannotBePrintedSo_SayWhatCan(string path, string code, string? pointer, string says)
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        var problem = (await shop.Storefront.Get($"/api/orders/{order.Id()}/{path}")).IsProblem(422, code, pointer);
        Assert.Contains(says, problem.Text("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task LabelsPdf_WhenATemplateIsNamed_TakesIt()
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        using var pdf = PdfDocument.Open((await shop.Storefront.Get($"/api/orders/{order.Id()}/labels.pdf?template=96x64")).Is(200).Bytes);
        // In the middle of its page of 100 × 150 mm.
        Assert.All(pdf.GetPage(1).Letters, l => Assert.InRange(l.StartBaseLine.Y / 72 * 25.4, 43, 107));
    }

    [Fact]
    public async Task Templates_WhenListed_AreThoseThatLabelsCanBeAskedFor()
    {
        var items = (await one.Shop.Storefront.Get("/api/label-templates")).Ok.List("items").ToList();
        Assert.Contains(items, t => t.Text("kind") == "bundle" && t.Text("name") == "96x64" && t.Int("widthMm") == 96);
        Assert.Contains((await one.Shop.Storefront.Get("/api/label-stocks")).Ok.List("items"), s => s.Text("name") == "a4" && s.Int("rows") * s.Int("columns") == 8);
    }

    [Fact]
    public async Task LabelsPdf_OfThePartsOfAKit_HasALabelOfItsOwnForEachSort()
    {
        var shop = one.Shop;
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;
        using var pdf = PdfDocument.Open((await shop.Storefront.Get($"/api/orders/{order.Id()}/labels.pdf?tier=0")).Is(200).Bytes);
        var pages = pdf.GetPages().Select(p => p.Text).ToList();
        Assert.Contains(pages, p => p.Contains("Cut from", StringComparison.Ordinal));
        Assert.Contains(pages, p => p.Contains("Lay each hub where", StringComparison.Ordinal));
        Assert.Contains(pages, p => p.Contains("on each strut end", StringComparison.Ordinal));
        Assert.Contains(pages, p => p.Contains("Stakes", StringComparison.Ordinal));
    }

    static async Task<string[]> Zbar(byte[] png)
    {
        const string program = "zbarimg";
        if (!(Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(f => File.Exists(Path.Combine(f, program))))
        {
            if (Environment.GetEnvironmentVariable("CI") == "true") Assert.Fail($"{program} is missing.");
            Assert.Skip($"{program} is not installed (Debian: zbar-tools).");
        }
        var folder = Directory.CreateTempSubdirectory("kitworks-label-");
        var path = Path.Combine(folder.FullName, "label.png");
        await File.WriteAllBytesAsync(path, png);
        using var process = Process.Start(new ProcessStartInfo(program, ["--quiet", path]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        _ = process.StandardError.ReadToEndAsync();
        var read = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        folder.Delete(recursive: true);
        return read.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}
