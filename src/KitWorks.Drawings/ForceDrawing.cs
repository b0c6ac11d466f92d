using KitWorks.Drawings.Forces;
using KitWorks.Drawings.Frames;
using KitWorks.Drawings.Paper;
using KitWorks.Geometry;
using KitWorks.Statics;
using KitWorks.Statics.Loads;

namespace KitWorks.Drawings;

/// <summary>Draws a frame with the forces in its struts: compression blue, tension orange, the wider the larger.</summary>
public static class ForceDrawing
{
    const double Margin = 6;

    /// <summary>The drawing of a frame under loads. The same frame, forces and options give the same text on every machine.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="members">The forces; a strut without one is drawn as an opening.</param>
    /// <param name="loads">The loads, whose hubs are marked; none by default.</param>
    /// <param name="options">What to show; a tier is left aside, since a frame bears its loads as a whole.</param>
    /// <returns>An SVG document, or a refusal for a width that cannot be.</returns>
    public static Outcome<string> Draw(Frame frame, IReadOnlyList<MemberForce> members, IReadOnlyList<NodeLoad>? loads, DrawingOptions options)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(members);
        ArgumentNullException.ThrowIfNull(options);
        if (SheetWidth.Fault(options.Width) is { } refusal) return refusal;
        var width = options.Width.Millimetres;
        var projection = Projection.Of(frame, options.View);
        var headline = new Headline(frame, options with { Tier = null, Title = options.Title ?? $"Forces in a {ShelterName.Of(frame.Shelter)}" });
        var window = Window.Fit(frame, projection, null, new(Margin, Margin + headline.Height), width - 2 * Margin);
        var scene = new ForceScene(frame, members, loads ?? [], projection, options.View, window.ToPaper);
        var legend = new ForceLegend(scene, width - 2 * Margin);

        var sheet = Svg.Sheet(width, window.Bottom + 4 + legend.Height + Margin, headline.Title, $"{headline.Description} · {legend.Summary}");
        var drawing = Svg.Group("drawing", ("font-family", Ink.Font), ("fill", Ink.Dark));
        drawing.Add(headline.Draw(new(Margin, Margin)), scene.Draw(), legend.Draw(new(Margin, window.Bottom + 4)));
        sheet.Add(drawing);
        return Svg.Write(sheet);
    }
}
