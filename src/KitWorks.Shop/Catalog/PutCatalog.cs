using FluentValidation;
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

    /// <summary>What shelters are screened for.</summary>
    public ScreeningRules? Screening { get; init; }
}

sealed class PutCatalogValidator : AbstractValidator<PutCatalog>
{
    public PutCatalogValidator()
    {
        RuleForEach(c => c.HubSystems).ChildRules(system =>
        {
            system.RuleFor(s => s.Code).Matches("^[a-z0-9-]{1,40}$").WithMessage("A code is 1 to 40 small letters, digits and hyphens.");
            system.RuleFor(s => s.Hubs).Must(hubs => hubs.Length is >= 1 and <= 12).WithMessage("A hub system has 1 to 12 hubs.");
            system.RuleFor(s => s.Hubs).Must(hubs => hubs.DistinctBy(h => h.Ways).Count() == hubs.Length).WithMessage("Two hubs of a system have as many ways.");
            system.RuleFor(s => s.TiesPerEnd).InclusiveBetween(1, 8).WithMessage("'{PropertyValue}' ties to a strut end: 1 to 8.");
            system.RuleForEach(s => s.Hubs).ChildRules(hub => hub.RuleFor(h => h.Ways).InclusiveBetween(2, 12).WithMessage("'{PropertyValue}' ways: 2 to 12."));
        }).When(c => c.HubSystems is not null);
        RuleForEach(c => c.StrutStocks).ChildRules(stock =>
        {
            stock.RuleFor(s => s.Code).Matches("^[a-z0-9-]{1,40}$").WithMessage("A code is 1 to 40 small letters, digits and hyphens.");
            stock.RuleFor(s => s.StockLength).Must(l => l.Millimetres is >= 100 and <= 20_000).WithMessage("A stock length is 100 mm to 20 m.");
            stock.RuleFor(s => s.ModulusMPa).InclusiveBetween(1, 1_000_000).WithMessage("A modulus of '{PropertyValue}' MPa: 1 to 1,000,000, or left out where it is not known.");
            stock.RuleFor(s => s.LongTermModulusMPa).InclusiveBetween(1, 1_000_000).WithMessage("A modulus of '{PropertyValue}' MPa: 1 to 1,000,000, or left out for a material that does not creep.")
                .Must((s, longTerm) => longTerm is null || longTerm <= s.ModulusMPa).WithMessage("A long-term modulus is at most the modulus.");
            stock.RuleFor(s => s.StrengthMPa).InclusiveBetween(1, 10_000).WithMessage("A strength of '{PropertyValue}' MPa: 1 to 10,000, or left out where it is not known.");
        }).When(c => c.StrutStocks is not null);
        RuleFor(c => c.Palette!.Colours).Must(c => c.Length is >= 1 and <= 24).WithMessage("A palette has 1 to 24 colours.")
            .Must(c => c.All(x => System.Text.RegularExpressions.Regex.IsMatch(x.Hex, "^#[0-9A-Fa-f]{6}$"))).WithMessage("A colour is written #RRGGBB.")
            .When(c => c.Palette is not null);
        RuleFor(c => c.Prices!.Currency).Matches("^[A-Z]{3}$").WithMessage("A currency is an ISO 4217 code, such as USD.").When(c => c.Prices is not null);
        RuleFor(c => c.Workshop!).ChildRules(workshop =>
        {
            workshop.RuleFor(w => w.BundlePieces).InclusiveBetween(1, 500).WithMessage("'{PropertyValue}' pieces to a bundle: 1 to 500.");
            workshop.RuleFor(w => w.BundleGrams).InclusiveBetween(100, 100_000).WithMessage("'{PropertyValue}' g to a bundle: 100 to 100,000.");
            workshop.RuleFor(w => w.SpareTiesPercent).InclusiveBetween(0, 100).WithMessage("'{PropertyValue}' % spare ties: 0 to 100.");
            workshop.RuleFor(w => w.SawStep).Must(s => s.Millimetres is >= 0.1 and <= 10).WithMessage("A saw's step is 0.1 mm to 10 mm.");
            workshop.RuleFor(w => w.Kerf).Must(k => k.Millimetres <= 20).WithMessage("A kerf is 0 to 20 mm.");
        }).When(c => c.Workshop is not null);
    }
}

sealed class PutCatalogHandler(ShopDb db, IMediator mediator) : IRequestHandler<PutCatalog, Outcome<ShopCatalog>>
{
    public async Task<Outcome<ShopCatalog>> Handle(PutCatalog command, CancellationToken cancellationToken)
    {
        if (command.Screening?.Fault() is { } fault) return fault;
        await Put(Sections.HubSystems, command.HubSystems, cancellationToken);
        await Put(Sections.StrutStocks, command.StrutStocks, cancellationToken);
        await Put(Sections.Ties, command.Ties, cancellationToken);
        await Put(Sections.Covers, command.Covers, cancellationToken);
        await Put(Sections.Palette, command.Palette, cancellationToken);
        await Put(Sections.Prices, command.Prices, cancellationToken);
        await Put(Sections.Workshop, command.Workshop, cancellationToken);
        await Put(Sections.Screening, command.Screening, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);

        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out var refusal)) return refusal;
        for (var i = 0; i < catalog.HubSystems.Length; i++)
            if (catalog.Ties.All(t => t.Sku != catalog.HubSystems[i].TieSku))
                return Refusal.OfField("catalog.unknown-tie", $"hubSystems/{i}/tieSku", $"There is no tie '{catalog.HubSystems[i].TieSku}' in the catalog.");
        await mediator.Send(new KeepStockItems([.. StockItemsOf(catalog)]), cancellationToken);
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
