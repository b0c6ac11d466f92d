using System.Globalization;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Labels;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Sawing;
using MediatR;

namespace KitWorks.Shop.Printing;

/// <summary>The labels of bins, by bin path.</summary>
/// <param name="Bins">The bins; empty for every bin that a stock item has.</param>
/// <param name="How">How they are printed.</param>
public sealed record GetBinLabels(IReadOnlyList<string> Bins, LabelPrint How) : IQuery<Stream>;

/// <summary>A label for each offcut worth keeping that an order's cut plan leaves.</summary>
/// <param name="OrderId">The order.</param>
/// <param name="How">How they are printed.</param>
public sealed record GetRemnantLabels(Guid OrderId, LabelPrint How) : IQuery<Stream>;

sealed class GetBinLabelsHandler(IMediator mediator, OrderLabelPress press, ShopSettings settings) : IRequestHandler<GetBinLabels, Outcome<Stream>>
{
    const int PageOfStock = 200;

    public async Task<Outcome<Stream>> Handle(GetBinLabels query, CancellationToken cancellationToken)
    {
        var bins = (await Items(cancellationToken)).Where(i => i.Bin.Length > 0).GroupBy(i => i.Bin).ToDictionary(g => g.Key, g => g.ToList());
        if (query.Bins.FirstOrDefault(b => !bins.ContainsKey(b)) is { } unknown)
            return new Refusal(RefusalKind.NotFound, "bin.unknown", $"No stock item has the bin '{unknown}'.");
        if (bins.Count == 0) return new Refusal(RefusalKind.NotFound, "label.none", "No stock item has a bin. The catalog says which bin an item has.");
        return press.Print([.. bins.Where(b => query.Bins.Count == 0 || query.Bins.Contains(b.Key)).OrderBy(b => BinPath.Key(b.Key), StringComparer.Ordinal).Select(b => LabelOf(b.Key, b.Value))],
            query.How, LabelStock.Roll100x50);
    }

    async Task<List<StockItemAnswer>> Items(CancellationToken cancellationToken)
    {
        var items = new List<StockItemAnswer>();
        string? after = null;
        do
        {
            var page = (await mediator.Send(new ListStock(PageOfStock, after), cancellationToken)).Value;
            items.AddRange(page.Items);
            after = page.Next;
        }
        while (after is not null);
        return items;
    }

    BinLabel LabelOf(string bin, List<StockItemAnswer> items) => new()
    {
        Bin = bin,
        Code = "BIN-" + bin,
        Sku = items.Count == 1 ? items[0].Sku : "",
        Description = items.Count == 1 ? items[0].Description : string.Join(", ", items.Select(i => i.Sku)),
        Unit = items.Count == 1 ? items[0].Unit : "",
        Shop = settings.ShopName,
    };
}

sealed class GetRemnantLabelsHandler(IMediator mediator, OrderLabelPress press, ShopSettings settings) : IRequestHandler<GetRemnantLabels, Outcome<Stream>>
{
    public async Task<Outcome<Stream>> Handle(GetRemnantLabels query, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetOrderKit(query.OrderId), cancellationToken)).Succeeds(out var order, out var refusal)) return refusal;
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out refusal)) return refusal;
        var shortest = catalog.Workshop.ShortestRemnant;
        List<Label> labels = [.. order.Kit.CutPlan.Times(order.Quantity).Patterns.Index().Where(p => p.Item.Remnant >= shortest)
            .SelectMany(p => Enumerable.Range(1, p.Item.Count).Select(n => LabelOf(order, p.Index + 1, n, p.Item.Sku, p.Item.Remnant)))];
        return labels.Count == 0
            ? new Refusal(RefusalKind.NotFound, "label.none", $"Cutting for order {order.Number} leaves nothing of {shortest} or more.")
            : press.Print(labels, query.How, LabelStock.Roll57x32);
    }

    RemnantLabel LabelOf(OrderedKit order, int pattern, int number, string? sku, Length length)
    {
        // Cut from a remnant, it is of the kit's pipe all the same.
        var part = order.Kit.Parts.FirstOrDefault(p => p.Sku == sku) ?? order.Kit.Parts.First(p => p.Kind == PartKind.StrutStock);
        return new()
        {
            Code = string.Create(CultureInfo.InvariantCulture, $"R{order.Number}-{pattern}-{number}"),
            Length = length.ToString(),
            Sku = part.Sku,
            Description = part.Description,
            Shop = settings.ShopName,
        };
    }
}

/// <summary>The labels of the remnants that a batch has left on the shelf.</summary>
/// <param name="BatchId">The batch.</param>
/// <param name="How">How they are printed.</param>
public sealed record GetBatchRemnantLabels(Guid BatchId, LabelPrint How) : IQuery<Stream>;

sealed class GetBatchRemnantLabelsHandler(IMediator mediator, OrderLabelPress press, ShopSettings settings) : IRequestHandler<GetBatchRemnantLabels, Outcome<Stream>>
{
    public async Task<Outcome<Stream>> Handle(GetBatchRemnantLabels query, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetBatch(query.BatchId), cancellationToken)).Succeeds(out var batch, out var refusal)) return refusal;
        var remnants = (await mediator.Send(new RemnantsOfBatch(batch.Number), cancellationToken)).Value;
        if (remnants.Count == 0) return new Refusal(RefusalKind.NotFound, "label.none", $"Batch {batch.Number} has left no remnant on the shelf.");
        var names = new Dictionary<string, string>();
        foreach (var sku in remnants.Select(r => r.PipeSku).Distinct()) names[sku] = (await mediator.Send(new GetStockItem(sku), cancellationToken)).Value.Description;
        return press.Print([.. remnants.Select(Label (r) => new RemnantLabel
        {
            Code = r.Code, Length = r.Length.ToString(), Sku = r.PipeSku, Description = names[r.PipeSku], Bin = r.Bin, Shop = settings.ShopName,
        })], query.How, LabelStock.Roll57x32);
    }
}
