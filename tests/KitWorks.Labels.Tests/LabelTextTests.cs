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

    [Theory]
    [InlineData("A \U00012000 B", "A □ B")]
    [InlineData("Zoë \U0001F3D5\uFE0F Camp", "Zoë □")]
    public void Text_WhenNoFontHasACharacter_ShowsABoxForIt(string shop, string printed)
    {
        // A cuneiform sign, and a pictograph with its variation mark.
        using var folder = new Reading.Folder();
        var press = LabelPress.Open(new() { SystemFonts = [folder.Path] }).Value;
        using var pdf = PdfDocument.Open(press.Pdf([Samples.Bundle with { Shop = shop }], LabelStock.Page100x150).Value);
        Assert.Contains(printed, string.Join(' ', pdf.GetPage(1).GetWords().Select(w => w.Text)), StringComparison.Ordinal);
    }

    public static TheoryData<string> LongNames => [new string('W', 190), string.Join(' ', Enumerable.Repeat("Friends of the Long Meadow", 6))[..145], new string('W', 30), "Ann " + new string('W', 190)];

    [Theory]
    [MemberData(nameof(LongNames))]
    public void Papers_WhenTheCustomersNameIsLong_WrapItAndThenCutItOff(string name)
    {
        foreach (var (paper, right, bottom) in new (Paper, double, double)[]
        {
            (Papers.ShopPapers.Picklist(3) with { Customer = name, Code = "" }, 118, 31),
            (Papers.ShopPapers.PackingList(3) with { To = $"{name}\n1 Long Lane", Reference = name }, 192, 42),
        })
        {
            using var pdf = PdfDocument.Open(Samples.Press.Pdf(paper).Value);
            var page = pdf.GetPage(1);
            // The template stands in the middle of A4: 5 mm in from the left, 13.5 mm from the top.
            var head = page.Letters.Where(l => l.Value is "W" or "…" or "F" && (page.Height - l.StartBaseLine.Y) / 72 * 25.4 - 13.5 < bottom).ToList();
            Assert.NotEmpty(head);
            Assert.All(head, l => Assert.True(l.EndBaseLine.X / 72 * 25.4 - 5 < right + 0.2, $"“{l.Value}” ends at {l.EndBaseLine.X / 72 * 25.4 - 5:0.0} mm of {right}."));
            var said = string.Concat(page.Letters.Select(l => l.Value));
            Assert.Contains(name.Replace(" ", "", StringComparison.Ordinal)[..20], said.Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
            if (name.Length > 150) Assert.Contains("…", said, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Labels_WhenADescriptionIsLong_CutItOff()
    {
        var contents = Samples.Bundle.Contents[0] with { Description = string.Join(' ', Enumerable.Repeat("Ring hub, six ways, drilled", 12)) };
        foreach (var stock in LabelStock.BuiltIn)
            foreach (var label in new Label[] { Samples.Bundle with { Contents = [contents] }, Samples.Hubs with { Contents = [contents] }, Samples.Ties with { Contents = [contents] } })
                Assert.Null(Samples.Press.Pdf([label], stock).Refusal);
    }

    [Fact]
    public void Text_WhenItIsRefused_SaysMillimetres()
    {
        using var folder = new Reading.Folder();
        // Ten units to the millimetre: 200 units are 20 mm.
        folder.Write("bundle-100x150.svg", "<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='150mm' viewBox='0 0 1000 1500'><text x='5' y='90' font-size='40'><desc>width 200</desc>{{ tier_name }}</text></svg>");
        var refusal = LabelPress.Open(new() { OwnTemplates = folder.Path }).Value.Pdf([Samples.Bundle with { TierName = new string('W', 40) }], LabelStock.Page100x150).Refusal;
        Assert.Contains("into 20 mm,", refusal!.Detail, StringComparison.Ordinal);
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
