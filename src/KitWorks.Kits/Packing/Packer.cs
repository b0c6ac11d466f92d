using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;

namespace KitWorks.Kits.Packing;

/// <summary>Packs a kit into bundles, tier by tier, in the order in which they are opened.</summary>
sealed class Packer(ImmutableArray<StrutType> strutTypes, ImmutableArray<Tier> tiers, Materials materials, Workshop workshop)
{
    readonly ImmutableArray<Bundle>.Builder bundles = ImmutableArray.CreateBuilder<Bundle>();

    public ImmutableArray<Bundle> Pack(int spareTies, double coverM2)
    {
        var spares = Shares(spareTies);
        foreach (var tier in tiers)
        {
            PackStruts(tier);
            PackHubs(tier);
            Add(tier, BundleKind.Ties, Length.Zero, (new(materials.Tie.Sku, null, materials.Tie.Name, tier.Ties + spares[tier.Number]), materials.Tie.MassGrams));
            var stake = materials.HubSystem.Stake;
            if (tier.Stakes > 0) Add(tier, BundleKind.Stakes, Length.Zero, (new(stake.Sku, null, stake.Name, tier.Stakes), stake.MassGrams));
        }
        if (materials.Cover is { Material: var cover })
            Add(tiers[^1], BundleKind.Cover, Length.Zero, (new(cover.Sku, null, $"m² of {cover.Name}", (int)Math.Ceiling(coverM2)), cover.GramsPerM2));
        return bundles.ToImmutable();
    }

    /// <summary>Struts of one type, in as few and as equal bundles as the limits on pieces and mass allow.</summary>
    void PackStruts(Tier tier)
    {
        foreach (var (code, count) in tier.Struts)
        {
            var type = strutTypes.First(t => t.Code == code);
            var gramsEach = StrutGrams(type);
            var most = Math.Max(1, Math.Min(workshop.BundlePieces, workshop.BundleGrams / Math.Max(1, gramsEach)));
            var into = (count + most - 1) / most;
            for (var i = 0; i < into; i++)
            {
                var pieces = count / into + (i < count % into ? 1 : 0);
                Add(tier, BundleKind.Struts, type.CutLength,
                    (new(materials.StrutStock.Sku, code, $"Strut {code}, {type.CutLength}", pieces), gramsEach));
            }
        }
    }

    void PackHubs(Tier tier) => Add(tier, BundleKind.Hubs, Length.Zero,
    [
        .. tier.Hubs.GroupBy(h => h.Sku).Select(g =>
        {
            var hub = materials.HubSystem.Hubs.First(h => h.Sku == g.Key);
            return (new BundleItem(hub.Sku, null, hub.Name, g.Sum(h => h.Count)), hub.MassGrams);
        }),
    ]);

    void Add(Tier tier, BundleKind kind, Length length, params (BundleItem Item, int GramsEach)[] contents) => bundles.Add(new(
        bundles.Count + 1, tier.Number, kind, [.. contents.Select(c => c.Item)], contents.Sum(c => c.Item.Count * c.GramsEach), length)
    {
        PieceWidth = kind == BundleKind.Struts ? materials.StrutStock.OutsideDiameter : Length.Zero,
    });

    int StrutGrams(StrutType type) => (int)Math.Round(type.CutLength.Millimetres * materials.StrutStock.GramsPerMetre / 1000, MidpointRounding.AwayFromZero);

    /// <summary>Spare ties shared over the tiers in proportion, by largest remainder, so that they add up.</summary>
    int[] Shares(int spareTies)
    {
        var all = tiers.Sum(t => t.Ties);
        if (all == 0) return new int[tiers.Length];
        int[] shares = [.. tiers.Select(t => spareTies * t.Ties / all)];
        foreach (var tier in tiers.OrderByDescending(t => spareTies * t.Ties % all).ThenBy(t => t.Number).Take(spareTies - shares.Sum()))
            shares[tier.Number]++;
        return shares;
    }
}
