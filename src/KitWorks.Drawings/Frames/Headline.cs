using System.Xml.Linq;
using KitWorks.Drawings.Paper;
using KitWorks.Geometry;

namespace KitWorks.Drawings.Frames;

/// <summary>The two lines over a picture, which are also its title and description.</summary>
sealed class Headline
{
    readonly double size, width;

    public Headline(Frame frame, DrawingOptions options)
    {
        width = options.Width.Millimetres - 12;
        size = options.Width.Millimetres < 130 ? 3.4 : 4.2;
        var what = options.Tier is { } tier ? $"Tier {tier}{(tier == 0 ? ", the foundation" : "")}" : ViewName(options.View);
        Title = $"{options.Title ?? ShelterName.Of(frame.Shelter)} · {what}";
        Description = options.Tier is { } t ? OfTier(frame, t, options.View) : OfWhole(frame, options.Units);
    }

    public string Title { get; }

    public string Description { get; }

    public double Height => size + 7.5;

    public XElement Draw(Spot at)
    {
        var group = Svg.Group("headline", ("fill", Ink.Dark));
        group.Add(
            Svg.Text(at + new Spot(0, size * 0.8), Title, Fitting(Title, size), ("font-weight", "bold")),
            Svg.Text(at + new Spot(0, size + 3.4), Description, Fitting(Description, 2.6), ("fill", Ink.Soft)));
        return group;
    }

    double Fitting(string text, double wanted) => Math.Min(wanted, wanted * width / TextWidth.Of(text, wanted * 1.06));

    static string OfTier(Frame frame, int tier, View view) =>
        $"{ViewName(view)}. New here: {Count(frame.Struts.Count(s => s.Tier == tier), "strut")}, {Count(frame.Nodes.Count(n => n.Tier == tier), "hub")}"
        + (tier == 0 ? "" : "; what already stands is pale");

    static string OfWhole(Frame frame, Units units)
    {
        var d = frame.Dimensions;
        return $"{Measure.Whole(d.LengthMm, units)} long, {Measure.Whole(d.WidthMm, units)} wide, {Measure.Whole(d.HeightMm, units)} high, "
            + $"{Measure.Area(d.FloorAreaM2, units)} of floor · {Count(frame.Struts.Length, "strut")}, {Count(frame.Nodes.Length, "hub")}";
    }

    static string Count(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";

    static string ViewName(View view) => view switch
    {
        View.Plan => "Plan",
        View.Side => "Side",
        View.End => "End",
        View.Isometric => "Isometric",
        View.Spread => "Plan, spread flat",
    };
}
