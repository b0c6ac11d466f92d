using System.Collections.Immutable;

namespace KitWorks.Geometry;

/// <summary>A frame with its openings made and framed. Without openings it is the frame as it was.</summary>
/// <param name="Frame">The frame: what is left out is not in it, and the posts, feet and sills of its doors are.</param>
/// <param name="Openings">The openings: doors by stake, then vents by panel, however they were given.</param>
public sealed record OpenedFrame(Frame Frame, ImmutableArray<FramedOpening> Openings)
{
    /// <summary>The most openings to one shelter.</summary>
    public const int MostOpenings = 8;

    /// <summary>The struts that lie double around openings, by id.</summary>
    public IEnumerable<int> Doubled => Openings.SelectMany(o => o.Doubled);

    /// <summary>The triangles that shut every opening, so that what leans on a closed flap can be brought to the hubs around.</summary>
    public IEnumerable<Panel> Shut => Openings.SelectMany(o => o.Shut);

    /// <summary>Makes the openings of a frame and frames them.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="openings">The openings; no two may share a hub.</param>
    /// <returns>The frame, or a refusal with fields such as <c>openings/0/stake</c>. Whether it stands is for statics to say.</returns>
    public static Outcome<OpenedFrame> Of(Frame frame, IReadOnlyList<Opening>? openings)
    {
        ArgumentNullException.ThrowIfNull(frame);
        if (openings is null or []) return new OpenedFrame(frame, []);
        if (openings.Count > MostOpenings)
            return Refusal.OfField(OpeningPlace.Code, "openings", $"{openings.Count} openings are too many; {MostOpenings} are the most.");
        var places = new List<OpeningPlace>();
        var around = new Around(frame);
        for (var i = 0; i < openings.Count; i++)
        {
            if (!OpeningPlace.Of(frame, around, openings[i], places).Under($"openings/{i}").Succeeds(out var place, out var refusal)) return refusal;
            places.Add(place);
        }
        // One order, so that the same openings make the same frame.
        return new OpenedFraming(frame, [.. places.OrderBy(p => p.Opening is Door ? 0 : 1).ThenBy(p => p.Number)]).Open();
    }
}

/// <summary>One opening as it was made. Ids are those of the opened frame.</summary>
public sealed record FramedOpening
{
    /// <summary>What was asked for, with its place filled in.</summary>
    public required Opening Opening { get; init; }

    /// <summary>The nodes around what is open, counter-clockwise seen from outside; of a door the two feet come first.</summary>
    public required ImmutableArray<int> Edge { get; init; }

    /// <summary>Struts that are left out.</summary>
    public required int StrutsLeftOut { get; init; }

    /// <summary>Hubs that are left out: of a door 1, of a vent none.</summary>
    public required int HubsLeftOut { get; init; }

    /// <summary>Panels that are left out; those that take the place of some are in the frame.</summary>
    public required int PanelsLeftOut { get; init; }

    /// <summary>The posts of a door, by strut id: the left one seen from outside, then the right one.</summary>
    public ImmutableArray<int> Posts { get; init; } = [];

    /// <summary>The struts that join a door's feet to the base ring, by id, in the same order.</summary>
    public ImmutableArray<int> Sills { get; init; } = [];

    /// <summary>The struts that lie double, by id: of a door those over it, of a vent those around it.</summary>
    public required ImmutableArray<int> Doubled { get; init; }

    /// <summary>Triangles that shut it, counter-clockwise seen from outside; they are not among the frame's panels and are of no kind.</summary>
    public required ImmutableArray<Panel> Shut { get; init; }

    /// <summary>Between the node centres of its posts; of a vent, the width of the largest round hole in it.</summary>
    public required double ClearWidthMm { get; init; }

    /// <summary>From its feet to the node centres over it, of a peaked door to the peak; of a vent as its width.</summary>
    public required double ClearHeightMm { get; init; }
}
