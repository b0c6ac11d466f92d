using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Statics.Loads;

/// <summary>
/// The loads that a shelter is screened for, and their combinations: dead; dead + person at each hub; dead + snow; dead + one-sided snow; dead + wind;
/// <see cref="DeadAgainstUplift"/>·dead + inflating wind. The form is that of allowable-stress combinations in ASCE 7, chapter 2.
/// </summary>
public sealed record LoadSet
{
    /// <summary>What the shop calls it.</summary>
    public string Name { get; init; } = "standard";

    /// <summary>What the shelter weighs.</summary>
    public DeadLoad Dead { get; init; } = new();

    /// <summary>The weight or pull of a person at one hub, straight down, in newtons: 0 to 100,000; 1,000 by default, an assumption. Null leaves it out.</summary>
    public double? PersonN { get; init; } = 1000;

    /// <summary>The snow; null where there is none.</summary>
    public SnowLoad? Snow { get; init; }

    /// <summary>The wind; null where there is none.</summary>
    public WindLoad? Wind { get; init; }

    /// <summary>The directions that wind and drifting snow blow to, in degrees from x towards y; 0, 90, 180 and 270 by default.</summary>
    public ImmutableArray<double> DirectionsDeg { get; init; } = [0, 90, 180, 270];

    /// <summary>The factor on wind: 0 to 2; 0.6 by default, from a strength-level speed to an allowable-stress one.</summary>
    public double WindFactor { get; init; } = 0.6;

    /// <summary>The factor on the dead load where it holds a shelter down: 0 to 1; 0.6 by default.</summary>
    public double DeadAgainstUplift { get; init; } = 0.6;

    /// <summary>All the cases of the set on a structure.</summary>
    /// <param name="model">The structure.</param>
    /// <param name="section">The section of its members, with its mass.</param>
    /// <param name="hubs">The hubs that a person pulls at, where some stand for others that are like them; null for all off the ground.</param>
    /// <returns>The cases, or a refusal with fields such as <c>personN</c>, <c>snow/groundPa</c> and <c>section/massKgPerM</c>.</returns>
    public Outcome<ImmutableArray<LoadCase>> On(TrussModel model, Section section, IEnumerable<int>? hubs = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (!Live(model, hubs).Succeeds(out var live, out var refusal)) return refusal;
        if (!Dead.On(model, section).Succeeds(out var dead, out refusal)) return refusal;
        return live.Select(c => c.Live.With(dead, c.LightDead ? DeadAgainstUplift : 1)).ToImmutableArray();
    }

    /// <summary>The cases without the dead load that belongs to each; that of self-weight is empty.</summary>
    internal Outcome<ImmutableArray<SetCase>> Live(TrussModel model, IEnumerable<int>? hubs = null)
    {
        if (Range.Fault(("personN", PersonN, 0, 100_000), ("windFactor", WindFactor, 0, 2), ("deadAgainstUplift", DeadAgainstUplift, 0, 1)) is { } refusal) return refusal;
        var cases = ImmutableArray.CreateBuilder<SetCase>();
        cases.Add(new(new("self-weight", LoadDuration.Lasting, [])));
        if (PersonN is { } person)
            foreach (var load in LoadCase.EachHub(model, new(0, 0, -person), hubs: hubs)) cases.Add(new(load));
        foreach (var further in Further(model))
        {
            if (!further.Succeeds(out var added, out refusal)) return refusal;
            cases.Add(added);
        }
        return cases.ToImmutable();
    }

    IEnumerable<Outcome<SetCase>> Further(TrussModel model)
    {
        if (Snow is not null) yield return Snow.Balanced(model).Select(c => new SetCase(c, IsByArea: true));
        foreach (var direction in DirectionsDeg)
        {
            if (Snow is not null) yield return Snow.OneSided(model, direction).Select(c => new SetCase(c, IsByArea: true));
            if (Wind is null) continue;
            yield return Wind.On(model, direction, inflated: false).Select(c => new SetCase(c.Times(WindFactor), IsByArea: true));
            yield return Wind.On(model, direction, inflated: true).Select(c => new SetCase(c.Times(WindFactor), IsByArea: true, LightDead: true));
        }
    }
}

/// <summary>One case of a load set, without its dead load.</summary>
/// <param name="Live">The forces.</param>
/// <param name="LightDead">Whether <see cref="LoadSet.DeadAgainstUplift"/> holds for the dead load.</param>
/// <param name="IsByArea">Whether the forces are as the cover's area; otherwise they are the same on a larger shelter.</param>
readonly record struct SetCase(LoadCase Live, bool LightDead = false, bool IsByArea = false);
