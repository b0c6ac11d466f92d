using KitWorks.Geometry;
using KitWorks.Labels.Tests.Reading;

namespace KitWorks.Labels.Tests;

public class TemplateTests
{
    const string Head = """<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="100mm" height="150mm" viewBox="0 0 100 150" font-size="5">""" + "\n";

    [Theory]
    [InlineData("<text x='5' y='5'><desc>width 50</desc>{{ order }</text>", 2, "{{ order }")]
    [InlineData("\n\n<text x='5' y='5'><desc>width 50</desc>{{ colour_of_money }}</text>", 4, "colour_of_money")]
    [InlineData("<text x='5' y='5'><desc>width 50</desc>{{ tag.shade }}</text>", 2, "{{ tag.shade }}")]
    [InlineData("<text x='5' y='5'><desc>width 50</desc>{{ order | shout }}</text>", 2, "shout")]
    [InlineData("<text x='5' y='5'>{{ order }}</text>", 2, "{{ order }}")]
    [InlineData("<text x='5' y='5'><desc>width 50</desc>{% for i in (1..9) %}{% for j in (1..999) %}x{% endfor %}{% endfor %}</text>", 2, "too many steps")]
    [InlineData("<rect width='{{ tier }}' height='4'/>", 2, "{{ tier }}")]
    [InlineData("<rect width='80' height='20'><desc>code39 {{ code }}</desc></rect><text x='{{ tier }}'/>", 2, "{{ tier }}")]
    [InlineData("<image href='http://kits.example/logo.png' width='5' height='5'/>", 2, "http://kits.example/logo.png")]
    [InlineData("<image xlink:href='/etc/hostname' width='5' height='5'/>", 2, "/etc/hostname")]
    [InlineData("<rect width='5' height='5' fill='url(http://kits.example/p.svg#p)'/>", 2, "url(http")]
    [InlineData("<script>1</script>", 2, "<script>")]
    [InlineData("<text font-family='Nobody Sans' x='1' y='5'>Hello</text>", 2, "Nobody Sans")]
    [InlineData("<g><desc>each item in contents; step 5; room 0</desc></g>", 2, "room")]
    [InlineData("<rect width='3' height='3'><desc>qr {{ page_url }}</desc></rect>", 2, "{{ page_url }}")]
    [InlineData("<rect>", 3, "rect")]
    public void Open_WhenATemplateIsWrong_SaysFileLineAndText(string body, int line, string text)
    {
        var refusal = OpenWith(body).Refusal;
        Assert.NotNull(refusal);
        Assert.StartsWith($"bundle-100x150.svg, line {line}:", refusal.Detail, StringComparison.Ordinal);
        Assert.Contains(text, refusal.Detail, StringComparison.Ordinal);
        Assert.DoesNotContain("Fluid", refusal.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_WhenTheShopHasItsOwnTemplate_TakesIt()
    {
        using var folder = new Folder();
        folder.Write("bundle-100x150.svg", Head + "<text x='5' y='20'><desc>width 90</desc>Ours: {{ order }}</text></svg>");
        var press = LabelPress.Open(new() { OwnTemplates = folder.Path }).Value;
        using var pdf = UglyToad.PdfPig.PdfDocument.Open(press.Pdf([Samples.Bundle], LabelStock.Page100x150).Value);
        Assert.Equal("Ours: 26-00418", pdf.GetPage(1).Text);
    }

    [Fact]
    public void Values_WithMarkup_ArePrintedAsTheyAre()
    {
        using var pdf = UglyToad.PdfPig.PdfDocument.Open(Samples.Press.Pdf([Samples.Bundle with { Shop = "A<b>&amp;\u0001 {{x}}" }], LabelStock.Page100x150).Value);
        Assert.Contains("A<b>&amp; {{x}}", string.Join(' ', pdf.GetPage(1).GetWords().Select(w => w.Text)), StringComparison.Ordinal);
    }

    [Fact]
    public void Open_WhenThereIsNoFont_SaysWhatToDo()
    {
        using var folder = new Folder();
        var refusal = LabelPress.Open(new() { Templates = folder.Path, SystemFonts = [] }).Refusal;
        Assert.Equal("fonts.none", refusal?.Code);
        Assert.Contains("fonts-dejavu-core", refusal!.Detail, StringComparison.Ordinal);
    }

    static Outcome<LabelPress> OpenWith(string body)
    {
        using var folder = new Folder();
        folder.Write("bundle-100x150.svg", Head + body + "\n</svg>");
        return LabelPress.Open(new() { OwnTemplates = folder.Path });
    }
}
