using KitWorks.Labels.Tests.Reading;
using UglyToad.PdfPig;

namespace KitWorks.Labels.Tests.Papers;

public class PaperTests
{
    [Theory]
    [InlineData(PaperSize.A4, 210, 297)]
    [InlineData(PaperSize.Letter, 215.9, 279.4)]
    public void Pdf_HasThePageThatWasAskedFor(PaperSize size, double widthMm, double heightMm)
    {
        using var pdf = PdfDocument.Open(Samples.Press.Pdf(ShopPapers.Picklist(3), size).Value);
        Assert.Equal((widthMm, heightMm), (Math.Round(pdf.GetPage(1).Width / 72 * 25.4, 1), Math.Round(pdf.GetPage(1).Height / 72 * 25.4, 1)));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(13, 1)]
    [InlineData(14, 2)]
    [InlineData(60, 5)]
    public void Picklist_WhenLong_FlowsOverPagesAndNumbersThem(int bins, int pages)
    {
        var list = ShopPapers.Picklist(0) with { Lines = [.. Enumerable.Range(1, bins).Select(i => new PickLine($"A-{i}", "HUB-R100-6", "Ring hub, six ways", i, "", 0, TagMark.None))] };
        using var pdf = PdfDocument.Open(Samples.Press.Pdf(list).Value);
        Assert.Equal(pages, pdf.NumberOfPages);
        Assert.Contains($"Page {pages} of {pages}", Words(pdf, pages), StringComparison.Ordinal);
    }

    [Fact]
    public void Picklist_GoesByBinPath()
    {
        var list = ShopPapers.Picklist(0) with { Lines = [.. new[] { "B-2", "A-10-1", "", "A-2-3", "A-2-11" }.Select(b => new PickLine(b, "X", "", 1, "", 0, TagMark.None))] };
        Assert.Equal(["A-2-3", "A-2-11", "A-10-1", "B-2", ""], list.Path.Select(l => l.Bin));
    }

    [Fact]
    public void Picklist_StopsOnceAtABinAndSaysWhatGoesToWhichTier()
    {
        var list = ShopPapers.Picklist(0) with { Lines = [.. Enumerable.Range(0, 10).Reverse().Select(t => new PickLine("B-02", "HUB-R100-6", "Ring hub", 100 + t, "", t, TagMark.None))] };
        Assert.Equal([("1 045", 8), ("…", 2)], list.Stops.Select(s => (s.Take, s.Parts.Count)));
        Assert.Equal(Enumerable.Range(0, 10), list.Stops.SelectMany(s => s.Parts).Select(p => p.Tier));
        using var pdf = PdfDocument.Open(Samples.Press.Pdf(list).Value);
        Assert.Contains("tier 7: 107", Words(pdf, 1), StringComparison.Ordinal);
    }

    [Fact]
    public void Picklist_CodeScans() =>
        Assert.Equal(["CODE-128:PICK-26-00418"], Scanner.Pages(Samples.Press.Pdf(ShopPapers.Picklist(3)).Value, 300).Single());

    [Fact]
    public void CutSheet_SaysEveryStopAndHasABoxForEveryLength()
    {
        var kit = MadeKit.Dome(3, "5/8");
        var sheet = ShopPapers.CutSheet(kit);
        Assert.Equal(kit.CutPlan.Patterns.Sum(p => p.Count), sheet.Rows.Sum(r => r.Ticks.Count));
        Assert.Equal(kit.CutPlan.Patterns.SelectMany(p => p.Cuts.Select(c => c.Count * p.Count)).Sum(), sheet.Stops.Sum(s => s.Count));
        using var pdf = PdfDocument.Open(Samples.Press.Pdf(sheet).Value);
        foreach (var type in kit.StrutTypes) Assert.Contains($"{type.CutLength.Millimetres:0.0} mm", Words(pdf, 1), StringComparison.Ordinal);
    }

    [Fact]
    public void BatchSheet_SaysEveryStopAndEveryBundleThatPiecesGoInto()
    {
        var (kit, other) = (MadeKit.Dome(3, "5/8"), MadeKit.Dome(2, "1/2"));
        var sheet = ShopPapers.BatchSheet(kit, other);
        var struts = kit.StrutTypes.Sum(t => t.Count) + 2 * other.StrutTypes.Sum(t => t.Count);
        Assert.Equal(struts, sheet.Stops.Sum(s => s.Count + s.Picked));
        Assert.Equal(struts, sheet.Goes.Sum(g => g.Count));
        using var pdf = PdfDocument.Open(Samples.Press.Pdf(sheet).Value);
        var text = string.Join(' ', Enumerable.Range(1, pdf.NumberOfPages).Select(p => Words(pdf, p)));
        Assert.Contains("Batch 7", text, StringComparison.Ordinal);
        foreach (var goes in sheet.Goes) Assert.Contains($"{goes.Order} {goes.Bundle} {goes.Count} {goes.Code} ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void PackingList_SaysWhatLiesInWhichParcel()
    {
        using var pdf = PdfDocument.Open(Samples.Press.Pdf(ShopPapers.PackingList(3)).Value);
        Assert.Equal(2, pdf.NumberOfPages);
        Assert.Contains("106141412345678908", Words(pdf, 2), StringComparison.Ordinal);
        Assert.Contains("3 (15 × Ring hub, six ways)", Words(pdf, 2), StringComparison.Ordinal);
    }

    [Fact]
    public void PackingList_NamesEveryBundle()
    {
        using var pdf = PdfDocument.Open(Samples.Press.Pdf(ShopPapers.PackingList(31)).Value);
        var text = Words(pdf, 1) + Words(pdf, 2);
        Assert.Contains("parcel", Words(pdf, pdf.NumberOfPages), StringComparison.Ordinal);
        for (var i = 1; i <= 31; i++) Assert.Contains($"K26-00418-1-{i:00}-M", text, StringComparison.Ordinal);
    }

    [Fact]
    public void PackingList_WithoutParcels_HasNoWordOfThem()
    {
        using var with = PdfDocument.Open(Samples.Press.Pdf(ShopPapers.PackingList(3)).Value);
        using var without = PdfDocument.Open(Samples.Press.Pdf(ShopPapers.PackingList(3) with { Parcels = [] }).Value);
        Assert.Contains("106141412345678908", Words(with, 2), StringComparison.Ordinal);
        Assert.DoesNotContain("arcel", Words(without, 1), StringComparison.Ordinal);
        Assert.Equal(1, without.NumberOfPages);
    }

    static string Words(PdfDocument pdf, int page) => string.Join(' ', pdf.GetPage(page).GetWords().Select(w => w.Text));
}
