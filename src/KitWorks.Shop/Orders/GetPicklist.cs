using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using MediatR;

namespace KitWorks.Shop.Orders;

/// <summary>What to take from stock for an order, by tier and bin.</summary>
public sealed record GetPicklist(Guid OrderId) : IQuery<Picklist>;

/// <summary>A picklist for all kits of an order.</summary>
public sealed record Picklist(Guid OrderId, int Number, int Quantity, string Customer, IReadOnlyList<PicklistLine> Lines);

/// <summary>One line: pieces of one sort for one tier.</summary>
/// <param name="Tier">The tier they are for.</param>
/// <param name="Sku">The stock item they come from.</param>
/// <param name="Description">Their name.</param>
/// <param name="Code">The strut type, for struts.</param>
/// <param name="Tag">How they are tagged, for struts.</param>
/// <param name="Quantity">How many pieces, for all kits.</param>
/// <param name="Bin">Where they are kept.</param>
public sealed record PicklistLine(int Tier, string Sku, string Description, string? Code, Tag? Tag, int Quantity, string Bin);

sealed class GetPicklistHandler(IMediator mediator) : IRequestHandler<GetPicklist, Outcome<Picklist>>
{
    public async Task<Outcome<Picklist>> Handle(GetPicklist query, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetOrderKit(query.OrderId), cancellationToken)).Succeeds(out var order, out var refusal)) return refusal;
        var skus = order.Kit.Parts.Select(p => p.Sku).ToList();
        var bins = (await mediator.Send(new FindBins(skus), cancellationToken)).Value;
        var tags = order.Kit.StrutTypes.ToDictionary(t => t.Code, t => t.Tag);
        var lines = order.Kit.Bundles
            .SelectMany(b => b.Contents, (b, item) => (b.Tier, b.Kind, Item: item))
            .GroupBy(x => (x.Tier, x.Item.Sku, x.Item.Code))
            .Select(g => (g.First().Kind, Line: new PicklistLine(
                g.Key.Tier, g.Key.Sku, g.First().Item.Description, g.Key.Code, g.Key.Code is { } code ? tags[code] : null,
                g.Sum(x => x.Item.Count) * order.Quantity, g.Key.Code is not null && order.Batch is { } batch ? $"batch {batch}" : bins.GetValueOrDefault(g.Key.Sku, ""))))
            .OrderBy(x => x.Line.Tier).ThenBy(x => x.Line.Bin, StringComparer.Ordinal).ThenBy(x => x.Kind)
            .Select(x => x.Line);
        return new Picklist(order.OrderId, order.Number, order.Quantity, order.Customer, [.. lines]);
    }
}
