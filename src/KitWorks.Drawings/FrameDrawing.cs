using KitWorks.Drawings.Frames;
using KitWorks.Drawings.Paper;
using KitWorks.Geometry;
using KitWorks.Kits;

namespace KitWorks.Drawings;

/// <summary>Draws a frame with its strut types' tags and codes, as SVG.</summary>
public static class FrameDrawing
{
    const double Margin = 6, DimensionRoom = 9;

    /// <summary>The drawing of a frame. The same frame and options give the same text on every machine.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="options">What to show of it.</param>
    /// <param name="strutTypes">
    /// The strut types of its kit, which tell tags and cut lengths; without them each family of the frame takes a code and a
    /// tag of the default palette, and the lengths are spacings.
    /// </param>
    /// <returns>An SVG document, or a refusal for a tier or a width that cannot be.</returns>
    /// <exception cref="ArgumentException">The strut types are not those of the frame.</exception>
    public static Outcome<string> Draw(Frame frame, DrawingOptions options, IReadOnlyList<StrutType>? strutTypes = null)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(options);
        if (Fault(frame, options) is { } refusal) return refusal;
        var (units, view, width) = (options.Units, options.View, options.Width.Millimetres);
        var marks = Marks.For(frame, strutTypes);
        var projection = Projection.Of(frame, view);
        var headline = new Headline(frame, options);

        var measured = view is View.Plan or View.Side or View.End;
        var room = measured ? DimensionRoom : 0;
        var window = Window.Fit(frame, projection, options.Tier, new(Margin + room, Margin + headline.Height), width - 2 * Margin - room);
        var scene = Scene.Of(frame, marks, projection, view, options.Tier, options.Openings, window.ToPaper);
        var codes = Codes.Place(scene);
        var legend = new Legend(scene, marks, units, width - 2 * Margin, Notes.For(scene, codes, view, options.Tier));

        var legendTop = window.Bottom + room + 4;
        if (options.IsPlain)
        {
            var picture = Svg.Sheet(width, window.Bottom + Margin, headline.Title, headline.Description);
            picture.Add(SceneInk.Draw(scene));
            return Svg.Write(picture);
        }
        var sheet = Svg.Sheet(width, legendTop + legend.Height + Margin, headline.Title, headline.Description);
        var drawing = Svg.Group("drawing", ("font-family", Ink.Font));
        drawing.Add(headline.Draw(new(Margin, Margin)), SceneInk.Draw(scene), codes.Draw());
        if (measured)
        {
            var (low, high) = (window.Low, window.High);
            drawing.Add(
                DimensionLines.Along(new(low.X, high.Y), new(high.X, high.Y), window.Bottom + room - 4, Measure.Whole(window.WidthMm, units)),
                DimensionLines.Up(new(low.X, high.Y), new(low.X, low.Y), Margin + 2.5, Measure.Whole(window.HeightMm, units)));
        }
        drawing.Add(legend.Draw(new(Margin, legendTop)));
        sheet.Add(drawing);
        return Svg.Write(sheet);
    }

    static Refusal? Fault(Frame frame, DrawingOptions options)
    {
        if (options.Tier is { } tier && (tier < 0 || tier >= frame.TierCount))
            return Refusal.OfField("drawing.tier-invalid", "tier", $"There is no tier {tier}; this shelter has tiers 0 to {frame.TierCount - 1}.");
        return SheetWidth.Fault(options.Width);
    }
}
