using System.Collections.Immutable;
using System.Text.Json.Serialization;
using KitWorks.Geometry;
using KitWorks.Statics;
using KitWorks.Statics.Loads;

namespace KitWorks.Api.Contract;

/// <summary>A shelter's frame to be loaded, as clients send it.</summary>
sealed record StaticsBody(
    ShelterBody? Shelter, SectionBody? Section, string? Supports, NodeLoadBody[]? Loads, bool? SelfWeight, int[]? Without, OpeningBody[]? Openings)
{
    /// <summary>The frame that a request names, with the forces that act on it.</summary>
    public Outcome<LoadedFrame> ToLoadedFrame()
    {
        var faults = new Faults();
        var shelter = faults.Take("shelter", Shelter is null ? ShelterBody.Missing : Shelter.ToShelter());
        var openings = faults.Take("", OpeningBody.ToOpenings(Openings));
        var forces = faults.Take("", new ForcesBody(Section, Supports, Loads, SelfWeight, Without).ToForces());
        if (faults.Refusal is { } refusal) return refusal;
        return Frame.Build(shelter!).Under("shelter").Then(frame => OpenedFrame.Of(frame, openings)).Then(opened => forces!.On(opened.Frame));
    }
}

/// <summary>What the struts are, how the base stands and what loads it.</summary>
/// <param name="Section">The section of every strut.</param>
/// <param name="Supports"><c>pinned</c>: staked, held in all directions; <c>sliding</c>: held up only, so that the base ring takes the thrust.</param>
/// <param name="Loads">The forces; several on one node add up.</param>
/// <param name="SelfWeight">Whether the struts' weight is added, half to each end.</param>
/// <param name="Without">Ids of struts that are taken out, for a door or a vent.</param>
sealed record ForcesBody(SectionBody? Section, string? Supports, NodeLoadBody[]? Loads, bool? SelfWeight, int[]? Without)
{
    /// <summary>No door is wider; each strut taken out may be a mechanism, and each is explained.</summary>
    const int MostTakenOut = 200;

    public Outcome<Forces> ToForces()
    {
        var faults = new Faults();
        var section = faults.Take("section", Section is null ? SectionBody.Missing : Section.ToSection());
        var supports = faults.Choose("supports", Supports, null, ("pinned", BaseSupport.Pinned), ("sliding", BaseSupport.Sliding));
        if (Loads is null && SelfWeight is not true) faults.Add("loads", "Give the loads, such as [{\"node\": 0, \"zN\": -1000}], or selfWeight: true, or both.");
        foreach (var (i, load) in (Loads ?? []).Index())
            if (load.Node is null) faults.Add($"loads/{i}/node", "Name the node that is loaded, by its id in /api/frames.");
        if (SelfWeight is true && Section is { MassKgPerM: null })
            faults.Add("section/massKgPerM", "Self-weight needs the mass of one metre of strut in kilograms, such as 0.476: give section.massKgPerM, or selfWeight: false.");
        if (Without is { Length: > MostTakenOut }) faults.Add("without", $"{Without.Length} struts are taken out; {MostTakenOut} are the most.");
        return faults.Refusal is { } refusal
            ? refusal
            : new Forces(section!, supports!.Value, [.. (Loads ?? []).Select(l => l.ToLoad())], SelfWeight ?? false, [.. Without ?? []]);
    }
}

/// <summary>A strut's cross-section and material.</summary>
/// <param name="AreaMm2">Its area.</param>
/// <param name="SecondMomentMm4">Its least second moment of area.</param>
/// <param name="ModulusMPa">Young's modulus, in N/mm².</param>
/// <param name="MassKgPerM">The mass of one metre, which self-weight needs.</param>
sealed record SectionBody(double? AreaMm2, double? SecondMomentMm4, double? ModulusMPa, double? MassKgPerM)
{
    public static Outcome<Section> Missing =>
        Refusal.OfField("request.invalid", "", "Give the section: {\"areaMm2\": …, \"secondMomentMm4\": …, \"modulusMPa\": …}.") with { Errors = [] };

    public Outcome<Section> ToSection()
    {
        var faults = new Faults();
        if (AreaMm2 is null) faults.Add("areaMm2", "Give the area of the cross-section in mm².");
        if (SecondMomentMm4 is null) faults.Add("secondMomentMm4", "Give the least second moment of area in mm⁴.");
        if (ModulusMPa is null) faults.Add("modulusMPa", "Give Young's modulus in MPa, which is N/mm².");
        return faults.Refusal is { } refusal
            ? refusal
            : new Section { AreaMm2 = AreaMm2!.Value, SecondMomentMm4 = SecondMomentMm4!.Value, ModulusMPa = ModulusMPa!.Value, MassKgPerM = MassKgPerM };
    }
}

/// <summary>A force on one node, in newtons; a weight is a negative <c>zN</c>. A part left out is nothing.</summary>
sealed record NodeLoadBody(
    int? Node, [property: JsonPropertyName("xN")] double? XN, [property: JsonPropertyName("yN")] double? YN, [property: JsonPropertyName("zN")] double? ZN)
{
    public NodeLoad ToLoad() => new(Node!.Value, XN ?? 0, YN ?? 0, ZN ?? 0);
}

/// <summary>What loads a frame, whichever frame it is.</summary>
sealed record Forces(Section Section, BaseSupport Support, ImmutableArray<NodeLoad> Loads, bool SelfWeight, ImmutableArray<int> Without)
{
    public Outcome<LoadedFrame> On(Frame frame)
    {
        if (!Truss.Of(frame, Section, Support, Without).Succeeds(out var truss, out var refusal)) return refusal;
        var loads = Loads;
        if (SelfWeight)
        {
            if (!new DeadLoad { HubKg = 0, CoverKgPerM2 = 0 }.On(truss.Model, Section).Succeeds(out var dead, out refusal)) return refusal;
            loads = [.. loads, .. dead.Loads];
        }
        if (!truss.Mechanisms.IsEmpty) return new LoadedFrame(frame, truss, loads, null);
        return truss.Solve(loads).Select(result => new LoadedFrame(frame, truss, loads, result));
    }
}

/// <summary>A frame under its loads; without a result where it is a mechanism.</summary>
sealed record LoadedFrame(Frame Frame, TrussAnalysis Truss, ImmutableArray<NodeLoad> Loads, TrussResult? Result);
