using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Statics;

namespace KitWorks.Kits;

/// <summary>Makes the openings of a design, where they can be cut from pipe and leave a frame that can stand.</summary>
static class Opened
{
    const string Code = "opening.impossible";

    /// <summary>The opened frame, or a refusal whose fields are relative to the design.</summary>
    public static Outcome<OpenedFrame> Of(Frame frame, Design design, HubSystem hubs)
    {
        if (!OpenedFrame.Of(frame, design.Openings).Succeeds(out var opened, out var refusal)) return refusal;
        if (opened.Openings.IsEmpty) return opened;
        foreach (var opening in opened.Openings)
            if (TooShort(opened.Frame, opening, hubs) is { } cutMm)
                return Refusal.OfField(Code, "openings",
                    $"A piece of the {(opening.Opening is Door door ? $"door at stake {door.Stake}" : "vent")} would be cut to {cutMm:0.#} mm; {StrutTyping.ShortestStrutMm} mm is the least. Put it elsewhere, or make the shelter larger.");
        var loose = Truss.Of(opened.Frame, AnySection, BaseSupport.Pinned).Value.Mechanisms;
        return loose.IsEmpty
            ? opened
            : Refusal.OfField(Code, "openings", $"With these openings the frame cannot stand, not even staked: hubs can move without any strut changing length. {loose[0].Detail} Leave an opening out, or move it.");
    }

    /// <summary>Whether a frame is loose does not depend on its struts.</summary>
    static readonly Section AnySection = new() { AreaMm2 = 1, SecondMomentMm4 = 1, ModulusMPa = 1 };

    static double? TooShort(Frame frame, FramedOpening opening, HubSystem hubs)
    {
        var cuts = opening.Posts.Concat(opening.Sills).Select(id => frame.Struts[id].SpacingMm - 2 * hubs.Allowance.Millimetres).ToList();
        return cuts.Count > 0 && cuts.Min() < StrutTyping.ShortestStrutMm ? cuts.Min() : null;
    }
}
