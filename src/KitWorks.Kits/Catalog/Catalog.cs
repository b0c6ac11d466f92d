using System.Collections.Immutable;

namespace KitWorks.Kits.Catalog;

/// <summary>Everything a shop sells from and works by. A value: a kit is made from a catalog as it stood.</summary>
public sealed record ShopCatalog
{
    /// <summary>The hub systems, by code.</summary>
    public required ImmutableArray<HubSystem> HubSystems { get; init; }

    /// <summary>The pipes that struts are cut from.</summary>
    public required ImmutableArray<StrutStock> StrutStocks { get; init; }

    /// <summary>The ties.</summary>
    public required ImmutableArray<Tie> Ties { get; init; }

    /// <summary>The cover materials; the first is taken where a design names none.</summary>
    public required ImmutableArray<CoverMaterial> Covers { get; init; }

    /// <summary>How strut types are tagged.</summary>
    public required Palette Palette { get; init; }

    /// <summary>What things and work cost.</summary>
    public required PriceBook Prices { get; init; }

    /// <summary>How the saw and the packing bench work.</summary>
    public required Workshop Workshop { get; init; }

    /// <summary>What the shop's carriers take.</summary>
    public ParcelRules Parcels { get; init; } = new();

    /// <summary>When the shop works.</summary>
    public WorkCalendar Calendar { get; init; } = new();

    /// <summary>How stock items are bought.</summary>
    public ImmutableArray<Supply> Supplies { get; init; } = [];

    /// <summary>What shelters are screened for, and what they are held to.</summary>
    public ScreeningRules Screening { get; init; } = new();
}
