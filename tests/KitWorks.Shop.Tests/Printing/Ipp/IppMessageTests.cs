using KitWorks.Shop.Printing.Ipp;

namespace KitWorks.Shop.Tests.Printing.Ipp;

/// <summary>The encoding, beside the examples of RFC 8010, appendix A (from memory).</summary>
public sealed class IppMessageTests
{
    [Fact]
    public void Write_WhenItIsTheStandardsPrintJobRequest_GivesItsOctets()
    {
        var message = new IppMessage(0x0002, 1,
        [
            IppAttribute.Operation("attributes-charset", IppTag.Charset, "utf-8"),
            IppAttribute.Operation("attributes-natural-language", IppTag.NaturalLanguage, "en-us"),
            IppAttribute.Operation("printer-uri", IppTag.Uri, "ipp://printer.example.com/ipp/print/pinetree"),
            IppAttribute.Operation("job-name", IppTag.Name, "foobar"),
            new(IppTag.OperationAttributes, "ipp-attribute-fidelity", IppValue.Of(true)),
            new(IppTag.JobAttributes, "copies", IppValue.Of(IppTag.Integer, 20)),
            IppAttribute.Job("sides", IppTag.Keyword, "two-sided-long-edge"),
        ]);

        byte[] expected =
        [
            1, 1, 0, 2, 0, 0, 0, 1,
            0x01,
            0x47, 0, 0x12, .. "attributes-charset"u8, 0, 5, .. "utf-8"u8,
            0x48, 0, 0x1B, .. "attributes-natural-language"u8, 0, 5, .. "en-us"u8,
            0x45, 0, 0x0B, .. "printer-uri"u8, 0, 0x2C, .. "ipp://printer.example.com/ipp/print/pinetree"u8,
            0x42, 0, 0x08, .. "job-name"u8, 0, 6, .. "foobar"u8,
            0x22, 0, 0x16, .. "ipp-attribute-fidelity"u8, 0, 1, 1,
            0x02,
            0x21, 0, 0x06, .. "copies"u8, 0, 4, 0, 0, 0, 0x14,
            0x44, 0, 0x05, .. "sides"u8, 0, 0x13, .. "two-sided-long-edge"u8,
            0x03,
        ];
        Assert.Equal(expected, message.Write());
    }

    [Fact]
    public void Write_WhenAnAttributeHasSeveralValues_NamesTheFirstOnly()
    {
        var message = new IppMessage(0x000A, 0x6C, [IppAttribute.Operation("requested-attributes", IppTag.Keyword, "job-id", "job-name", "document-format")]);

        byte[] expected =
        [
            1, 1, 0, 0x0A, 0, 0, 0, 0x6C, 0x01,
            0x44, 0, 0x14, .. "requested-attributes"u8, 0, 6, .. "job-id"u8,
            0x44, 0, 0, 0, 8, .. "job-name"u8,
            0x44, 0, 0, 0, 0x0F, .. "document-format"u8,
            0x03,
        ];
        Assert.Equal(expected, message.Write());
    }

    [Fact]
    public void Read_WhenItIsTheStandardsPrintJobAnswer_FindsJobAndState()
    {
        byte[] octets =
        [
            1, 1, 0, 0, 0, 0, 0, 1,
            0x01,
            0x47, 0, 0x12, .. "attributes-charset"u8, 0, 5, .. "utf-8"u8,
            0x48, 0, 0x1B, .. "attributes-natural-language"u8, 0, 5, .. "en-us"u8,
            0x41, 0, 0x0E, .. "status-message"u8, 0, 0x0D, .. "successful-ok"u8,
            0x02,
            0x21, 0, 0x06, .. "job-id"u8, 0, 4, 0, 0, 0, 147,
            0x45, 0, 0x07, .. "job-uri"u8, 0, 0x30, .. "ipp://printer.example.com/ipp/print/pinetree/147"u8,
            0x23, 0, 0x09, .. "job-state"u8, 0, 4, 0, 0, 0, 3,
            0x03,
        ];

        var message = IppMessage.Read(octets);

        Assert.Equal((0, 1), (message.Code, message.RequestId));
        Assert.Equal((147, 3, "successful-ok"), (message.Number("job-id"), message.Number("job-state"), message.Text("status-message")));
        Assert.Equal(octets, message.Write());
    }

    [Fact]
    public void Read_WhenItListsJobs_KeepsThemApart()
    {
        byte[] octets =
        [
            1, 1, 0, 0, 0, 0, 0, 1,
            0x02, 0x21, 0, 6, .. "job-id"u8, 0, 4, 0, 0, 0, 147,
            0x02, 0x42, 0, 8, .. "job-name"u8, 0, 3, .. "foo"u8, 0x21, 0, 6, .. "job-id"u8, 0, 4, 0, 0, 0, 148,
            0x03,
        ];

        Assert.Equal([(1, "job-id"), (2, "job-name"), (2, "job-id")], IppMessage.Read(octets).Attributes.Select(a => (a.GroupNumber, a.Name)));
    }

    [Fact]
    public void Read_WhenValuesAreOfEveryKind_TellsThemApart()
    {
        byte[] withLanguage = [0, 2, .. "de"u8, 0, 4, .. "Fach"u8];
        byte[] dots = [0, 0, 0, 203, 0, 0, 0, 203, 3], dotsToTheCentimetre = [0, 0, 0, 80, 0, 0, 0, 80, 4];

        Assert.Equal("Fach", new IppValue(IppTag.NameWithLanguage, withLanguage).Text);
        Assert.Equal(203, new IppValue(IppTag.Resolution, dots).Number);
        Assert.Equal(203, new IppValue(IppTag.Resolution, dotsToTheCentimetre).Number);
        Assert.Equal(-2, IppValue.Of(IppTag.Enum, -2).Number);
        Assert.Null(IppValue.Of(IppTag.Keyword, "none").Number);
    }

    [Fact]
    public void Read_WhenItBreaksOffOrIsNoise_ThrowsFormatExceptionOnly()
    {
        var whole = new IppMessage(0, 7, [IppAttribute.Operation("status-message", IppTag.Text, "é"), new(IppTag.JobAttributes, "job-id", IppValue.Of(IppTag.Integer, 3))]).Write();

        for (var length = 0; length < whole.Length; length++) Assert.Throws<FormatException>(() => IppMessage.Read(whole.AsSpan(0, length)));
        Assert.Throws<FormatException>(() => IppMessage.Read([1, 1, 0, 0, 0, 0, 0, 1, 0x44, 0, 0, 0, 1, 65, 3]));
        var random = new Random(20);
        for (var i = 0; i < 10_000; i++)
        {
            var noise = new byte[random.Next(60)];
            random.NextBytes(noise);
            try
            {
                IppMessage.Read(noise);
            }
            catch (FormatException)
            {
            }
        }
    }

    [Theory]
    [InlineData(new[] { "media-empty-warning", "media-low-report", "none" }, "media-empty,media-low")]
    [InlineData(new[] { "document-format-error", "cover-open-error", "cover-open" }, "document-format-error,cover-open")]
    [InlineData(new[] { "job-printing", "", "a,b" }, "")]
    public void Codes_WhenAPrinterGivesReasons_AreThoseThatMeanSomething(string[] keywords, string codes) =>
        Assert.Equal(codes, string.Join(',', IppWords.Codes(keywords)));
}
