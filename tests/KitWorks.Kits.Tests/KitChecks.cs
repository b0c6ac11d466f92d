using KitWorks.Kits.Catalog;
using KitWorks.Kits.Packing;

namespace KitWorks.Kits.Tests;

/// <summary>What is true of every kit.</summary>
static class KitChecks
{
    public static void Hold(Kit kit, ShopCatalog catalog)
    {
        var hubSystem = catalog.HubSystems.Single(h => h.Code == kit.Design.HubSystem);
        StrutTypesAreTheFrames(kit, hubSystem, catalog);
        TiersAddUp(kit, hubSystem, catalog.Workshop);
        HubsTakeTheirNodes(kit, hubSystem);
        BundlesStandInOrder(kit);
        StrutBundlesKeepTheLimits(kit, catalog);
        BundlesAddUp(kit);
        PartsAreWhatIsPacked(kit);
        CoverIsEnough(kit);
        MassAddsUp(kit, hubSystem, catalog);
    }

    static void StrutTypesAreTheFrames(Kit kit, HubSystem hubSystem, ShopCatalog catalog)
    {
        var step = catalog.Workshop.SawStep.Millimetres;
        Assert.Equal(Enumerable.Range(1, kit.StrutTypes.Length).Select(i => $"S{i}"), kit.StrutTypes.Select(t => t.Code));
        Assert.Equal(Enumerable.Range(0, kit.Frame.Families.Length), kit.StrutTypes.SelectMany(t => t.Families).Order());
        Assert.Equal(kit.StrutTypes.Length, kit.StrutTypes.Select(t => t.CutLength).Distinct().Count());
        Assert.Equal(kit.StrutTypes.Select(t => t.CutLength).Order(), kit.StrutTypes.Select(t => t.CutLength));
        Assert.Equal(kit.StrutTypes.Length, kit.StrutTypes.Select(t => (t.Tag.Colour, t.Tag.Bands)).Distinct().Count());
        Assert.Equal(kit.Frame.Struts.Length, kit.StrutTypes.Sum(t => t.Count));
        Assert.Equal(kit.Frame.Struts.Sum(s => s.SpacingMm), kit.StrutTypes.Sum(t => t.SpacingMm * t.Count), 1e-6);
        foreach (var type in kit.StrutTypes)
        {
            Assert.Equal(type.Count, kit.Frame.Struts.Count(s => type.Families.Contains(s.Family)));
            Assert.Equal(0, type.CutLength.Tenths % catalog.Workshop.SawStep.Tenths);
            Assert.All(type.Families, f =>
            {
                Assert.Same(type, kit.TypeOfFamily(f));
                Assert.InRange(kit.Frame.Families[f].SpacingMm - 2 * hubSystem.Allowance.Millimetres - type.CutLength.Millimetres, -step / 2 - 1e-6, step / 2 + 1e-6);
            });
        }
    }

    static void TiersAddUp(Kit kit, HubSystem hubSystem, Workshop workshop)
    {
        Assert.Equal(Enumerable.Range(0, kit.Frame.TierCount), kit.Tiers.Select(t => t.Number));
        foreach (var type in kit.StrutTypes)
            Assert.Equal(type.Count, kit.Tiers.Sum(t => t.Struts.Where(s => s.Code == type.Code).Sum(s => s.Count)));
        foreach (var tier in kit.Tiers)
        {
            Assert.Equal(kit.Frame.Struts.Count(s => s.Tier == tier.Number), tier.Struts.Sum(s => s.Count));
            Assert.Equal(kit.Frame.Nodes.Count(n => n.Tier == tier.Number), tier.Hubs.Sum(h => h.Count));
            Assert.Equal(2 * hubSystem.TiesPerEnd * tier.Struts.Sum(s => s.Count), tier.Ties);
            Assert.All(tier.Struts, s => Assert.True(s.Count > 0));
            Assert.Equal(tier.Number == 0 ? kit.Frame.Base.Length * hubSystem.Stake.PerBaseHub : 0, tier.Stakes);
        }
        Assert.Equal(kit.Frame.Nodes.Length, kit.Totals.Hubs);
        Assert.Equal(kit.Frame.Struts.Length, kit.Totals.Struts);
        Assert.Equal(kit.Frame.Panels.Length, kit.Totals.Panels);
        Assert.Equal(kit.Tiers.Sum(t => t.Ties), kit.Totals.Ties);
        Assert.Equal(2 * hubSystem.TiesPerEnd * kit.Frame.Struts.Length, kit.Totals.Ties);
        Assert.Equal(kit.Totals.Ties + (int)Math.Ceiling(kit.Totals.Ties * workshop.SpareTiesPercent / 100m), kit.Totals.TiesWithSpares);
        Assert.Equal(kit.Tiers.Sum(t => t.Stakes), kit.Totals.Stakes);
    }

    static void HubsTakeTheirNodes(Kit kit, HubSystem hubSystem)
    {
        Assert.Equal(kit.Frame.Nodes.Length, kit.HubTypes.Sum(h => h.Count));
        Assert.Equal(2 * kit.Frame.Struts.Length, kit.HubTypes.Sum(h => h.Degree * h.Count));
        Assert.Equal(kit.HubTypes.Length, kit.HubTypes.Select(h => (h.Sku, h.Degree)).Distinct().Count());
        foreach (var type in kit.HubTypes)
        {
            Assert.Equal(type.Ways, hubSystem.Hubs.Single(h => h.Sku == type.Sku).Ways);
            Assert.True(type.Ways == type.Degree || type.Ways > type.Degree && hubSystem.Hubs.All(h => h.Ways != type.Degree));
            Assert.Equal(type.Count, kit.Tiers.Sum(t => t.Hubs.Where(h => h with { Count = 0 } == type with { Count = 0 }).Sum(h => h.Count)));
        }
        foreach (var degree in kit.Frame.Nodes.CountBy(n => n.Degree))
            Assert.Equal(degree.Value, kit.HubTypes.Where(h => h.Degree == degree.Key).Sum(h => h.Count));
    }

    static void BundlesStandInOrder(Kit kit)
    {
        Assert.Equal(Enumerable.Range(1, kit.Bundles.Length), kit.Bundles.Select(b => b.Number));
        Assert.Equal(kit.Bundles.Select(b => b.Tier).Order(), kit.Bundles.Select(b => b.Tier));
        Assert.All(kit.Bundles, b => Assert.True(b.Contents.Length > 0 && b.Contents.All(c => c.Count > 0) && b.MassGrams > 0));
        foreach (var tier in kit.Tiers)
        {
            var bags = kit.Bundles.Where(b => b.Tier == tier.Number).ToLookup(b => b.Kind);
            Assert.Single(bags[BundleKind.Hubs]);
            Assert.Single(bags[BundleKind.Ties]);
            Assert.Equal(tier.Stakes > 0 ? 1 : 0, bags[BundleKind.Stakes].Count());
        }
    }

    static void StrutBundlesKeepTheLimits(Kit kit, ShopCatalog catalog)
    {
        foreach (var alike in kit.Bundles.Where(b => b.Kind == BundleKind.Struts).GroupBy(b => (b.Tier, b.Contents.Single().Code)))
        {
            var type = kit.StrutTypes.Single(t => t.Code == alike.Key.Code);
            int[] pieces = [.. alike.Select(b => b.Contents[0].Count)];
            Assert.All(alike, b => Assert.True(b.MassGrams <= catalog.Workshop.BundleGrams || b.Contents[0].Count == 1));
            Assert.All(alike, b => Assert.Equal(type.CutLength, b.Length));
            Assert.True(pieces.Max() <= catalog.Workshop.BundlePieces);
            Assert.True(pieces.Max() - pieces.Min() <= 1);
        }
    }

    static void BundlesAddUp(Kit kit)
    {
        var struts = kit.Bundles.Where(b => b.Kind == BundleKind.Struts).SelectMany(b => b.Contents, (b, c) => (b.Tier, c.Code, c.Count));
        Assert.Equal(
            kit.Tiers.SelectMany(t => t.Struts, (t, s) => (t.Number, s.Code, s.Count)).ToHashSet(),
            struts.GroupBy(s => (s.Tier, s.Code), (key, s) => (key.Tier, key.Code!, s.Sum(x => x.Count))).ToHashSet());
        foreach (var tier in kit.Tiers)
            Assert.Equal(tier.Hubs.Sum(h => h.Count), Count(BundleKind.Hubs, tier.Number));
        Assert.Equal(kit.Totals.TiesWithSpares, Count(BundleKind.Ties));
        Assert.All(kit.Tiers, t => Assert.InRange(Count(BundleKind.Ties, t.Number), t.Ties, t.Ties + kit.Totals.TiesWithSpares - kit.Totals.Ties));
        Assert.Equal(kit.Totals.Stakes, Count(BundleKind.Stakes));

        int Count(BundleKind kind, int? tier = null) =>
            kit.Bundles.Where(b => b.Kind == kind && (tier is null || b.Tier == tier)).Sum(b => b.Contents.Sum(c => c.Count));
    }

    static void PartsAreWhatIsPacked(Kit kit)
    {
        Assert.Equal(kit.Parts.Length, kit.Parts.Select(p => p.Sku).Distinct().Count());
        Assert.Equal(kit.CutPlan.StockLengths.Sum(s => s.Count), kit.Parts.Where(p => p.Kind == PartKind.StrutStock).Sum(p => p.Quantity));
        foreach (var part in kit.Parts.Where(p => p.Kind != PartKind.StrutStock))
            Assert.Equal(part.Quantity, kit.Bundles.SelectMany(b => b.Contents).Where(c => c.Sku == part.Sku).Sum(c => c.Count));
        foreach (var hubs in kit.HubTypes.GroupBy(h => h.Sku))
            Assert.Equal(hubs.Sum(h => h.Count), kit.Parts.Single(p => p.Sku == hubs.Key).Quantity);
        Assert.Equal(
            kit.StrutTypes.Select(t => (t.Code, t.Count)),
            kit.CutPlan.Patterns.SelectMany(p => p.Cuts, (p, c) => (c.Code, Count: p.Count * c.Count))
                .GroupBy(c => c.Code, (code, cuts) => (code, cuts.Sum(c => c.Count))).OrderBy(c => int.Parse(c.code.AsSpan(1))));
    }

    static void CoverIsEnough(Kit kit)
    {
        var net = kit.Frame.Dimensions.CoverAreaM2;
        Assert.Equal(kit.Frame.Panels.Length, kit.PanelTypes.Sum(p => p.Count));
        Assert.Equal(net, kit.PanelTypes.Sum(p => p.Count * p.AreaM2), 1e-6);
        Assert.Equal(Enumerable.Range(0, kit.Frame.PanelKinds.Length), kit.PanelTypes.SelectMany(p => p.Kinds).Order());
        Assert.Equal(Enumerable.Range(1, kit.PanelTypes.Length).Select(i => $"P{i}"), kit.PanelTypes.Select(p => p.Code));
        if (kit.Design.Cover is not { } cover) return;
        Assert.True(kit.Totals.CoverMaterialM2 >= net * cover.Layers - 1e-9);
        Assert.Equal((int)Math.Ceiling(kit.Totals.CoverMaterialM2), kit.Parts.Single(p => p.Kind == PartKind.Cover).Quantity);
        Assert.Equal(kit.Tiers[^1].Number, kit.Bundles.Single(b => b.Kind == BundleKind.Cover).Tier);
    }

    static void MassAddsUp(Kit kit, HubSystem hubSystem, ShopCatalog catalog)
    {
        Assert.Equal(kit.Totals.MassGrams, kit.Bundles.Sum(b => b.MassGrams));
        var pipe = catalog.StrutStocks.Single(s => s.Code == kit.Design.StrutStock);
        var struts = kit.StrutTypes.Sum(t => t.Count * t.CutLength.Millimetres) * pipe.GramsPerMetre / 1000;
        var rest = kit.HubTypes.Sum(h => h.Count * hubSystem.Hubs.Single(x => x.Sku == h.Sku).MassGrams)
            + kit.Totals.TiesWithSpares * catalog.Ties.Single(t => t.Sku == hubSystem.TieSku).MassGrams
            + kit.Totals.Stakes * hubSystem.Stake.MassGrams
            + kit.Parts.Where(p => p.Kind == PartKind.Cover).Sum(p => p.Quantity * catalog.Covers.Single(c => c.Sku == p.Sku).GramsPerM2);
        Assert.InRange(kit.Totals.MassGrams - rest - struts, -0.5 * kit.Totals.Struts - 1e-6, 0.5 * kit.Totals.Struts + 1e-6);
    }
}
