using System.Diagnostics;

namespace KitWorks.Api.Tests.Printing;

public sealed class RasterTests
{
    [Fact]
    public async Task Labels_WhenThePrinterTakesDotsOnly_AreSentInItsOwnDotsAndScan()
    {
        Program.Need("zbarimg", "zbar-tools");
        await using var printer = await RealPrinter.SwitchedOn(formats: "image/pwg-raster");
        await using var shop = await PrintShop.Open(printer.Uri);
        var order = (await shop.Storefront.Order(Designs.SmallDome)).Created;

        await shop.Bench.JobIs((await shop.Bench.Print(order)).Is(202).Json, "done");

        var pages = CupsRaster.Pages(Assert.Single(printer.Sent));
        var codes = order.Texts("bundles", "code").ToList();
        Assert.Equal(codes.Count, pages.Count);
        foreach (var ((dpi, width, height, grey), code) in pages.Zip(codes))
        {
            // 100 × 150 mm at 203 dots to the inch.
            Assert.Equal((203, 799, 1199), (dpi, width, height));
            Assert.Contains(code, await Read(CupsRaster.WritePgm(Path.GetTempFileName(), width, height, grey)), StringComparison.Ordinal);
        }
    }

    static async Task<string> Read(string picture)
    {
        using var zbar = Process.Start(new ProcessStartInfo("zbarimg", ["--quiet", picture]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var codes = await zbar.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        File.Delete(picture);
        return codes;
    }
}
