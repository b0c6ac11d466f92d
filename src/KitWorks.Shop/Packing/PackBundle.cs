using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Packing;

/// <summary>Marks an open bundle as packed.</summary>
public sealed record PackBundle(string Code) : ICommand<BundleAnswer>;

/// <summary>Marks the bundles of an order as shipped.</summary>
public sealed record ShipBundles(Guid OrderId) : ICommand<Unit>;

sealed class PackBundleHandler(ShopDb db) : IRequestHandler<PackBundle, Outcome<BundleAnswer>>
{
    public async Task<Outcome<BundleAnswer>> Handle(PackBundle command, CancellationToken cancellationToken)
    {
        var bundle = await db.Bundles.SingleAsync(b => b.Code == command.Code, cancellationToken);
        if (bundle.Status != BundleStatus.Open)
            return new Refusal(RefusalKind.Conflict, "bundle.packed-before", $"Bundle {bundle.Code} was {bundle.Status.ToString().ToLowerInvariant()} before. Nothing was changed.");
        bundle.Status = BundleStatus.Packed;
        await db.SaveChangesAsync(cancellationToken);
        return GetBundleHandler.Answer(bundle);
    }
}

sealed class ShipBundlesHandler(ShopDb db) : IRequestHandler<ShipBundles, Outcome<Unit>>
{
    public async Task<Outcome<Unit>> Handle(ShipBundles command, CancellationToken cancellationToken)
    {
        await db.Bundles.Where(b => b.OrderId == command.OrderId)
            .ExecuteUpdateAsync(u => u.SetProperty(b => b.Status, BundleStatus.Shipped), cancellationToken);
        return Unit.Value;
    }
}
