using KitWorks.Geometry;

namespace KitWorks.Drawings.Paper;

/// <summary>How wide a sheet may be.</summary>
static class SheetWidth
{
    const double NarrowestMm = 60, WidestMm = 3000;

    /// <summary>The refusal of a width that cannot be; null for one that can.</summary>
    public static Refusal? Fault(Length width) => width.Millimetres is < NarrowestMm or > WidestMm
        ? Refusal.OfField("drawing.width-invalid", "width", $"A drawing is {NarrowestMm} mm to {WidestMm} mm wide, not {width}.")
        : null;
}
