using KitWorks.Geometry;
using KitWorks.Kits;
using UglyToad.PdfPig;

namespace KitWorks.Labels.Tests.Papers;

public class BuildGuideTests
{
    [Fact]
    public void Pdf_HasTwoPagesATierAndSaysEachTiersCounts()
    {
        var kit = MadeKit.Dome(3, "5/8");
        using var pdf = PdfDocument.Open(Samples.Press.Pdf(ShopPapers.Guide(kit, "3V dome")).Value);
        var pages = pdf.GetPages().Select(p => p.Text).ToList();
        // Cover, parts, notes, stake-out and pegs, since this kit has a warning; then the tiers, the checks and the care.
        Assert.Equal(5 + 2 * kit.Tiers.Length + 2, pages.Count);
        Assert.Contains("block the others up", pages[2], StringComparison.Ordinal);
        foreach (var tier in kit.Tiers)
        {
            var page = pages[5 + 2 * tier.Number];
            Assert.Contains($"{tier.Struts.Sum(s => s.Count)} struts, {tier.Hubs.Sum(h => h.Count)} hub", page, StringComparison.Ordinal);
            Assert.Contains($"{tier.Ties} ties", page, StringComparison.Ordinal);
            foreach (var strut in tier.Struts) Assert.Contains($"{kit.StrutTypes.First(t => t.Code == strut.Code).CutLength.Millimetres:0.0} mm{strut.Count}", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Pdf_OfAKitWithOpenings_SaysHowAndWhenTheyAreFramed()
    {
        var kit = MadeKit.Dome(3, "5/8", new Door { Stake = 4 }, new Door { Stake = 9, Top = DoorTop.Peaked }, new Vent());
        using var pdf = PdfDocument.Open(Samples.Press.Pdf(ShopPapers.Guide(kit, "3V dome")).Value);
        var pages = pdf.GetPages().Select(p => p.Text).ToList();
        var page = pages.Single(p => p.Contains("Doors and vents", StringComparison.Ordinal));

        // The second door's stake counts on by the foot that the first one brought.
        foreach (var words in new[] { "Door between stakes 4 and 5", "Door between stakes 10 and 11", "Vent in tier", "plumb", "rise to the peak", "one hub, 5 struts and 4 panels", "No strut is left out" })
            Assert.Contains(words, page, StringComparison.Ordinal);
        Assert.Contains(pages, p => p.Contains("4–5\u00a0door", StringComparison.Ordinal) || p.Contains("4–5 door", StringComparison.Ordinal));
        Assert.DoesNotContain("Doors and vents", string.Concat(PdfText(MadeKit.Dome(3, "5/8"))), StringComparison.Ordinal);
    }

    [Fact]
    public void Pdf_WhereHubsTakeMoreStakes_SaysWhich()
    {
        var kit = MadeKit.Dome(3, "5/8");
        Assert.Contains("one through each of the 15 base hubs", string.Concat(PdfText(kit)), StringComparison.Ordinal);
        // A line that is broken loses its space in the file's text.
        Assert.Contains("1atstakes1to7;2atstakes8to14;3atstake15",
            string.Concat(PdfText(kit with { StakesAt = [.. Enumerable.Repeat(1, 7), .. Enumerable.Repeat(2, 7), 3] })).Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    static List<string> PdfText(Kit kit)
    {
        using var pdf = PdfDocument.Open(Samples.Press.Pdf(ShopPapers.Guide(kit, "3V dome")).Value);
        return [.. pdf.GetPages().Select(p => p.Text)];
    }

    [Fact]
    public void Pdf_SaysWhatABuilderMustKnow()
    {
        using var pdf = PdfDocument.Open(Samples.Press.Pdf(ShopPapers.Guide(MadeKit.Oblong(1), "Oblong")).Value);
        var text = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
        foreach (var words in new[] { "permit", "cables, gas", "diagonals", "Work from outside", "Raise the tier only when it is whole", "starts at a standing hub", "pull the sides in", "Pull in before you stake",
            "one through each of the 14 base hubs", "step ladder", "Wind", "Snow", "not a structural calculation", "Taking it down" })
            Assert.Contains(words, text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, "rows:2")]
    [InlineData(2, "1/2")]
    [InlineData(8, "1/2")]
    [InlineData(16, "1/2")]
    public void Pdf_OfOtherDesigns_Fits(int frequency, string cut)
    {
        var outcome = Samples.Press.Pdf(ShopPapers.Guide(MadeKit.Dome(frequency, cut), $"{frequency}V dome"), PaperSize.Letter);
        Assert.Null(outcome.Refusal);
    }

    [Fact]
    public void Of_TakesTheCallersTierPictures()
    {
        const string picture = """<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="50mm" viewBox="0 0 50 50"><text x="5" y="20" font-size="4">Picture of the caller</text></svg>""";
        var guide = BuildGuide.Of(MadeKit.Dome(2, "1/2"), "1", "Dome", tierPicture: _ => picture).Value;
        using var pdf = PdfDocument.Open(Samples.Press.Pdf(guide).Value);
        Assert.Contains("Picture of the caller", pdf.GetPage(6).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Pegs_AreInLargeFiguresAndLieOverTheLowest()
    {
        var kit = MadeKit.Dome(3, "5/8");
        var lowest = kit.Frame.Base.Min(id => kit.Frame.Nodes[id].Position.Z);
        using var pdf = PdfDocument.Open(Samples.Press.Pdf(ShopPapers.Guide(kit, "3V dome")).Value);
        var page = pdf.GetPage(5);
        var rows = page.GetWords().GroupBy(w => Math.Round(w.Letters[0].StartBaseLine.Y)).Select(g => g.OrderBy(w => w.BoundingBox.Left).ToList())
            .Where(r => r.Count == 6 && r.All(w => w.Text == "–" || int.TryParse(w.Text, out _))).OrderBy(r => int.Parse(r[0].Text)).ToList();

        Assert.Equal(kit.Frame.Base.Length, rows.Count);
        // All but the foot, on the ring's page too.
        Assert.All(pdf.GetPage(4).Letters.Concat(page.Letters).Where(l => l.StartBaseLine.Y > 60), l => Assert.True(l.PointSize >= 9, $"“{l.Value}” has {l.PointSize:0.0} points."));
        foreach (var (row, id) in rows.Zip(kit.Frame.Base)) Assert.Equal(kit.Frame.Nodes[id].Position.Z - lowest, double.Parse(row[5].Text), 0.51);
    }

    [Fact]
    public void Hubs_OfOneSort_AreListedOnce()
    {
        // A dome's base has hubs of four struts beside those of six: the same part.
        using var pdf = PdfDocument.Open(Samples.Press.Pdf(ShopPapers.Guide(MadeKit.Dome(3, "5/8"), "3V dome")).Value);
        Assert.Equal(1, pdf.GetPage(2).GetWords().Count(w => w.Text == "HUB-R100-6"));
    }

    [Fact]
    public void Warnings_TellTheCustomerWhatToDoAndTheShopTheFigures()
    {
        Warning[] warnings =
        [
            new("statics.tie-overloaded", "In the screening this shelter asks too much of Nylon tie: under person (hub 1) of the load set 'garden', the tension of strut 1 (S1) is 438 N and 345 N is allowed."),
            new("statics.outgrown", "Outgrown: under person of the load set 'garden' 900 N and 345 N is allowed."), new("statics.stakes", "In the screening 3 base hubs of 10 need more, hub 1 the most: 4."),
        ];
        var guide = Words(Samples.Press.Pdf(ShopPapers.Guide(MadeKit.Dome(2, "1/2") with { Warnings = [.. warnings] }, "Dome")).Value);
        var picklist = Words(Samples.Press.Pdf(ShopPapers.Picklist(3) with { Warnings = [.. warnings.Select(w => w.Detail)] }).Value);

        foreach (var jargon in new[] { "load set", "garden'", "438", "345", "hub 1 ", "screening" }) Assert.DoesNotContain(jargon, guide, StringComparison.OrdinalIgnoreCase);
        foreach (var todo in new[] { "Nobody climbs on it", "Push snow off", "Take the cover off before a storm", "Ask the shop", "longer stake" }) Assert.Contains(todo, guide, StringComparison.Ordinal);
        foreach (var figure in new[] { "438 N and 345 N", "load set 'garden'", "hub 1 the most" }) Assert.Contains(figure, picklist, StringComparison.Ordinal);
    }

    static string Words(byte[] document)
    {
        using var pdf = PdfDocument.Open(document);
        return string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
    }

    [Fact]
    public void Of_WhenAPictureIsRefused_IsRefused() => Assert.Equal("drawing.none",
        BuildGuide.Of(MadeKit.Dome(2, "1/2"), "1", "Dome", tierPicture: _ => new Refusal(RefusalKind.Impossible, "drawing.none", "None.")).Refusal?.Code);

    [Theory]
    [InlineData(new[] { 1, 2, 3, 7 }, "1 to 3 and 7")]
    [InlineData(new[] { 2, 1, 9, 10 }, "1, 2, 9 and 10")]
    [InlineData(new int[0], "")]
    public void Ranges_AreSaidAsPeopleSayThem(int[] numbers, string words) => Assert.Equal(words, GuideWriter.Ranges(numbers));
}
