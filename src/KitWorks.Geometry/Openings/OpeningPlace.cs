namespace KitWorks.Geometry;

/// <summary>Where an opening lies, in the ids of the frame before anything is taken out of it.</summary>
/// <param name="Opening">The opening, with its place filled in.</param>
/// <param name="Nodes">
/// The nodes around it, counter-clockwise seen from outside: of a vent the panel's; of a door the neighbours of the hub that is left out, from the base node on
/// its right to the one on its left.
/// </param>
/// <param name="Hub">The node that a door leaves out.</param>
/// <param name="Peak">The node over a peaked door.</param>
sealed record OpeningPlace(Opening Opening, int[] Nodes, int? Hub = null, int? Peak = null)
{
    public const string Code = "opening.place-invalid";

    /// <summary>Struts that meet at a base hub in whose place a door fits.</summary>
    const int WaysOfADoor = 4;

    IEnumerable<int> Taken => [.. Nodes, .. Hub is { } hub ? [hub] : Array.Empty<int>(), .. Peak is { } peak ? [peak] : Array.Empty<int>()];

    /// <summary>Finds the place of an opening among those that others have taken.</summary>
    public static Outcome<OpeningPlace> Of(Frame frame, Around around, Opening opening, IReadOnlyList<OpeningPlace> taken)
    {
        var (field, all) = opening switch
        {
            Door door => ("stake", Doors(frame, around, door)),
            Vent => ("panel", Vents(frame)),
            _ => throw new ArgumentOutOfRangeException(nameof(opening)),
        };
        var fitting = all.ToList();
        if (fitting.Count == 0)
            return Refusal.OfField(Code, "kind", opening is Door
                ? "This shelter has no base hub in whose place a door fits: one where four struts meet, with two hubs above it that are off the ground."
                : "This shelter has no panel that stands clear of the ground, and a vent is one.");
        var asked = opening switch { Door d => d.Stake, Vent v => v.Panel, _ => null };
        var free = fitting.Where(f => !taken.Any(t => t.Taken.Intersect(f.Taken).Any())).ToList();
        if (asked is null)
            return free.Count > 0 ? free[0] : Refusal.OfField(Code, field, "The other openings leave no room for this one: no two may share a hub. Leave one out.");
        if (fitting.FirstOrDefault(f => f.Number == asked) is not { } place) return Refusal.OfField(Code, field, WhatFits(frame, opening, asked.Value, fitting));
        return free.Contains(place)
            ? place
            : Refusal.OfField(Code, field, $"This opening shares hubs with another one. {(free.Count == 0 ? "There is no room for it; leave one out." : $"There is room at {Listed(free)}.")}");
    }

    /// <summary>Its stake or panel.</summary>
    public int Number => Opening switch { Door d => d.Stake ?? 0, Vent v => v.Panel ?? 0, _ => 0 };

    static string WhatFits(Frame frame, Opening opening, int asked, List<OpeningPlace> fitting) => opening is Door
        ? asked < 1 || asked > frame.Base.Length
            ? $"There is no stake {asked}; the stake-out has 1 to {frame.Base.Length}. A door fits at {Listed(fitting)}."
            : $"A door does not fit at stake {asked}: it takes the place of a base hub where {WaysOfADoor} struts meet. It fits at {Listed(fitting)}."
        : asked < 0 || asked >= frame.Panels.Length
            ? $"There is no panel {asked}; panels are 0 to {frame.Panels.Length - 1}. A vent fits at {Listed(fitting)}."
            : $"Panel {asked} stands on the ground, and a vent is clear of it. It fits at {Listed(fitting)}.";

    static string Listed(List<OpeningPlace> places) => string.Join(", ", places.Take(12).Select(p => p.Number)) + (places.Count > 12 ? $" and {places.Count - 12} more" : "");

    static IEnumerable<OpeningPlace> Doors(Frame frame, Around around, Door door)
    {
        for (var i = 0; i < frame.Base.Length; i++)
        {
            var hub = frame.Base[i];
            var (right, left) = (frame.Base[(i + 1) % frame.Base.Length], frame.Base[(i + frame.Base.Length - 1) % frame.Base.Length]);
            int[] ring = [.. around.From(hub, right)];
            if (ring.Length != WaysOfADoor || ring[^1] != left || frame.Nodes[ring[1]].Tier == 0 || frame.Nodes[ring[2]].Tier == 0) continue;
            int? peak = door.Top switch { DoorTop.Level => null, DoorTop.Peaked => around.LeftOf(ring[2], ring[1]) };
            // Seen from the middle of the ring a post stands between its neighbours on the ground, or it has no wall to stand in.
            if (door.Top == DoorTop.Peaked && (peak is null || frame.Nodes[peak.Value].Tier == 0) || !IsInOrder(frame, left, ring[2], ring[1], right)) continue;
            yield return new(door with { Stake = i + 1 }, ring, hub, peak);
        }
    }

    static bool IsInOrder(Frame frame, params ReadOnlySpan<int> leftToRight)
    {
        for (var i = 1; i < leftToRight.Length; i++)
        {
            var (a, b) = (frame.Nodes[leftToRight[i - 1]].Position, frame.Nodes[leftToRight[i]].Position);
            if (!(a.X * b.Y - a.Y * b.X > 0)) return false;
        }
        return true;
    }

    static IEnumerable<OpeningPlace> Vents(Frame frame)
    {
        double Height(Panel p) => frame.Nodes[p.A].Position.Z + frame.Nodes[p.B].Position.Z + frame.Nodes[p.C].Position.Z;
        bool IsClear(Panel p) => frame.Nodes[p.A].Tier > 0 && frame.Nodes[p.B].Tier > 0 && frame.Nodes[p.C].Tier > 0;
        return frame.Panels.Index().Where(p => IsClear(p.Item)).OrderByDescending(p => Math.Round(Height(p.Item), 6)).ThenBy(p => p.Index)
            .Select(p => new OpeningPlace(new Vent { Panel = p.Index }, [p.Item.A, p.Item.B, p.Item.C]));
    }
}
