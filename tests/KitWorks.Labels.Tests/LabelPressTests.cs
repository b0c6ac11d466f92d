using System.Buffers.Binary;
using KitWorks.Labels.Tests.Reading;
using UglyToad.PdfPig;

namespace KitWorks.Labels.Tests;

public class LabelPressTests
{
    [Theory]
    [InlineData("100x150", 100, 150)]
    [InlineData("4x6", 101.6, 152.4)]
    public void Pdf_WhenOneAPage_PageIsExact(string stock, double widthMm, double heightMm)
    {
        using var pdf = PdfDocument.Open(Samples.Press.Pdf([Samples.Bundle, Samples.Stakes], LabelStock.Named(stock)!).Value);
        Assert.Equal(2, pdf.NumberOfPages);
        Assert.All(pdf.GetPages(), p =>
        {
            Assert.Equal(widthMm, p.Width / 72 * 25.4, 0.002);
            Assert.Equal(heightMm, p.Height / 72 * 25.4, 0.002);
        });
    }

    [Theory]
    [InlineData("100x150", 203)]
    [InlineData("100x150", 300)]
    [InlineData("4x6", 203)]
    [InlineData("4x6", 300)]
    [InlineData("a4", 300)]
    [InlineData("letter", 300)]
    [InlineData("a4", 203)]
    public void Pdf_WhenScanned_BothCodesRead(string stock, int dpi)
    {
        var pdf = Samples.Press.Pdf([Samples.Bundle], LabelStock.Named(stock)! with { Dpi = dpi }).Value;
        var codes = Assert.Single(Scanner.Pages(pdf, dpi));
        Assert.Equal(["CODE-128:K26-00418-1-07-M", "QR-Code:https://kits.example/b/K26-00418-1-07-M"], codes.Order(StringComparer.Ordinal));
    }

    public static TheoryData<Label, string, string[]> Kinds => new()
    {
        { Samples.Stakes, "100x150", ["CODE-128:K26-00418-1-07-M", "QR-Code:https://kits.example/b/K26-00418-1-07-M"] },
        { Samples.Hubs, "100x150", ["CODE-128:K26-00418-1-02-7", "QR-Code:https://kits.example/b/K26-00418-1-02-7"] },
        { Samples.Hubs, "a4", ["CODE-128:K26-00418-1-02-7", "QR-Code:https://kits.example/b/K26-00418-1-02-7"] },
        { Samples.Ties, "100x150", ["CODE-128:K26-00418-1-03-X", "QR-Code:https://kits.example/b/K26-00418-1-03-X"] },
        { Samples.Ties, "letter", ["CODE-128:K26-00418-1-03-X", "QR-Code:https://kits.example/b/K26-00418-1-03-X"] },
        { Samples.Parcel, "100x150", ["CODE-128:00106141412345678908"] },
        { Samples.Bundle, "roll-100x50", ["CODE-128:K26-00418-1-07-M", "QR-Code:https://kits.example/b/K26-00418-1-07-M"] },
        { Samples.Bundle, "roll-57x32", ["QR-Code:https://kits.example/b/K26-00418-1-07-M"] },
        { Samples.Hubs, "roll-100x50", ["CODE-128:K26-00418-1-02-7", "QR-Code:https://kits.example/b/K26-00418-1-02-7"] },
        { Samples.Hubs, "roll-57x32", ["QR-Code:https://kits.example/b/K26-00418-1-02-7"] },
        { Samples.Ties, "roll-100x50", ["CODE-128:K26-00418-1-03-X", "QR-Code:https://kits.example/b/K26-00418-1-03-X"] },
        { Samples.Ties, "roll-57x32", ["QR-Code:https://kits.example/b/K26-00418-1-03-X"] },
        { Samples.Bin, "roll-100x50", ["CODE-128:BIN-A-03-2"] },
        { Samples.Bin, "roll-57x32", ["CODE-128:BIN-A-03-2"] },
        { Samples.Remnant, "roll-100x50", ["CODE-128:R-000123-4"] },
        { Samples.Remnant, "roll-57x32", ["CODE-128:R-000123-4"] },
    };

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Pdf_OfEveryKind_ScansAt203And300Dpi(Label label, string stock, string[] codes)
    {
        foreach (var dpi in new[] { 203, 300 })
        {
            var pdf = Samples.Press.Pdf([label], LabelStock.Named(stock)! with { Dpi = dpi }).Value;
            Assert.Equal(codes, Assert.Single(Scanner.Pages(pdf, dpi)).Order(StringComparer.Ordinal));
        }
    }

    [Fact]
    public void Pdf_OfTheSameLabels_IsTheSameOnManyThreads()
    {
        var labels = Samples.Many(20);
        var first = Samples.Press.Pdf(labels, LabelStock.A4Sheet).Value;
        var pdfs = Enumerable.Range(0, 16).AsParallel().WithDegreeOfParallelism(8).Select(_ => Samples.Press.Pdf(labels, LabelStock.A4Sheet).Value).ToList();
        Assert.All(pdfs, p => Assert.Equal(first, p));
    }

    [Fact]
    public void Pdf_WhenRead_SaysWhatIsInTheBundle()
    {
        using var pdf = PdfDocument.Open(Samples.Press.Pdf([Samples.Bundle], LabelStock.Page100x150).Value);
        var words = pdf.GetPage(1).GetWords().Select(w => w.Text).ToList();
        foreach (var word in new[] { "TIER", "2", "Second", "ring", "S3", "×20", "1216.5", "mm", "reddish", "purple,", "1", "band", "26-00418", "7", "31", "11.6", "K26-00418-1-07-M" })
            Assert.Contains(word, words);
    }

    [Fact]
    public void Pdf_WhenOneLabel_FontsAreSubsets() =>
        Assert.InRange(Samples.Press.Pdf([Samples.Bundle], LabelStock.Page100x150).Value.Length, 1_000, 60_000);

    [Theory]
    [InlineData(1, 1, 0)]
    [InlineData(4, 1, 3)]
    [InlineData(8, 1, 7)]
    public void Pdf_WhenStartAt_LabelIsAtThatPlace(int startAt, int pages, int place)
    {
        var stock = LabelStock.A4Sheet;
        using var pdf = PdfDocument.Open(Samples.Press.Pdf([Samples.Bundle], stock, startAt).Value);
        Assert.Equal(pages, pdf.NumberOfPages);
        var (x, y) = stock.Corner(place);
        Assert.All(pdf.GetPage(1).Letters, l =>
        {
            Assert.InRange(l.StartBaseLine.X / 72 * 25.4, x, x + stock.LabelWidthMm);
            Assert.InRange(stock.PageHeightMm - l.StartBaseLine.Y / 72 * 25.4, y, y + stock.LabelHeightMm);
        });
    }

    [Fact]
    public void Pdf_WhenSheetIsFull_GoesOnOnTheNext()
    {
        var pages = Scanner.Pages(Samples.Press.Pdf(Samples.Many(9), LabelStock.A4Sheet, startAt: 8).Value, 300);
        Assert.Equal([2, 16], pages.Select(p => p.Count));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(9)]
    public void Pdf_WhenNoSuchPlace_IsRefused(int startAt) =>
        Assert.Equal("label.start-at", Samples.Press.Pdf([Samples.Bundle], LabelStock.A4Sheet, startAt).Refusal?.Code);

    [Fact]
    public void Pdf_WhenStockIsTooSmall_IsRefusedWithBothSizes()
    {
        var refusal = Samples.Press.Pdf([Samples.Bundle], new("tiny", 40, 30)).Refusal;
        Assert.Equal("label.stock-too-small", refusal?.Code);
        Assert.Contains("55 × 30", refusal!.Detail, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(203, 799, 1199)]
    [InlineData(300, 1181, 1772)]
    public void Png_KnowsItsResolutionAndScans(int dpi, int width, int height)
    {
        var png = Samples.Press.Png(Samples.Bundle, dpi).Value;
        Assert.Equal((width, height), (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20))));
        Assert.True(png.AsSpan(37, 4).SequenceEqual("pHYs"u8));
        Assert.Equal(Math.Round(dpi / 0.0254), BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(41)));
        using var folder = new Folder();
        File.WriteAllBytes(folder.File("label.png"), png);
        Assert.Equal(2, Scanner.Picture(folder.File("label.png")).Count);
    }

    [Theory]
    [InlineData(830, "label.dpi")]
    [InlineData(800, null)]
    [InlineData(2401, "label.stock")]
    public void Png_OfTooManyDots_IsRefusedBeforeAnyIsDrawn(int dpi, string? code)
    {
        var refusal = Samples.Press.Png(Samples.Bundle, dpi).Refusal;
        Assert.Equal(code, refusal?.Code);
        if (code is not null) Assert.Equal("dpi", refusal!.Errors[0].Field);
    }

    [Fact]
    public void WriteRaster_WhenALaterLabelIsWrong_WritesNothing()
    {
        using var to = new MemoryStream();
        var refusal = Samples.Press.WriteRaster(to, [Samples.Bundle, Samples.Bundle with { Code = "é" }], LabelStock.Page100x150);
        Assert.Equal("label.code-character", refusal?.Code);
        Assert.Equal(0, to.Length);
    }

    [Fact]
    public void Svg_HasItsSizeItsTextAndItsFonts()
    {
        var svg = System.Xml.Linq.XDocument.Parse(Samples.Press.Svg(Samples.Bundle).Value).Root!;
        Assert.Equal(("100mm", "150mm"), ((string?)svg.Attribute("width"), (string?)svg.Attribute("height")));
        Assert.Contains("Second ring", svg.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value));
        Assert.Contains("data:font/ttf", svg.Value, StringComparison.Ordinal);
    }
}
