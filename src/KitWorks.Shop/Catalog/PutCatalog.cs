using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;

namespace KitWorks.Shop.Catalog;

/// <summary>
/// Replaces sections of the catalog; a null section stays as it is. What the sections name must be there, in this change
/// or before it. Every part becomes a stock item.
/// </summary>
public sealed record PutCatalog : ICommand<ShopCatalog>
{
    /// <summary>The hub systems.</summary>
    public IReadOnlyList<HubSystem>? HubSystems { get; init; }

    /// <summary>The strut stocks.</summary>
    public IReadOnlyList<StrutStock>? StrutStocks { get; init; }

    /// <summary>The ties.</summary>
    public IReadOnlyList<Tie>? Ties { get; init; }

    /// <summary>The cover materials.</summary>
    public IReadOnlyList<CoverMaterial>? Covers { get; init; }

    /// <summary>The palette.</summary>
    public Palette? Palette { get; init; }

    /// <summary>The price book.</summary>
    public PriceBook? Prices { get; init; }

    /// <summary>How the saw and the bench work.</summary>
    public Workshop? Workshop { get; init; }

    /// <summary>What the carriers take.</summary>
    public ParcelRules? Parcels { get; init; }

    /// <summary>When the shop works.</summary>
    public WorkCalendar? Calendar { get; init; }

    /// <summary>How stock items are bought.</summary>
    public IReadOnlyList<Supply>? Supplies { get; init; }

    /// <summary>What shelters are screened for.</summary>
    public ScreeningRules? Screening { get; init; }
}

sealed class PutCatalogHandler(ShopDb db, IMediator mediator) : IRequestHandler<PutCatalog, Outcome<ShopCatalog>>
{
    public async Task<Outcome<ShopCatalog>> Handle(PutCatalog command, CancellationToken cancellationToken)
    {
        if (command.Screening?.Fault() is { } fault) return fault.Under("screening");
        await Put(Sections.HubSystems, command.HubSystems, cancellationToken);
        await Put(Sections.StrutStocks, command.StrutStocks, cancellationToken);
        await Put(Sections.Ties, command.Ties, cancellationToken);
        await Put(Sections.Covers, command.Covers, cancellationToken);
        await Put(Sections.Palette, command.Palette, cancellationToken);
        await Put(Sections.Prices, command.Prices, cancellationToken);
        await Put(Sections.Workshop, command.Workshop, cancellationToken);
        await Put(Sections.Parcels, command.Parcels, cancellationToken);
        await Put(Sections.Calendar, command.Calendar, cancellationToken);
        await Put(Sections.Supplies, command.Supplies, cancellationToken);
        await Put(Sections.Screening, command.Screening, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);

        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out var refusal)) return refusal;
        for (var i = 0; i < catalog.HubSystems.Length; i++)
            if (catalog.Ties.All(t => t.Sku != catalog.HubSystems[i].TieSku))
                return Refusal.OfField("catalog.unknown-tie", $"hubSystems/{i}/tieSku", $"There is no tie '{catalog.HubSystems[i].TieSku}' in the catalog.");
        var items = StockItemsOf(catalog).ToList();
        for (var i = 0; i < catalog.Supplies.Length; i++)
            if (items.TrueForAll(w => w.Sku != catalog.Supplies[i].Sku))
                return Refusal.OfField("catalog.unknown-sku", $"supplies/{i}/sku", $"Nothing in the catalog is called '{catalog.Supplies[i].Sku}'.");
        var reorderAt = catalog.Supplies.ToDictionary(s => s.Sku, s => s.ReorderAt);
        await mediator.Send(new KeepStockItems([.. items.Select(w => w with { ReorderAt = reorderAt.GetValueOrDefault(w.Sku) })]), cancellationToken);
        return catalog;
    }

    async Task Put(string name, object? value, CancellationToken cancellationToken)
    {
        if (value is null) return;
        var json = StoredJson.Write(value);
        var section = await db.CatalogSections.FindAsync([name], cancellationToken);
        if (section is null) db.CatalogSections.Add(new() { Name = name, Json = json, Version = 1 });
        else (section.Json, section.Version) = (json, section.Version + 1);
    }

    static IEnumerable<StockItemWords> StockItemsOf(ShopCatalog catalog) =>
        catalog.HubSystems.SelectMany(s => s.Hubs).Select(h => new StockItemWords(h.Sku, Kind(PartKind.Hub), h.Name, "piece"))
            .Concat(catalog.HubSystems.Select(s => new StockItemWords(s.Stake.Sku, Kind(PartKind.Stake), s.Stake.Name, "piece")))
            .Concat(catalog.StrutStocks.Select(s => new StockItemWords(s.Sku, Kind(PartKind.StrutStock), s.Name, "length")))
            .Concat(catalog.Ties.Select(t => new StockItemWords(t.Sku, Kind(PartKind.Tie), t.Name, "piece")))
            .Concat(catalog.Covers.Select(c => new StockItemWords(c.Sku, Kind(PartKind.Cover), c.Name, "m²")))
            .DistinctBy(w => w.Sku);

    static string Kind(PartKind kind) => char.ToLowerInvariant(kind.ToString()[0]) + kind.ToString()[1..];
}
