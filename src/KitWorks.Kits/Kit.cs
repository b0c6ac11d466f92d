using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Packing;
using KitWorks.Kits.Standing;

namespace KitWorks.Kits;

/// <summary>Everything packed for one shelter. A value, computed once and kept with the order.</summary>
public sealed partial record Kit
{
    /// <summary>The version of the rules that made it.</summary>
    public const string EngineVersion = "1.0";

    /// <summary>The same for the same design: 16 hexadecimal digits.</summary>
    public required string DesignId { get; init; }

    /// <summary>The version of the rules that made this kit.</summary>
    public required string Engine { get; init; }

    /// <summary>What was asked for.</summary>
    public required Design Design { get; init; }

    /// <summary>The geometry, with its openings made.</summary>
    public required Frame Frame { get; init; }

    /// <summary>The sums.</summary>
    public required KitTotals Totals { get; init; }

    /// <summary>The doors and vents: doors by stake, then vents by panel. What they leave out is not in the frame; their posts, feet and sills are.</summary>
    public ImmutableArray<FramedOpening> Openings { get; init; } = [];

    /// <summary>The stakes of each base hub, in the order of the frame's base; empty in kits made before stakes followed the screening.</summary>
    public ImmutableArray<int> StakesAt { get; init; } = [];

    /// <summary>The strut types, from the shortest.</summary>
    public required ImmutableArray<StrutType> StrutTypes { get; init; }

    /// <summary>The hubs, by ways and degree.</summary>
    public required ImmutableArray<HubType> HubTypes { get; init; }

    /// <summary>The stages of building, from the ground up.</summary>
    public required ImmutableArray<Tier> Tiers { get; init; }

    /// <summary>The kinds of cover panel.</summary>
    public required ImmutableArray<PanelType> PanelTypes { get; init; }

    /// <summary>What the kit takes from stock.</summary>
    public required ImmutableArray<Part> Parts { get; init; }

    /// <summary>How the pipe is cut.</summary>
    public required Cutting.CutPlan CutPlan { get; init; }

    /// <summary>The width of the saw cut that the plan reckons with.</summary>
    public required Length Kerf { get; init; }

    /// <summary>How it is packed.</summary>
    public required ImmutableArray<Bundle> Bundles { get; init; }

    /// <summary>What the customer should know.</summary>
    public required ImmutableArray<Warning> Warnings { get; init; }

    /// <summary>What the screening for its loads found; null where the catalog has no load set, does not say how stiff the pipe is, or the frame is too large.</summary>
    public KitScreening? Screening { get; init; }

    /// <summary>The smallest pipe and tie that pass the screening; null where there is none to recommend.</summary>
    public Recommendation? Recommendation { get; init; }

    /// <summary>The type of the struts of a frame family.</summary>
    public StrutType TypeOfFamily(int family) => StrutTypes.First(t => t.Families.Contains(family));
}

/// <summary>The sums of a kit.</summary>
/// <param name="Hubs">Hubs.</param>
/// <param name="Struts">Struts, with those that lie double around openings.</param>
/// <param name="Panels">Panels of one layer.</param>
/// <param name="Ties">Ties in use.</param>
/// <param name="TiesWithSpares">Ties in the box.</param>
/// <param name="Stakes">Stakes.</param>
/// <param name="CoverMaterialM2">Cover material for all layers, seams included, in square metres.</param>
/// <param name="MassGrams">All of it, in grams.</param>
public sealed record KitTotals(int Hubs, int Struts, int Panels, int Ties, int TiesWithSpares, int Stakes, double CoverMaterialM2, int MassGrams);

/// <summary>Struts of one cut length.</summary>
/// <param name="Code">S1 for the shortest, then S2 and so on.</param>
/// <param name="Tag">How it is marked.</param>
/// <param name="SpacingMm">Between node centres; where exact families share a type, their mean by count.</param>
/// <param name="CutLength">What the saw is set to.</param>
/// <param name="ChordFactor">Spacing over radius; null for an oblong.</param>
/// <param name="Count">How many.</param>
/// <param name="Families">The frame's families that share this length.</param>
public sealed record StrutType(string Code, Tag Tag, double SpacingMm, Length CutLength, double? ChordFactor, int Count, ImmutableArray<int> Families);

/// <summary>Hubs of one kind at nodes of one degree.</summary>
/// <param name="Sku">The stock code.</param>
/// <param name="Ways">How many struts the hub can take.</param>
/// <param name="Degree">How many struts meet there.</param>
/// <param name="Count">How many.</param>
public sealed record HubType(string Sku, int Ways, int Degree, int Count);

/// <summary>One stage of building.</summary>
/// <param name="Number">0 for the foundation.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Struts">Its struts, by type.</param>
/// <param name="Hubs">Its hubs, by kind and degree.</param>
/// <param name="Ties">Its ties, without spares.</param>
/// <param name="Stakes">Its stakes.</param>
public sealed record Tier(int Number, string Name, ImmutableArray<TierStruts> Struts, ImmutableArray<HubType> Hubs, int Ties, int Stakes);

/// <summary>The struts of one type in one tier.</summary>
/// <param name="Code">The strut type.</param>
/// <param name="Count">How many.</param>
public sealed record TierStruts(string Code, int Count);

/// <summary>Panels with the same three strut types.</summary>
/// <param name="Code">P1 and so on.</param>
/// <param name="Struts">The strut types of its sides.</param>
/// <param name="AreaM2">The area of one, in square metres.</param>
/// <param name="Count">How many.</param>
/// <param name="Kinds">The frame's panel kinds that share this type.</param>
public sealed record PanelType(string Code, ImmutableArray<string> Struts, double AreaM2, int Count, ImmutableArray<int> Kinds);

/// <summary>What sort of thing a stock item is.</summary>
public enum PartKind
{
    /// <summary>A hub, counted in pieces.</summary>
    Hub,

    /// <summary>Pipe, counted in stock lengths.</summary>
    StrutStock,

    /// <summary>A tie, counted in pieces.</summary>
    Tie,

    /// <summary>A stake, counted in pieces.</summary>
    Stake,

    /// <summary>Cover, counted in square metres.</summary>
    Cover,
}

/// <summary>What a kit takes of one stock item.</summary>
/// <param name="Sku">The stock code.</param>
/// <param name="Kind">What sort of thing it is.</param>
/// <param name="Description">Its name for people.</param>
/// <param name="Quantity">How many of the item's unit.</param>
public sealed record Part(string Sku, PartKind Kind, string Description, int Quantity);

/// <summary>Something the customer should know.</summary>
/// <param name="Code">A stable, dotted code.</param>
/// <param name="Detail">A sentence for a person.</param>
public sealed record Warning(string Code, string Detail);
