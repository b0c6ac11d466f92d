using System.Xml.Linq;
using KitWorks.Geometry;
using KitWorks.Statics;
using KitWorks.Statics.Loads;

namespace KitWorks.Drawings.Tests;

public class ForceDrawingTests
{
    const string Blue = "#0072B2", Orange = "#E69F00";

    /// <summary>One-inch schedule 40 PVC, ASTM D1785.</summary>
    static readonly Section Pvc = new() { AreaMm2 = 318.6, SecondMomentMm4 = 36355, ModulusMPa = 2900 };

    static readonly NodeLoad[] Person = [new(7, 0, 0, -1000)];

    static (Frame Frame, MemberForce[] Members) Loaded(string design, params int[] without)
    {
        var frame = Designs.Named(design);
        return (frame, [.. Truss.Of(frame, Pvc, BaseSupport.Pinned, without).Value.Solve(Person).Value.Members]);
    }

    public static MatrixTheoryData<string, View> Views { get; } = new(["2V 1/2", "3V 5/8", "8V 1/2", "oblong 6-1-0"], Enum.GetValues<View>());

    [Theory, MemberData(nameof(Views))]
    public void Draw_OfALoadedFrame_ShowsEachForceOnceInItsColourAndTheWiderTheLarger(string design, View view)
    {
        var (frame, members) = Loaded(design);
        var struts = new Picture(ForceDrawing.Draw(frame, members, Person, new() { View = view }).Value).With("data-strut").ToList();

        Assert.Equal(Enumerable.Range(0, frame.Struts.Length), struts.Select(e => Int(e, "data-strut")).Order());
        var most = members.Max(m => Math.Abs(m.ForceN));
        foreach (var line in struts)
        {
            var force = members.Single(m => m.Strut == Int(line, "data-strut")).ForceN;
            Assert.Equal(force, Picture.Number(line, "data-force"), 0.001);
            if (Math.Abs(force) > 1e-5 * most) Assert.Equal(force < 0 ? Blue : Orange, (string?)line.Attribute("stroke"));
        }
        foreach (var colour in new[] { Blue, Orange })
        {
            var bySize = struts.Where(e => (string?)e.Attribute("stroke") == colour).OrderBy(e => Math.Abs(Picture.Number(e, "data-force"))).Select(Outer).ToList();
            Assert.Equal(bySize.Order(), bySize);
        }
    }

    [Fact]
    public void Draw_WhenAStrutIsTakenOut_DashesIt()
    {
        var (frame, members) = Loaded("3V 5/8", 100);
        var picture = new Picture(ForceDrawing.Draw(frame, members, Person, new()).Value);

        Assert.Equal(100, Int(Assert.Single(picture.With("data-opening")), "data-strut"));
        Assert.Contains("Dashed struts are taken out.", Words(picture), StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_GivesAScaleTheLargestForcesAndTheCaution()
    {
        var (frame, members) = Loaded("3V 5/8");
        var picture = new Picture(ForceDrawing.Draw(frame, members, Person, new()).Value);

        var scale = picture.With("data-scale").Select(e => Picture.Number(e, "data-scale")).ToList();
        Assert.Equal(members.Max(m => Math.Abs(m.ForceN)), scale.Max(), 0.001);
        Assert.Equal(scale.Where(f => f > 0).Order(), scale.Where(f => f < 0).Select(f => -f).Order());
        Assert.Contains($"{-members.Min(m => m.ForceN):0} N, in strut {members.MinBy(m => m.ForceN).Strut}", Words(picture), StringComparison.Ordinal);
        Assert.Contains($"{members.Max(m => m.ForceN):0} N, in strut {members.MaxBy(m => m.ForceN).Strut}", Words(picture), StringComparison.Ordinal);
        Assert.Contains("A ring marks the loaded hub.", Words(picture), StringComparison.Ordinal);
        Assert.Contains("licensed engineer", Words(picture), StringComparison.Ordinal);
        Assert.Single(picture.Group("loaded").Elements());
    }

    [Fact]
    public void Draw_WhenNothingIsLoaded_SaysSo()
    {
        var frame = Designs.Named("2V 1/2");
        var members = Truss.Of(frame, Pvc, BaseSupport.Pinned).Value.Solve([]).Value.Members;
        var picture = new Picture(ForceDrawing.Draw(frame, members, null, new()).Value);

        Assert.Contains("No strut bears a force.", Words(picture), StringComparison.Ordinal);
        Assert.Empty(picture.With("data-scale"));
    }

    [Fact]
    public void Draw_Twice_GivesTheSameText()
    {
        var (frame, members) = Loaded("3V 5/8");
        Assert.Equal(ForceDrawing.Draw(frame, members, Person, new()).Value, ForceDrawing.Draw(frame, members, Person, new()).Value);
    }

    [Fact]
    public void Draw_OnASheetTooNarrow_IsRefused()
    {
        var (frame, members) = Loaded("2V 1/2");
        Assert.Equal("drawing.width-invalid", ForceDrawing.Draw(frame, members, null, new() { Width = Length.FromMillimetres(59) }).Refusal?.Code);
    }

    /// <summary>The width on paper, with the rim where there is one.</summary>
    static double Outer(XElement line) => line.PreviousNode is XElement rim && rim.Attribute("data-strut") is null
        && (string?)rim.Attribute("x1") == (string?)line.Attribute("x1") && (string?)rim.Attribute("y2") == (string?)line.Attribute("y2")
        ? Picture.Number(rim, "stroke-width")
        : Picture.Number(line, "stroke-width");

    static string Words(Picture picture) => string.Join(' ', picture.Group("legend").Elements().Where(e => e.Name.LocalName == "text").Select(e => e.Value));

    static int Int(XElement element, string attribute) => int.Parse((string)element.Attribute(attribute)!);
}
