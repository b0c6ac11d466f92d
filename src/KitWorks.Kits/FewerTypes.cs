using KitWorks.Geometry;
using KitWorks.Kits.Catalog;

namespace KitWorks.Kits;

/// <summary>Fits a frame to the most strut types that a customer accepts, within the slack of the shop's joints.</summary>
static class FewerTypes
{
    /// <summary>The frame with at most so many families, and a warning that says what it costs.</summary>
    public static Outcome<(Frame Frame, Warning Warning)> Of(Frame frame, int most, Workshop workshop)
    {
        if (!FewestLengths.Of(frame, most).Succeeds(out var fewer, out var refusal)) return refusal;
        if (fewer.WorstMisfitMm <= workshop.JointSlack.Millimetres)
            return (fewer.Frame, new Warning("design.fewer-lengths",
                $"{fewer.Frame.Families.Length} strut lengths instead of {frame.Families.Length}: hubs stand up to {fewer.WorstMoveMm:0} mm from their places, and struts fit within {fewer.WorstMisfitMm:0.0} mm; the joints take up {workshop.JointSlack}.{Stopped(fewer)}"));
        return FewestLengths.Within(frame, workshop.JointSlack).Succeeds(out var fewest, out refusal)
            ? Refusal.OfField("design.strut-types", "maxStrutTypes",
                $"{most} strut types leave gaps of up to {fewer.WorstMisfitMm:0.0} mm, and the joints take up {workshop.JointSlack}; {fewest.Frame.Families.Length} is the fewest for this design.{Stopped(fewest)}")
            : refusal;
    }

    static string Stopped(FewerLengths found) => found.WorkRanOut ? " This is the best found within the search's limit of work; a longer search may find better." : "";
}
