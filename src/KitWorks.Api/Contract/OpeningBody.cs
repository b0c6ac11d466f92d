using KitWorks.Geometry;

namespace KitWorks.Api.Contract;

/// <summary>A door or a vent as clients send it.</summary>
/// <param name="Kind">
/// <c>door</c>: one base hub where four struts meet is left out, and two plumb posts stand in its place. <c>vent</c>: one panel
/// off the ground stays open, and the struts around it lie double.
/// </param>
/// <param name="Stake">For a door: the base hub that it takes the place of, by its number on the stake-out of the shelter without openings; left out for the first that will do.</param>
/// <param name="Top">For a door: <c>level</c> (default), the strut over it doubled; or <c>peaked</c>, that strut left out and the two above doubled, which gives more height.</param>
/// <param name="Panel">For a vent: the panel's place, from 0, in the answer of /api/frames without openings; left out for the topmost that will do.</param>
sealed record OpeningBody(string? Kind, int? Stake, string? Top, int? Panel)
{
    /// <summary>The openings, or every fault of each, its fields under <c>openings/0</c> and so on.</summary>
    public static Outcome<Opening[]> ToOpenings(OpeningBody[]? bodies)
    {
        var faults = new Faults();
        if (bodies is { Length: > OpenedFrame.MostOpenings }) faults.Add("openings", $"{bodies.Length} openings are too many; {OpenedFrame.MostOpenings} are the most.");
        var openings = (bodies ?? []).Take(OpenedFrame.MostOpenings)
            .Select((body, i) => faults.Take($"openings/{i}", body.ToOpening())).ToList();
        return faults.Refusal is { } refusal ? refusal : openings.Select(o => o!).ToArray();
    }

    Outcome<Opening> ToOpening()
    {
        var faults = new Faults();
        var isDoor = faults.Choose("kind", Kind, null, ("door", true), ("vent", false));
        var top = faults.Choose("top", Top, DoorTop.Level, ("level", DoorTop.Level), ("peaked", DoorTop.Peaked));
        if (isDoor is true && Panel is not null) faults.Add("panel", "Only a vent has this; a door has a stake.");
        if (isDoor is false && Stake is not null) faults.Add("stake", "Only a door has this; a vent has a panel.");
        if (isDoor is false && Top is not null) faults.Add("top", "Only a door has this; leave it out.");
        if (faults.Refusal is { } refusal) return refusal;
        return isDoor!.Value ? new Door { Stake = Stake, Top = top!.Value } : new Vent { Panel = Panel };
    }
}

/// <summary>A door or a vent of a kit.</summary>
/// <param name="Kind"><c>door</c> or <c>vent</c>.</param>
/// <param name="Stake">The place of a door, on the stake-out of the shelter without openings; null for a vent.</param>
/// <param name="Feet">The numbers of a door's two feet on the stake-out of the kit; null for a vent.</param>
/// <param name="Top">What is over a door, <c>level</c> or <c>peaked</c>; null for a vent.</param>
/// <param name="Panel">The panel that is a vent, in the frame without openings; null for a door.</param>
/// <param name="ClearWidthMm">Between the node centres of the posts; of a vent, the width of the largest round hole in it.</param>
/// <param name="ClearHeightMm">From the ground to the node centres over it, of a peaked door to the peak; of a vent as its width.</param>
/// <param name="LeftOut">What is not in the kit because of it.</param>
/// <param name="Frame">What frames it: posts, sills, and the second of struts that lie double. All of it is counted in the kit.</param>
sealed record OpeningAnswer(
    string Kind, int? Stake, int[]? Feet, string? Top, int? Panel, double ClearWidthMm, double ClearHeightMm, LeftOutAnswer LeftOut, IEnumerable<FramePieceAnswer> Frame)
{
    public static OpeningAnswer Of(FramedOpening o, Kits.Kit kit)
    {
        var (door, vent) = (o.Opening as Door, o.Opening as Vent);
        string CodeOf(int strut) => kit.TypeOfFamily(kit.Frame.Struts[strut].Family).Code;
        var pieces = new[] { ("post", o.Posts), ("sill", o.Sills), ("doubled", o.Doubled) }
            .SelectMany(p => p.Item2.GroupBy(CodeOf).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => new FramePieceAnswer(p.Item1, g.Key, g.Count())));
        return new(
            door is null ? "vent" : "door", door?.Stake, door is null ? null : [.. o.Edge.Take(2).Select(n => kit.Frame.Base.IndexOf(n) + 1)],
            door is null ? null : door.Top == DoorTop.Peaked ? "peaked" : "level",
            vent?.Panel, Math.Round(o.ClearWidthMm, 3), Math.Round(o.ClearHeightMm, 3), new(o.HubsLeftOut, o.StrutsLeftOut, o.PanelsLeftOut), pieces);
    }
}

/// <summary>What an opening leaves out.</summary>
sealed record LeftOutAnswer(int Hubs, int Struts, int Panels);

/// <summary>Pieces that frame an opening.</summary>
/// <param name="Part"><c>post</c>, <c>sill</c> or <c>doubled</c>.</param>
/// <param name="Code">The strut type.</param>
/// <param name="Count">How many.</param>
sealed record FramePieceAnswer(string Part, string Code, int Count);
