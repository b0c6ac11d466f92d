using KitWorks.Drawings.Paper;
using KitWorks.Geometry;

namespace KitWorks.Drawings.Frames;

/// <summary>
/// The part of a sheet that holds the picture. The scale is that of the whole frame, so that the pictures of all tiers
/// match; the height is cut to what is drawn.
/// </summary>
sealed class Window
{
    /// <summary>Room around the nodes for hubs and half struts.</summary>
    const double Edge = 2;

    /// <summary>A picture is at most this much higher than wide.</summary>
    const double Tallest = 1.1;

    readonly double scale;
    readonly Spot origin;

    Window(double scale, Spot origin, Spot low, Spot high) => (this.scale, this.origin, Low, High) = (scale, origin, low, high);

    /// <summary>The upper left corner of what is drawn, through node centres.</summary>
    public Spot Low { get; }

    /// <summary>The lower right corner.</summary>
    public Spot High { get; }

    public double Bottom => High.Y + Edge;

    public double WidthMm => (High.X - Low.X) / scale;

    public double HeightMm => (High.Y - Low.Y) / scale;

    public Spot ToPaper(Spot place) => new(origin.X + place.X * scale, origin.Y - place.Y * scale);

    public static Window Fit(Frame frame, Projection projection, int? tier, Spot at, double width)
    {
        var all = frame.Nodes.Select(n => projection[n.Id]).ToList();
        var drawn = frame.Nodes.Where(n => tier is null || n.Tier <= tier).Select(n => projection[n.Id]).ToList();
        var (left, right) = (all.Min(p => p.X), all.Max(p => p.X));
        var (wide, high) = (right - left, all.Max(p => p.Y) - all.Min(p => p.Y));
        var scale = Math.Min((width - 2 * Edge) / Math.Max(wide, 1e-6), (width * Tallest - 2 * Edge) / Math.Max(high, 1e-6));
        var top = drawn.Max(p => p.Y);
        var origin = new Spot(at.X + width / 2 - (left + right) / 2 * scale, at.Y + Edge + top * scale);
        var window = new Window(scale, origin, default, default);
        var low = window.ToPaper(new(drawn.Min(p => p.X), top));
        var far = window.ToPaper(new(drawn.Max(p => p.X), drawn.Min(p => p.Y)));
        return new(scale, origin, low, far);
    }
}
