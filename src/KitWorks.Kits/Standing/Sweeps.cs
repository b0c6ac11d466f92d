using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Serialization;
using KitWorks.Geometry;
using KitWorks.Statics.Checks;
using KitWorks.Statics.Loads;

namespace KitWorks.Kits.Standing;

/// <summary>
/// Sweeps of frames. Frames of one shape answer alike at any size, so the shape is solved at one size of ours and scaled, and the latest shapes are
/// remembered. What is answered does not depend on what is remembered.
/// </summary>
static class Sweeps
{
    /// <summary>Room for the answers that are remembered, in numbers of eight bytes: 16 MB; with their frames some four times that.</summary>
    const long Room = 2_000_000;

    /// <summary>How far two frames may lie apart, over their length, and still be of one shape: rounding only.</summary>
    const double SameShape = 1e-9;

    static readonly Length OurSize = Length.FromMillimetres(5000);

    static readonly JsonSerializerOptions Exact = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals, IncludeFields = true };

    static readonly ConcurrentDictionary<string, (Frame Frame, Sweep Sweep)> solved = new(StringComparer.Ordinal);

    static long used;

    public static Outcome<Sweep> Of(OpenedFrame opened, LoadSet loads)
    {
        loads = loads with { Dead = new() };
        Shelter shelter = opened.Frame.Shelter is Dome dome ? dome with { Size = new Size.Radius(OurSize) } : opened.Frame.Shelter with { Size = new Size.LongSide(OurSize) };
        var openings = opened.Openings.Select(o => o.Opening).ToList();
        var key = JsonSerializer.Serialize((shelter, openings, loads), Exact);
        if (!solved.TryGetValue(key, out var found))
        {
            if (!Frame.Build(shelter).Then(frame => OpenedFrame.Of(frame, openings)).Succeeds(out var ours, out _)) return Solved(opened, loads);
            if (ScaleOf(ours.Frame, opened.Frame) is null) return Solved(opened, loads);
            if (!Solved(ours, loads).Succeeds(out var sweep, out var refusal)) return refusal;
            found = (ours.Frame, sweep);
            Remember(key, found);
        }
        return ScaleOf(found.Frame, opened.Frame) is { } scale ? found.Sweep.Scaled(scale) : Solved(opened, loads);
    }

    static Outcome<Sweep> Solved(OpenedFrame opened, LoadSet loads) => Sweep.Of(opened.Frame, loads, shut: [.. opened.Shut], doubled: opened.Doubled);

    static void Remember(string key, (Frame Frame, Sweep Sweep) found)
    {
        if (Interlocked.Add(ref used, found.Sweep.Room) > Room)
        {
            solved.Clear();
            Interlocked.Exchange(ref used, found.Sweep.Room);
        }
        solved[key] = found;
    }

    /// <summary>How many times larger another frame is; null where it is of another shape, as one of fewer lengths is.</summary>
    static double? ScaleOf(Frame ours, Frame other)
    {
        var scale = other.Dimensions.LengthMm / ours.Dimensions.LengthMm;
        var near = SameShape * other.Dimensions.LengthMm;
        if (ours.Nodes.Length != other.Nodes.Length || ours.Struts.Length != other.Struts.Length) return null;
        for (var n = 0; n < ours.Nodes.Length; n++)
            if (!((ours.Nodes[n].Position * scale - other.Nodes[n].Position).Norm <= near)) return null;
        for (var s = 0; s < ours.Struts.Length; s++)
            if (ours.Struts[s].From != other.Struts[s].From || ours.Struts[s].To != other.Struts[s].To) return null;
        return scale;
    }
}
