using System.Xml.Linq;
using KitWorks.Drawings.Paper;

namespace KitWorks.Drawings.Frames;

/// <summary>A hub's sign: its form tells how many struts meet there.</summary>
static class HubSign
{
    public static XElement Draw(Spot at, int degree, double radius, bool pale)
    {
        var ink = pale ? Ink.Line : Ink.Dark;
        var solid = degree is 5 or 3 or > 6;
        var form = degree switch
        {
            5 or 6 => Svg.Element("circle", ("cx", Svg.N(at.X)), ("cy", Svg.N(at.Y)), ("r", Svg.N(radius))),
            3 or 4 => Svg.Element("rect", ("x", Svg.N(at.X - radius * 0.9)), ("y", Svg.N(at.Y - radius * 0.9)), ("width", Svg.N(radius * 1.8)), ("height", Svg.N(radius * 1.8))),
            _ => Svg.Path(Diamond(at, radius * 1.3)),
        };
        form.SetAttributeValue("fill", solid ? ink : Ink.Paper);
        form.SetAttributeValue("stroke", ink);
        form.SetAttributeValue("stroke-width", Svg.N(Math.Max(0.1, radius * 0.22)));
        return form;
    }

    static string Diamond(Spot at, double r) =>
        $"M{Svg.N(at.X)} {Svg.N(at.Y - r)}L{Svg.N(at.X + r)} {Svg.N(at.Y)}L{Svg.N(at.X)} {Svg.N(at.Y + r)}L{Svg.N(at.X - r)} {Svg.N(at.Y)}Z";
}
