using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Orders;

/// <summary>How the struts of a bundle are tagged, by their codes; for whoever holds the bundle, whose order it may be or not.</summary>
public sealed record GetBundleTags(string Code) : IQuery<IReadOnlyDictionary<string, Tag>>;

sealed class GetBundleTagsHandler(ShopDb db, IMediator mediator) : IRequestHandler<GetBundleTags, Outcome<IReadOnlyDictionary<string, Tag>>>
{
    public async Task<Outcome<IReadOnlyDictionary<string, Tag>>> Handle(GetBundleTags query, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetBundle(query.Code), cancellationToken)).Succeeds(out var bundle, out var refusal)) return refusal;
        var codes = bundle.Contents.Select(c => c.Code).OfType<string>().ToHashSet();
        if (codes.Count == 0) return new Dictionary<string, Tag>();
        var kit = StoredJson.Unpack<Kit>((await db.OrderKits.AsNoTracking().SingleAsync(k => k.OrderId == bundle.OrderId, cancellationToken)).Packed);
        return kit.StrutTypes.Where(t => codes.Contains(t.Code)).ToDictionary(t => t.Code, t => t.Tag);
    }
}
