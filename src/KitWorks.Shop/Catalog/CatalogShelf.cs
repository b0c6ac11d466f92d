using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Counting;
using KitWorks.Shop.Storage;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Catalog;

/// <summary>The catalog as it was last read, so that it is not read out of its JSON again for each kit.</summary>
public sealed class CatalogShelf(TimeProvider clock)
{
    static readonly TimeSpan StaysRecent = TimeSpan.FromSeconds(2);

    Kept? last;

    /// <summary>The catalog, if it was read within the last two seconds: for answers that bind nobody.</summary>
    public DatedCatalog? Recent => Volatile.Read(ref last) is { } kept && clock.GetElapsedTime(kept.At) < StaysRecent ? kept.Dated : null;

    /// <summary>The catalog as it stands in the database. Only the versions of its sections are read where it is the one that was read last.</summary>
    internal async Task<Outcome<DatedCatalog>> Read(ShopDb db, CancellationToken cancellationToken)
    {
        // What a transaction sees may never become true.
        if (db.Database.CurrentTransaction is not null) return Of(await db.CatalogSections.AsNoTracking().ToListAsync(cancellationToken));
        var at = clock.GetTimestamp();
        var versions = await db.CatalogSections.AsNoTracking().Select(s => new { s.Name, s.Version }).ToListAsync(cancellationToken);
        if (Volatile.Read(ref last) is { } kept && kept.Dated.Version == VersionOf(versions.Select(v => (v.Name, v.Version))))
        {
            Volatile.Write(ref last, new(kept.Dated, at));
            return kept.Dated;
        }
        var read = Of(await db.CatalogSections.AsNoTracking().ToListAsync(cancellationToken));
        if (read.Succeeds(out var dated, out _)) Volatile.Write(ref last, new(dated, at));
        return read;
    }

    internal void Forget() => Volatile.Write(ref last, null);

    static string VersionOf(IEnumerable<(string Name, int Version)> sections) =>
        string.Join(' ', sections.OrderBy(s => s.Name, StringComparer.Ordinal).Select(s => $"{s.Name}:{s.Version}"));

    static Outcome<DatedCatalog> Of(List<CatalogSection> sections)
    {
        if (sections.Count == 0)
            return new Refusal(RefusalKind.Conflict, "catalog.empty", "The shop has no catalog yet. Put one with PUT /api/catalog, hub systems, strut stocks and ties first.");
        var json = sections.ToDictionary(s => s.Name, s => s.Json);
        return new DatedCatalog(new()
        {
            HubSystems = Section<ImmutableArray<HubSystem>>(Sections.HubSystems, []),
            StrutStocks = Section<ImmutableArray<StrutStock>>(Sections.StrutStocks, []),
            Ties = Section<ImmutableArray<Tie>>(Sections.Ties, []),
            Covers = Section<ImmutableArray<CoverMaterial>>(Sections.Covers, []),
            Palette = Section(Sections.Palette, Palette.ColourBlindSafe),
            Prices = Section(Sections.Prices, new PriceBook { Currency = "USD", UnitCosts = ImmutableDictionary<string, decimal>.Empty }),
            Workshop = Section(Sections.Workshop, new Workshop()),
            Parcels = Section(Sections.Parcels, new ParcelRules()),
            Calendar = Section(Sections.Calendar, new WorkCalendar()),
            Supplies = Section<ImmutableArray<Supply>>(Sections.Supplies, []),
            Screening = Section(Sections.Screening, new ScreeningRules()),
        }, VersionOf(sections.Select(s => (s.Name, s.Version))));

        T Section<T>(string name, T otherwise) => json.TryGetValue(name, out var text) ? StoredJson.Read<T>(text) : otherwise;
    }

    sealed record Kept(DatedCatalog Dated, long At);
}

/// <summary>Whoever changes the catalog sees the change at once.</summary>
sealed class ForgetCatalog(CatalogShelf shelf) : IAfterwards<PutCatalog, ShopCatalog>
{
    public void After(PutCatalog request, ShopCatalog answer) => shelf.Forget();
}
