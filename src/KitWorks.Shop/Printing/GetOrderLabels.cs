using System.Globalization;
using KitWorks.Geometry;
using KitWorks.Kits.Packing;
using KitWorks.Labels;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Packing;
using KitWorks.Shop.Pipeline;
using MediatR;

namespace KitWorks.Shop.Printing;

/// <summary>The labels of an order's bundles.</summary>
public sealed record GetOrderLabels(Guid OrderId, LabelPrint How) : IQuery<Stream>
{
    /// <summary>The labels of this tier only; null for all.</summary>
    public int? Tier { get; init; }

    /// <summary>The label of this bundle only; null for all.</summary>
    public string? Bundle { get; init; }
}

sealed class GetOrderLabelsHandler(IMediator mediator, OrderLabelPress press, ShopSettings settings) : IRequestHandler<GetOrderLabels, Outcome<Stream>>
{
    public async Task<Outcome<Stream>> Handle(GetOrderLabels query, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetOrderKit(query.OrderId), cancellationToken)).Succeeds(out var order, out var refusal)) return refusal;
        var bundles = (await mediator.Send(new ListBundles(query.OrderId), cancellationToken)).Value
            .Where(b => (query.Tier is null || b.Tier == query.Tier) && (query.Bundle is null || b.Code == query.Bundle)).ToList();
        return bundles.Count == 0
            ? new Refusal(RefusalKind.NotFound, "label.none", NoSuch(query, order))
            : press.Print([.. bundles.Select(b => LabelOf(b, order))], query.How, LabelStock.Page100x150);
    }

    static string NoSuch(GetOrderLabels query, OrderedKit order) => query switch
    {
        { Bundle: { } bundle, Tier: null } => $"Order {order.Number} has no bundle '{bundle}'; /api/orders/{order.OrderId}/bundles lists their codes.",
        { Bundle: { } bundle, Tier: { } tier } => $"Order {order.Number} has no bundle '{bundle}' in tier {tier}; /api/orders/{order.OrderId}/bundles lists their codes and tiers.",
        _ => $"Order {order.Number} has no bundle in tier {query.Tier}; its tiers are 0 to {order.Kit.Tiers.Length - 1}.",
    };

    Label LabelOf(BundleAnswer bundle, OrderedKit order) => bundle.Kind switch
    {
        BundleKind.Hubs => new HubBagLabel(PackOf(bundle, order, "Hubs")),
        BundleKind.Ties => TieBagOf(bundle, order),
        BundleKind.Struts => StrutsOf(bundle, order),
        BundleKind.Stakes => PackOf(bundle, order, "Stakes"),
        BundleKind.Cover => CoverOf(bundle, order),
    };

    BundleLabel PackOf(BundleAnswer bundle, OrderedKit order, string what)
    {
        var perKit = bundle.OutOf / bundle.Kits;
        return new()
        {
            What = what,
            Code = bundle.Code,
            PageUrl = new Uri(settings.PublicUrl, $"/b/{bundle.Code}").ToString(),
            Order = order.Number.ToString(CultureInfo.InvariantCulture),
            Kit = bundle.KitNumber,
            Kits = bundle.Kits,
            Bundle = bundle.Number - (bundle.KitNumber - 1) * perKit,
            Bundles = perKit,
            Tier = bundle.Tier,
            TierName = bundle.TierName,
            Contents = [.. bundle.Contents.Select(c => new LabelItem(c.Code ?? c.Sku, c.Description, c.Count))],
            Mass = Words.Mass(bundle.MassGrams),
            Shelter = ShelterNames.Of(order.Kit.Frame),
            Shop = settings.ShopName,
        };
    }

    BundleLabel StrutsOf(BundleAnswer bundle, OrderedKit order)
    {
        var type = order.Kit.StrutTypes.First(t => t.Code == bundle.Contents[0].Code);
        return PackOf(bundle, order, "Struts") with
        {
            Contents = [.. bundle.Contents.Select(c => new LabelItem(c.Sku, $"Cut from {order.Kit.Parts.First(p => p.Sku == c.Sku).Description}", c.Count))],
            PieceCode = type.Code, CutLength = type.CutLength.ToString(), Tag = new(type.Tag.Colour, type.Tag.Hex, type.Tag.Bands),
        };
    }

    /// <summary>Cover is counted in square metres.</summary>
    BundleLabel CoverOf(BundleAnswer bundle, OrderedKit order) => PackOf(bundle, order, "Cover") with
    {
        Contents = [.. bundle.Contents.Select(c => new LabelItem(c.Sku, Words.Name(c.Description), c.Count, "m²"))],
    };

    TieBagLabel TieBagOf(BundleAnswer bundle, OrderedKit order)
    {
        var tier = order.Kit.Tiers[bundle.Tier];
        return new(PackOf(bundle, order, "Ties"), tier.Ties / (2 * tier.Struts.Sum(s => s.Count)), bundle.Contents.Sum(c => c.Count) - tier.Ties);
    }
}
