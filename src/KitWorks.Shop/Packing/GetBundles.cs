using KitWorks.Geometry;
using KitWorks.Kits.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Packing;

/// <summary>The bundles of an order, in the order in which they are opened. Whether the caller may see the order is for the caller of this to know.</summary>
public sealed record ListBundles(Guid OrderId) : IQuery<IReadOnlyList<BundleAnswer>>;

/// <summary>One bundle, by its code.</summary>
public sealed record GetBundle(string Code) : IQuery<BundleAnswer>;

/// <summary>A bundle.</summary>
public sealed record BundleAnswer(
    string Code, Guid OrderId, int OrderNumber, int Number, int OutOf, int KitNumber, int Kits, int Tier, string TierName, BundleKind Kind,
    IReadOnlyList<BundleItem> Contents, int MassGrams, Length Length, BundleStatus Status);

sealed class ListBundlesHandler(ShopDb db) : IRequestHandler<ListBundles, Outcome<IReadOnlyList<BundleAnswer>>>
{
    public async Task<Outcome<IReadOnlyList<BundleAnswer>>> Handle(ListBundles query, CancellationToken cancellationToken)
    {
        var bundles = await db.Bundles.AsNoTracking().Where(b => b.OrderId == query.OrderId).OrderBy(b => b.Number).ToListAsync(cancellationToken);
        return bundles.ConvertAll(GetBundleHandler.Answer);
    }
}

sealed class GetBundleHandler(ShopDb db) : IRequestHandler<GetBundle, Outcome<BundleAnswer>>
{
    public async Task<Outcome<BundleAnswer>> Handle(GetBundle query, CancellationToken cancellationToken)
    {
        if (!BundleCode.IsWellFormed(query.Code))
            return new Refusal(RefusalKind.NotFound, "bundle.code", $"'{query.Code}' is not a bundle code; a character is missing or wrong. Read or scan it again.");
        return await db.Bundles.AsNoTracking().FirstOrDefaultAsync(b => b.Code == query.Code, cancellationToken) is { } bundle
            ? Answer(bundle)
            : new Refusal(RefusalKind.NotFound, "bundle.unknown", $"There is no bundle '{query.Code}' here.");
    }

    public static BundleAnswer Answer(PackedBundle b) => Answer(b, StoredJson.Read<List<BundleItem>>(b.Contents));

    public static BundleAnswer Answer(PackedBundle b, IReadOnlyList<BundleItem> contents) => new(
        b.Code, b.OrderId, b.OrderNumber, b.Number, b.OutOf, b.KitNumber, b.Kits, b.Tier, b.TierName, b.Kind,
        contents, b.MassGrams, Length.FromTenths(b.LengthTenths), b.Status);
}
