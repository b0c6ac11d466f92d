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
    [InlineData("<text x='5' y='5'><desc>width 50</desc>{% for i in (1..9) %}{{ i }}{% endfor %}</text>", 2, "does not repeat")]
    [InlineData("<text x='5' y='5'><desc>width 50</desc>{% if order == '' %}{% include '/etc/hostname' %}{% endif %}</text>", 2, "include")]
    [InlineData("<text x='5' y='5'><desc>width 50</desc>{% render 'bundle-96x64.svg' %}</text>", 2, "render")]
    [InlineData("<text x='5' y='5'><desc>width 50</desc>{% assign order = order | append: order %}{{ order }}</text>", 2, "remember")]
    [InlineData("<text x='5' y='5'><desc>width 50</desc>{{ (1..999999999) | join: '' }}</text>", 2, "ranges")]
    [InlineData("<g><desc>after item</desc><rect width='5' height='5'/></g>", 2, "after item")]
    [InlineData("<defs><g id='a'><rect width='1' height='1'/></g><g id='b'><use href='#a'/><use href='#a'/></g></defs>\n<use href='#b'/>", 3, "copy")]
    [InlineData("<g id='a'><rect width='1' height='1'/><use href='#a'/></g>", 2, "copy")]
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
    [InlineData("<text x='5' y='5' x='6'><desc>width 50</desc>{{ order }}</text>", 2, "“{{ order }}”")]
    public void Open_WhenATemplateIsWrong_SaysFileLineAndText(string body, int line, string text)
    {
        var refusal = OpenWith(body).Refusal;
        Assert.NotNull(refusal);
        Assert.StartsWith($"bundle-100x150.svg, line {line}:", refusal.Detail, StringComparison.Ordinal);
        Assert.Contains(text, refusal.Detail, StringComparison.Ordinal);
        Assert.DoesNotContain("Fluid", refusal.Detail, StringComparison.Ordinal);
    }

    // What Inkscape writes: spans with places of their own, style attributes, its own elements and names.
    const string FromInkscape = """
        <svg xmlns="http://www.w3.org/2000/svg" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" xmlns:sodipodi="http://sodipodi.sourceforge.net/DTD/sodipodi-0.dtd"
             width="100mm" height="150mm" viewBox="0 0 100 150" version="1.1" id="svg5">
          <sodipodi:namedview id="namedview7" pagecolor="#ffffff" inkscape:zoom="1.4" />
          <defs id="defs2"><linearGradient id="g1"><stop offset="0" style="stop-color:#ffffff" /></linearGradient></defs>
          <g inkscape:label="Layer 1" inkscape:groupmode="layer" id="layer1" transform="translate(1,2)">
            <text xml:space="preserve" style="font-size:5.64444px;line-height:1.25;font-family:'Open Sans';-inkscape-font-specification:'Open Sans Bold';font-weight:bold;stroke-width:0.264583" x="10" y="20" id="text1"><desc id="desc1">width 80</desc><tspan
                 sodipodi:role="line" id="tspan1" style="stroke-width:0.264583" x="10" y="20">Order {{ order }}</tspan></text>
            <rect style="fill:none;stroke:#000000" id="barcode" width="80" height="20" x="10" y="40"><desc id="desc2">code128 {{ code }}</desc></rect>
            <rect style="fill:url(#g1);stroke:#000000;stroke-width:0.5" id="rect3" width="80" height="20" x="10" y="80" />
          </g>
        </svg>
        """;

    // What other programs write: classes in a style element, and no descriptions but those that were there.
    const string WithClasses = """
        <svg xmlns="http://www.w3.org/2000/svg" width="3.937in" height="5.9055in" viewBox="0 0 283.46 425.2">
          <defs><style>.cls-1, .cls-2 { font-size: 16px; font-family: OpenSans-Bold, Open Sans; font-weight: 700; } .cls-2 { fill: #c0392b; }</style></defs>
          <text class="cls-2" transform="translate(30 60)"><desc>width 220</desc>Order {{ order }}</text>
          <rect class="cls-3" x="30" y="120" width="220" height="60"><desc>code128 {{ code }}</desc></rect>
        </svg>
        """;

    [Theory]
    [InlineData(FromInkscape)]
    [InlineData(WithClasses)]
    public void Open_OfADrawingProgramsFile_PrintsIt(string svg)
    {
        using var folder = new Folder();
        folder.Write("bundle-100x150.svg", svg);
        var pdf = LabelPress.Open(new() { OwnTemplates = folder.Path }).Value.Pdf([Samples.Bundle], LabelStock.Page100x150).Value;
        using var read = UglyToad.PdfPig.PdfDocument.Open(pdf);
        Assert.Equal("Order 26-00418", read.GetPage(1).Text);
        Assert.Equal(16, read.GetPage(1).Letters[0].PointSize, 0.1);
        Assert.Equal(["CODE-128:K26-00418-1-07-M"], Scanner.Pages(pdf, 300).Single());
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
    public void Pdf_WhenATemplateIsNamed_TakesItAndTheLargestForOtherKinds()
    {
        using var folder = new Folder();
        folder.Write("bundle-plain.svg", Head + "<text x='5' y='20'><desc>width 90</desc>Plain: {{ order }}</text></svg>");
        var press = LabelPress.Open(new() { OwnTemplates = folder.Path }).Value;

        using var pdf = UglyToad.PdfPig.PdfDocument.Open(press.Pdf([Samples.Bundle, Samples.Hubs], LabelStock.Page100x150, template: "plain").Value);
        var unknown = press.Pdf([Samples.Bundle, Samples.Hubs], LabelStock.Page100x150, template: "fancy").Refusal;
        var tooLarge = press.Pdf([Samples.Bundle], LabelStock.A4Sheet, template: "100x150").Refusal;

        Assert.Equal("Plain: 26-00418", pdf.GetPage(1).Text);
        Assert.Contains("Hubs", pdf.GetPage(2).Text, StringComparison.Ordinal);
        Assert.Contains(press.Templates, t => t is { Kind: "bundle", Name: "plain", Own: true, WidthMm: 100, HeightMm: 150 });
        Assert.Equal(("label.template-unknown", "template"), (unknown!.Code, unknown.Errors[0].Field));
        Assert.Contains("100x150, 55x30, 96x46, 96x64, plain", unknown.Detail, StringComparison.Ordinal);
        Assert.Equal("label.stock-too-small", tooLarge?.Code);
        Assert.Contains("bundle-100x150 is 100 × 150 mm", tooLarge!.Detail, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bundel-100x150.svg", "Is it 'bundle'?")]
    [InlineData("hub-100x150.svg", "Is it 'hubs'?")]
    [InlineData("logo.svg", "The kinds are bin, bundle, ")]
    public void Open_WhenAFileOfTheShopsIsOfNoKind_NamesItAndWhatIsNear(string file, string near)
    {
        using var folder = new Folder();
        folder.Write(file, Head + "</svg>");
        var refusal = LabelPress.Open(new() { OwnTemplates = folder.Path }).Refusal;
        Assert.Equal("label.template-name", refusal?.Code);
        Assert.Contains(file, refusal!.Detail, StringComparison.Ordinal);
        Assert.Contains(near, refusal.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_WhenTheFolderOfFontsIsNotThere_SaysSo() =>
        Assert.Equal("label.fonts-folder", LabelPress.Open(new() { OwnFonts = "/nowhere/at/all" }).Refusal?.Code);

    [Fact]
    public void Open_WhenTheShopsFolderIsNotThere_SaysSo() =>
        Assert.Equal("label.templates-folder", LabelPress.Open(new() { OwnTemplates = "/nowhere/at/all" }).Refusal?.Code);

    [Theory]
    [InlineData(1, 132)]
    [InlineData(3, 112)]
    public void After_ClosesUpToTheListAboveIt(int items, double yMm)
    {
        using var folder = new Folder();
        folder.Write("bundle-100x150.svg", Head + "<g><desc>each item in contents; step 10; room 4</desc><text x='5' y='10'><desc>width 50</desc>{{ item.count }}</text></g><g><desc>after item</desc><text x='5' y='48'>End</text></g></svg>");
        var press = LabelPress.Open(new() { OwnTemplates = folder.Path }).Value;
        using var pdf = UglyToad.PdfPig.PdfDocument.Open(press.Pdf([Samples.Bundle with { Contents = [.. Enumerable.Repeat(Samples.Bundle.Contents[0], items)] }], LabelStock.Page100x150).Value);
        Assert.Equal(yMm, pdf.GetPage(1).Letters.Last(l => l.Value == "d").StartBaseLine.Y / 72 * 25.4, 0.1);
    }

    [Theory]
    [InlineData("<text x='2' y='8' font-size='4'>{{ order }} {% x</text>", null)]
    [InlineData("<g><desc>picture of nothing</desc><rect width='5' height='5'/></g>", null)]
    [InlineData("<image href='file:///etc/hostname' width='5' height='5'/>", "label.template")]
    [InlineData("<text x='2' y='8' font-size='4'>&evil;</text>", "label.template")]
    [InlineData("<g", "label.template")]
    public void Pictures_AreOnlyDrawn(string body, string? code)
    {
        using var folder = new Folder();
        // The made-up label that templates are tried on has no picture for a shelter.
        folder.Write("bundle-100x150.svg", Head + "<rect width='90' height='90'><desc>picture {% if bundle == 99 %}{{ shelter }}{% endif %}</desc></rect></svg>");
        var press = LabelPress.Open(new() { OwnTemplates = folder.Path }).Value;
        var picture = $"<svg xmlns='http://www.w3.org/2000/svg' width='50mm' height='50mm' viewBox='0 0 50 50'>{body}</svg>";
        Assert.Equal(code, press.Pdf([Samples.Bundle with { Bundle = 99, Shelter = picture }], LabelStock.Page100x150).Refusal?.Code);
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
