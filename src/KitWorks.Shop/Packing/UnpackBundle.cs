using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Packing;

/// <summary>Marks a packed bundle as open again.</summary>
public sealed record UnpackBundle(string Code) : ICommand<BundleAnswer>;

sealed class UnpackBundleHandler(ShopDb db) : IRequestHandler<UnpackBundle, Outcome<BundleAnswer>>
{
    public async Task<Outcome<BundleAnswer>> Handle(UnpackBundle command, CancellationToken cancellationToken)
    {
        var bundle = await db.Bundles.SingleAsync(b => b.Code == command.Code, cancellationToken);
        if (bundle.Status != BundleStatus.Packed)
            return new Refusal(RefusalKind.Conflict, "bundle.not-packed", $"Bundle {bundle.Code} is {bundle.Status.ToString().ToLowerInvariant()}; only a packed one can be opened again. Nothing was changed.");
        bundle.Status = BundleStatus.Open;
        await db.SaveChangesAsync(cancellationToken);
        return GetBundleHandler.Answer(bundle);
    }
}
