using System.Xml.Linq;
using KitWorks.Geometry;

namespace KitWorks.Drawings.Tests;

/// <summary>What holds for every drawing, whatever is on it.</summary>
public class SheetTests
{
    static readonly string[] Known = ["svg", "title", "desc", "g", "rect", "circle", "line", "path", "polygon", "text", "tspan"];

    static readonly Lazy<List<(string Name, string Svg)>> Drawings = new(() => [.. Draw()]);

    static IEnumerable<(string Name, string Svg)> Draw()
    {
        foreach (var (frequency, cut) in new[] { (1, "rows:2"), (3, "5/8"), (8, "1/2"), (16, "1/2") })
        {
            var frame = Designs.Dome(frequency, cut);
            var types = Designs.TypesOf(frame);
            foreach (var (mm, units) in new[] { (60, Units.Metric), (100, Units.FeetAndInches), (180, Units.Metric), (600, Units.FeetAndInches) })
            {
                var width = Length.FromMillimetres(mm);
                foreach (var view in Enum.GetValues<View>())
                {
                    var options = new DrawingOptions { View = view, Units = units, Width = width };
                    if (frequency < 8 || mm == 180) yield return ($"{frequency}V {view} {units} {width}", FrameDrawing.Draw(frame, options, types).Value);
                    yield return ($"{frequency}V tier {view} {units} {width}", FrameDrawing.Draw(frame, options with { Tier = frame.TierCount / 2 }, types).Value);
                }
                yield return ($"{frequency}V stake-out {units} {width}", StakeOutDrawing.Draw(frame, units, width).Value);
                yield return ($"{frequency}V cut plan {units} {width}", CutPlanDrawing.Draw(CutPlanDrawingTests.Plan, types, units, width).Value);
            }
        }
    }

    [Fact]
    public void EveryDrawing_KeepsItsInkOnTheSheet()
    {
        foreach (var (name, svg) in Drawings.Value)
        {
            var picture = new Picture(svg);
            var (width, height) = picture.ViewBox;
            foreach (var (element, x, y) in Points(picture.Root, 0, 0))
                Assert.True(x >= 0 && x <= width && y >= 0 && y <= height, $"{name}: ({x}, {y}) of {element} is off the sheet of {width} × {height}.");
        }
    }

    [Fact]
    public void EveryDrawing_HasATitleADescriptionAndOnlyPlainElements()
    {
        foreach (var (name, svg) in Drawings.Value)
        {
            var picture = new Picture(svg);
            Assert.Equal(["title", "desc"], picture.Root.Elements().Take(2).Select(e => e.Name.LocalName));
            Assert.All(picture.Root.Elements().Take(2), e => Assert.NotEqual("", e.Value));
            Assert.All(picture.Root.DescendantsAndSelf(), e => Assert.Contains(e.Name.LocalName, Known));
            Assert.All(picture.Root.DescendantsAndSelf().Attributes(), a => Assert.DoesNotContain(a.Name.LocalName, new[] { "style", "filter", "href", "id" }));
            Assert.EndsWith("sans-serif", picture.Group("drawing").Single().Attribute("font-family")!.Value);
            Assert.DoesNotContain("NaN", svg);
            Assert.DoesNotContain('\r', svg);
            Assert.True(svg.Length < 4_000_000, $"{name} has {svg.Length} characters.");
        }
    }

    /// <summary>Places where an element puts ink; text by the ends of a run 0.5 em a character wide.</summary>
    static IEnumerable<(string Element, double X, double Y)> Points(XElement element, double dx, double dy)
    {
        if ((string?)element.Attribute("transform") is { } transform)
        {
            var at = Picture.Numbers(transform.Split('(', ')')[1]);
            (dx, dy) = (dx + at[0], dy + at[1]);
        }
        double N(string attribute) => element.Attribute(attribute) is null ? 0 : Picture.Number(element, attribute);
        var name = element.Name.LocalName;
        IEnumerable<(double, double)> own = name switch
        {
            "line" => [(N("x1"), N("y1")), (N("x2"), N("y2"))],
            "circle" => [(N("cx") - N("r"), N("cy") - N("r")), (N("cx") + N("r"), N("cy") + N("r"))],
            "rect" => [(N("x"), N("y")), (N("x") + N("width"), N("y") + N("height"))],
            "path" => Picture.Numbers(element.Attribute("d")!.Value.Replace('M', ' ').Replace('L', ' ').Replace("Z", "")).Chunk(2).Select(p => (p[0], p[1])),
            "text" when element.Attribute("transform") is null => Text(element, N("x"), N("y")),
            _ => [],
        };
        foreach (var (x, y) in own) yield return (name, x + dx, y + dy);
        foreach (var point in element.Elements().SelectMany(e => Points(e, dx, dy))) yield return point;
    }

    static IEnumerable<(double, double)> Text(XElement text, double x, double y)
    {
        var size = double.Parse(text.AncestorsAndSelf().Attributes("font-size").First().Value, System.Globalization.CultureInfo.InvariantCulture);
        var length = text.Value.Length * size * 0.5;
        var anchor = text.AncestorsAndSelf().Attributes("text-anchor").Select(a => a.Value).FirstOrDefault("start");
        var from = anchor switch { "start" => x, "middle" => x - length / 2, _ => x - length };
        return [(from, y), (from + length, y - size * 0.7)];
    }
}
