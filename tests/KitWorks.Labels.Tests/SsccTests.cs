namespace KitWorks.Labels.Tests;

public class SsccTests
{
    [Theory]
    [InlineData("37610425002123456", '9')] // GS1 General Specifications 7.9.1, from memory
    [InlineData("10614141234567890", '8')] // EPC Tag Data Standard's example, from memory
    [InlineData("95135623050123698", '6')] // lloricode/check-digit's test, held against GS1's own calculator
    [InlineData("629104150021", '3')] // GS1 Hong Kong's page on check digits
    public void CheckDigit_OfPublishedNumbers(string digits, char check) => Assert.Equal(check, Sscc.CheckDigit(digits));

    [Fact]
    public void Of_PutsThePartsTogether() => Assert.Equal("106141412345678908", Sscc.Of(1, "0614141", 234567890).Value.ToString());

    [Fact]
    public void Of_FillsTheSerialWithZeros() => Assert.Equal("37610425000000007", Sscc.Of(3, "7610425", 7).Value.ToString()[..17]);

    [Theory]
    [InlineData(10, "7610425", 1, "sscc.extension")]
    [InlineData(1, "761", 1, "sscc.prefix")]
    [InlineData(1, "76104a5", 1, "sscc.prefix")]
    [InlineData(1, "7610425", 1_000_000_000, "sscc.serial")]
    [InlineData(1, "7610425", -1, "sscc.serial")]
    public void Of_WhenAPartIsWrong_IsRefused(int extension, string prefix, long serial, string code) => Assert.Equal(code, Sscc.Of(extension, prefix, serial).Refusal?.Code);

    [Theory]
    [InlineData("376104250021234568", "sscc.check-digit")]
    [InlineData("37610425002123456", "sscc.malformed")]
    [InlineData("(00)37610425002123", "sscc.malformed")]
    public void Parse_WhenWrong_IsRefused(string text, string code) => Assert.Equal(code, Sscc.Parse(text).Refusal?.Code);

    [Fact]
    public void Label_WithoutAnSscc_IsRefused() =>
        Assert.Equal("label.code-character", Samples.Press.Pdf([Samples.Parcel with { Sscc = default }], LabelStock.Page100x150).Refusal?.Code);
}
