using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Cutting;
using KitWorks.Kits.Packing;
using KitWorks.Kits.Standing;

namespace KitWorks.Kits;

public sealed partial record Kit
{
    /// <summary>Makes the kit of a design from a catalog. Pure: the same design and catalog give the same kit.</summary>
    /// <returns>The kit, or a refusal whose fields are relative to the design.</returns>
    public static Outcome<Kit> Make(Design design, ShopCatalog catalog)
    {
        using var timing = Timing.Kit();
        if (!Fittings.Choose(design, catalog).Succeeds(out var fittings, out var refusal)) return refusal;
        if (!Stands.LoadSetOf(design, catalog).Succeeds(out var loads, out refusal)) return refusal;
        if (!Frame.Build(design.Shelter, fittings.HubSystem.Allowance).Under("shelter").Succeeds(out var frame, out refusal)) return refusal;
        if (!Opened.Of(frame, design, fittings.HubSystem).Succeeds(out var opened, out refusal)) return refusal;
        var screener = loads is null ? null : new Screener(opened, fittings, catalog, loads);
        if (!Materials.Complete(fittings, design, screener, catalog).Succeeds(out var materials, out refusal)) return refusal;
        design = design with { StrutStock = materials.StrutStock.Code, Openings = opened.Openings.IsEmpty ? null : [.. opened.Openings.Select(o => o.Opening)] };
        var warnings = WarningsOf(frame).ToList();
        if (design.MaxStrutTypes is { } most)
        {
            // Posts and sills of doors come on top of what the customer accepts.
            if (!StrutTyping.Of(new(frame, []), materials, catalog).Succeeds(out var shellTypes, out refusal)) return refusal;
            if (shellTypes.Length > most)
            {
                if (!FewerTypes.Of(frame, most, catalog.Workshop).Succeeds(out var fewer, out refusal)) return refusal;
                warnings.Add(fewer.Warning);
                if (!Opened.Of(fewer.Frame, design, fittings.HubSystem).Succeeds(out opened, out refusal)) return refusal;
                screener = loads is null ? null : new Screener(opened, fittings, catalog, loads);
            }
        }
        if (!StrutTyping.Of(opened, materials, catalog).Succeeds(out var strutTypes, out refusal)) return refusal;
        var stands = screener is null ? Stands.Unsaid : Stands.Of(materials, strutTypes, screener, catalog);
        var stakesAt = stands.StakesAt ?? [.. opened.Frame.Base.Select(_ => materials.HubSystem.Stake.PerBaseHub)];
        if (!Tiering.Of(opened, strutTypes, materials.HubSystem, stakesAt).Succeeds(out var tiers, out refusal)) return refusal;
        if (!CutPlanner.Plan(CutJobOf(strutTypes, materials.StrutStock, catalog.Workshop)).Succeeds(out var cutPlan, out refusal)) return refusal;

        var ties = tiers.Sum(t => t.Ties);
        var spares = (ties * catalog.Workshop.SpareTiesPercent + 99) / 100;
        var coverM2 = CoverCutting.MaterialM2(opened.Frame, materials.Cover);
        var bundles = new Packer(strutTypes, tiers, materials, catalog.Workshop).Pack(spares, coverM2);
        return new Kit
        {
            DesignId = Designs.IdOf(design, frame),
            Engine = EngineVersion,
            Design = design,
            Frame = opened.Frame,
            Openings = opened.Openings,
            StakesAt = stakesAt,
            Totals = new(
                opened.Frame.Nodes.Length, strutTypes.Sum(t => t.Count), opened.Frame.Panels.Length, ties, ties + spares, tiers.Sum(t => t.Stakes),
                coverM2, bundles.Sum(b => b.MassGrams)),
            StrutTypes = strutTypes,
            HubTypes = Tiering.Merge(tiers.SelectMany(t => t.Hubs)),
            Tiers = tiers,
            PanelTypes = CoverCutting.PanelTypes(opened.Frame, strutTypes),
            Parts = PartsOf(bundles, cutPlan, materials),
            CutPlan = cutPlan,
            Kerf = catalog.Workshop.Kerf,
            Bundles = bundles,
            Warnings = [.. warnings, .. stands.Warnings],
            Screening = stands.Screening,
            Recommendation = stands.Recommendation,
        };
    }

    static CutJob CutJobOf(ImmutableArray<StrutType> strutTypes, StrutStock stock, Workshop workshop) => new()
    {
        Pieces = [.. strutTypes.Select(t => new CutPiece(t.Code, t.CutLength, t.Count))],
        Stock = [new(stock.Sku, stock.StockLength)],
        Kerf = workshop.Kerf,
        EndTrim = workshop.EndTrim,
        ShortestRemnant = workshop.ShortestRemnant,
    };

    /// <summary>Struts come from the cut plan's stock lengths; everything else is in the bundles as it is in stock.</summary>
    static ImmutableArray<Part> PartsOf(ImmutableArray<Bundle> bundles, CutPlan cutPlan, Materials materials) =>
    [
        .. bundles.Where(b => b.Kind != BundleKind.Struts)
            .SelectMany(b => b.Contents, (b, item) => (Kind: PartKindOf(b.Kind), Item: item))
            .GroupBy(x => x.Item.Sku)
            .Select(g => new Part(g.Key, g.First().Kind, g.First().Item.Description, g.Sum(x => x.Item.Count)))
            .Concat(cutPlan.StockLengths.Select(s => new Part(s.Sku, PartKind.StrutStock, materials.StrutStock.Name, s.Count)))
            .OrderBy(p => p.Kind).ThenBy(p => p.Sku, StringComparer.Ordinal),
    ];

    static PartKind PartKindOf(BundleKind kind) => kind switch
    {
        BundleKind.Struts => PartKind.StrutStock,
        BundleKind.Hubs => PartKind.Hub,
        BundleKind.Ties => PartKind.Tie,
        BundleKind.Stakes => PartKind.Stake,
        BundleKind.Cover => PartKind.Cover,
    };

    static IEnumerable<Warning> WarningsOf(Frame frame) => LevelWarnings(frame).Concat(DentWarnings(frame));

    static IEnumerable<Warning> DentWarnings(Frame frame) => StrutDihedrals.FlattestTurn(frame) < 0
        ? [new("shell.dented", "Somewhere the shell turns inwards over a strut. Such a place can snap through under load; allow more strut lengths, or fewer bays.")]
        : [];

    static IEnumerable<Warning> LevelWarnings(Frame frame) => frame.BaseSpreadMm > TolerableBaseSpreadMm
        ? [new("base.not-level", $"The base nodes differ in height by {frame.BaseSpreadMm:0} mm. A level ring can be had (flatBase), at the cost of a few more strut types; otherwise pack up the high hubs.")]
        : [];

    /// <summary>A difference in height that soft ground takes up; common practice, no source.</summary>
    const double TolerableBaseSpreadMm = 10;
}
