using KitWorks.Drawings;
using KitWorks.Geometry;
using KitWorks.Kits;

namespace KitWorks.Labels;

/// <summary>Says how one opening of a kit is made, and when.</summary>
sealed class OpeningWords(Kit kit, FramedOpening opening, Units units)
{
    public GuideOpening Write() => opening.Opening switch
    {
        Door door => Door(door.Top),
        _ => Vent(),
    };

    GuideOpening Door(DoorTop top)
    {
        var (left, right) = (StakeOf(opening.Edge[0]), StakeOf(opening.Edge[1]));
        var heads = opening.Posts.Select(TierOf).Max();
        var doubled = top == DoorTop.Level
            ? $"Over the posts the strut {Codes(opening.Doubled)} lies double: tie its twin beside it when you close tier {TierOf(opening.Doubled[0])}."
            : $"Over the posts no strut goes across: two struts, {Codes(opening.Doubled)}, rise to the peak and lie double. Tie the twin of each beside it when you close tier {opening.Doubled.Select(TierOf).Max()}.";
        return new(
            $"Door between stakes {left} and {right}: {Measure.Part(opening.ClearWidthMm, units)} wide, {Measure.Part(opening.ClearHeightMm, units)} high between node centres",
            LeftOut(),
            $"Tier 0: no strut of the ring goes from {left} to {right}. A foot stands at each of the two; the sills beside them, {Codes(opening.Sills)}, end there. "
            + $"Tier {heads}: stand a post on each foot, {Codes(opening.Posts)}, plumb, and tie its head to the hub above. Stake the feet well: set down without stakes, a frame with a door can give. "
            + doubled);
    }

    GuideOpening Vent()
    {
        var tier = opening.Doubled.Max(TierOf);
        return new(
            $"Vent in tier {tier}: a triangle, {Measure.Part(opening.ClearWidthMm, units)} across between node centres",
            LeftOut(),
            $"When you close tier {tier}, tie a second strut beside each of the three around it: {Codes(opening.Doubled)}. "
            + "The edge of the cover is tied to the outer ones; a flap can hang from the inner ones and be tied down in wind.");
    }

    string LeftOut() => opening.HubsLeftOut == 0
        ? "Left out: one panel. No strut is left out."
        : $"Left out: one hub, {opening.StrutsLeftOut} struts and {opening.PanelsLeftOut} panels.";

    int StakeOf(int node) => kit.Frame.Base.IndexOf(node) + 1;

    int TierOf(int strut) => kit.Frame.Struts[strut].Tier;

    string Codes(IEnumerable<int> struts) => string.Join(" and ", struts.Select(id => kit.TypeOfFamily(kit.Frame.Struts[id].Family).Code)
        .CountBy(code => code).OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => c.Value == 1 ? c.Key : $"{c.Value} × {c.Key}"));
}
