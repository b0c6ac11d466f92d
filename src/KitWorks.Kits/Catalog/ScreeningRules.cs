using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Statics;
using KitWorks.Statics.Checks;
using KitWorks.Statics.Loads;

namespace KitWorks.Kits.Catalog;

/// <summary>What a shop's shelters are screened for, and what they are held to. Every number has a default, which is stated where it stands.</summary>
public sealed record ScreeningRules
{
    const string Code = "catalog.screening-invalid";
    const int MostSets = 12, MostDirections = 16;

    /// <summary>
    /// The load sets, 0 to 12; the first is taken where a design names none, and without one nothing is screened. By default one, of a person's pull at one hub.
    /// Their dead load is the kit's own and cannot be set here.
    /// </summary>
    public ImmutableArray<LoadSet> LoadSets { get; init; } = [new()];

    /// <summary>What shelters are held to. The tie and how many hold an end come from the hub system and cannot be set here.</summary>
    public Criteria Criteria { get; init; } = new();

    /// <summary>
    /// The most stakes that a kit has for one base hub, where the screening asks for more than the hub system gives: 0 to 20; 4 by default, for stakes
    /// side by side share their ground (common practice, no source). 0 leaves it at what the hub system gives.
    /// </summary>
    public int MostStakesPerHub { get; init; } = 4;

    /// <summary>The refusal of rules that no shelter could be screened by, its fields relative to the rules; null where they are in order.</summary>
    public Refusal? Fault()
    {
        if (LoadSets.IsDefault || LoadSets.Length > MostSets) return Refusal.OfField(Code, "loadSets", $"Give 0 to {MostSets} load sets.");
        if (Criteria is null) return Refusal.OfField(Code, "criteria", "Give the criteria, or leave them out for the defaults.");
        if (Criteria.TieRatedN is not null) return Refusal.OfField(Code, "criteria/tieRatedN", "The hub system says which tie is used; leave this out.");
        if (Criteria.TiesPerEnd != 1) return Refusal.OfField(Code, "criteria/tiesPerEnd", "The hub system says how many ties hold an end; leave this out.");
        if (MostStakesPerHub is < 0 or > 20) return Refusal.OfField(Code, "mostStakesPerHub", $"The most stakes at a hub are 0 to 20, not {MostStakesPerHub}.");
        return LoadSets.Select((set, i) => Fault(set, i)?.Under($"loadSets/{i}")).FirstOrDefault(f => f is not null) ?? FaultOf(new LoadSet(), Criteria);
    }

    Refusal? Fault(LoadSet? set, int place)
    {
        if (set is null || string.IsNullOrWhiteSpace(set.Name) || set.Name.Length > 40) return Refusal.OfField(Code, "name", "Give the load set a name of 1 to 40 characters.");
        if (LoadSets.Take(place).Any(s => s.Name == set.Name)) return Refusal.OfField(Code, "name", $"Two load sets are called '{set.Name}'.");
        if (set.Dead != new DeadLoad()) return Refusal.OfField(Code, "dead", "A kit's own parts say what it weighs; leave this out.");
        if (set.DirectionsDeg.IsDefault || set.DirectionsDeg.Length > MostDirections || !set.DirectionsDeg.All(d => d is >= -360 and <= 360))
            return Refusal.OfField(Code, "directionsDeg", $"Give 0 to {MostDirections} directions from −360 to 360 degrees.");
        return FaultOf(set, new());
    }

    /// <summary>The limits of every number are those of the screening itself: the smallest dome is screened, and what is refused is told.</summary>
    static Refusal? FaultOf(LoadSet set, Criteria criteria)
    {
        var frame = Frame.Build(new Dome { Lattice = Lattice.Class1(1), Cut = Cut.Rows(2), Size = new Size.Radius(Length.FromMillimetres(1000)) }).Value;
        return Screening.Of(frame, Section.Tube(30, 3, 3000).Value with { MassKgPerM = 0.5 }, set, criteria).Refusal;
    }
}
