using UglyToad.PdfPig;

namespace KitWorks.Labels.Tests;

public class LabelTextTests
{
    [Fact]
    public void Text_WhenALittleLong_Shrinks() => Assert.InRange(SizeOf(Samples.Bundle with { Order = "26-00418-LARKFIELD-NORTH-3" }, "26-00418-LARKFIELD-NORTH-3"), 7, 12.9);

    [Fact]
    public void Text_WhenLonger_Wraps()
    {
        var rows = RowsOf(Samples.Bundle with { TierName = "Second ring, on the north side of the oval" }, ["Second", "oval"]);
        Assert.NotEqual(rows[0], rows[1], 1.0);
    }

    [Fact]
    public void Text_WhenFarTooLong_IsRefusedAndNamesThePlace()
    {
        var refusal = Samples.Press.Pdf([Samples.Bundle with { TierName = string.Join(' ', Enumerable.Repeat("ring", 60)) }], LabelStock.Page100x150).Refusal;
        Assert.Equal("label.text-too-long", refusal?.Code);
        Assert.Contains("bundle-100x150.svg, line", refusal!.Detail, StringComparison.Ordinal);
        Assert.Contains("{{ tier_name }}", refusal.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_WhenNoFontHasACharacter_IsRefusedAndNamesIt()
    {
        // U+12000, a cuneiform sign.
        using var folder = new Reading.Folder();
        var press = LabelPress.Open(new() { SystemFonts = [folder.Path] }).Value;
        var refusal = press.Pdf([Samples.Bundle with { Shop = "\U00012000" }], LabelStock.Page100x150).Refusal;
        Assert.Equal("label.glyph-missing", refusal?.Code);
        Assert.Contains("U+12000", refusal!.Detail, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Łódź Kopuły")]
    [InlineData("Θόλοι Ἀθηνᾶ")]
    [InlineData("Купола и шатры")]
    [InlineData("Գմբեթ")]
    public void Text_InOtherAlphabets_ReadsBack(string shop)
    {
        using var pdf = PdfDocument.Open(Samples.Press.Pdf([Samples.Bundle with { Shop = shop }], LabelStock.Page100x150).Value);
        var words = string.Join(' ', pdf.GetPage(1).GetWords().Select(w => w.Text));
        Assert.Contains(shop, words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("abc 12", "abc 12")]
    [InlineData("\u05d0\u05d1", "<\u05d0\u05d1>")]
    [InlineData("\u05d0\u05d1 12", "12|<\u05d0\u05d1 >")]
    [InlineData("\u05d0 12.5 \u05d1", "< \u05d1>|12.5|<\u05d0 >")]
    [InlineData("ab \u05d0\u05d1 cd", "ab |<\u05d0\u05d1>| cd")]
    [InlineData("\u05d0 ab 12 \u05d1", "< \u05d1>|ab 12|<\u05d0 >")]
    public void Order_OfMixedDirections_IsFromTheLeft(string text, string drawn) =>
        Assert.Equal(drawn, string.Join('|', Fonts.Bidi.Order(text).Select(s => s.RightToLeft ? $"<{s.Text}>" : s.Text)));

    [Fact]
    public void Text_InArabic_IsJoinedAndRunsFromTheRight()
    {
        // Seen, lam, alef, meem. From the left: meem alone, the ligature of lam and alef in its final form, seen in its initial form.
        using var pdf = PdfDocument.Open(Samples.Press.Pdf([Samples.Bundle with { Shop = "\u0633\u0644\u0627\u0645" }], LabelStock.Page100x150).Value);
        var drawn = string.Concat(pdf.GetPage(1).Letters.Where(l => l.Value.Any(c => c > 0x0600)).OrderBy(l => l.StartBaseLine.X).Select(l => l.Value));
        Assert.Equal("\u0645\ufefc\ufeb3", drawn);
    }

    [Theory]
    [InlineData("K26\u00f1")]
    [InlineData("K26\t1")]
    [InlineData("Kopuła")]
    [InlineData("")]
    public void Code128_OutsidePrintableAscii_IsRefused(string code) =>
        Assert.Equal("label.code-character", Samples.Press.Pdf([Samples.Bundle with { Code = code }], LabelStock.Page100x150).Refusal?.Code);

    [Fact]
    public void Code128_WhenModuleWouldBeTooNarrow_IsRefused() =>
        Assert.Equal("label.code-too-small", Samples.Press.Pdf([Samples.Bundle with { Code = new string('W', 40) }], LabelStock.Page100x150).Refusal?.Code);

    static double SizeOf(BundleLabel label, string word)
    {
        using var pdf = PdfDocument.Open(Samples.Press.Pdf([label], LabelStock.Page100x150).Value);
        return pdf.GetPage(1).GetWords().Single(w => w.Text == word).Letters[0].PointSize;
    }

    static double[] RowsOf(BundleLabel label, string[] words)
    {
        using var pdf = PdfDocument.Open(Samples.Press.Pdf([label], LabelStock.Page100x150).Value);
        return [.. words.Select(w => pdf.GetPage(1).GetWords().Single(x => x.Text == w).BoundingBox.Bottom)];
    }
}
