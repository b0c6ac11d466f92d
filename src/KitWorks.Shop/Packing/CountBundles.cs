using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Packing;

/// <summary>How far the bundles of these orders are, by order.</summary>
public sealed record CountBundles(IReadOnlyList<Guid> OrderIds) : IQuery<IReadOnlyDictionary<Guid, BundleCount>>;

/// <summary>How many bundles an order has, and how many of them are packed or gone.</summary>
public sealed record BundleCount(int All, int Packed);

sealed class CountBundlesHandler(ShopDb db) : IRequestHandler<CountBundles, Outcome<IReadOnlyDictionary<Guid, BundleCount>>>
{
    public async Task<Outcome<IReadOnlyDictionary<Guid, BundleCount>>> Handle(CountBundles query, CancellationToken cancellationToken) =>
        await db.Bundles.Where(b => query.OrderIds.Contains(b.OrderId)).GroupBy(b => b.OrderId)
            .Select(g => new { g.Key, All = g.Count(), Open = g.Count(b => b.Status == BundleStatus.Open) })
            .ToDictionaryAsync(x => x.Key, x => new BundleCount(x.All, x.All - x.Open), cancellationToken);
}
