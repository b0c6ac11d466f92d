using System.Globalization;
using KitWorks.Geometry;
using KitWorks.Kits.Packing;
using KitWorks.Labels;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Packing;
using KitWorks.Shop.Pipeline;
using MediatR;

namespace KitWorks.Shop.Printing;

/// <summary>What labels are printed as.</summary>
public enum LabelFormat
{
    /// <summary>All labels, for any printer.</summary>
    Pdf,

    /// <summary>One label as a picture of dots.</summary>
    Png,

    /// <summary>One label as a drawing.</summary>
    Svg,

    /// <summary>All labels as PWG raster, for printers of labels.</summary>
    Raster,
}

/// <summary>The bundle labels of an order.</summary>
public sealed record GetOrderLabels(Guid OrderId, LabelFormat Format) : IQuery<byte[]>
{
    /// <summary>The labels of this tier only; null for all.</summary>
    public int? Tier { get; init; }

    /// <summary>The label of this bundle only; needed where more than one is left and the format takes one.</summary>
    public string? Bundle { get; init; }

    /// <summary>The name of a label stock.</summary>
    public string Stock { get; init; } = LabelStock.Page100x150.Name;

    /// <summary>The first free place of a half-used sheet, from 1.</summary>
    public int StartAt { get; init; } = 1;

    /// <summary>Dots to the inch of the printer.</summary>
    public int Dpi { get; init; } = 300;
}

sealed class GetOrderLabelsHandler(IMediator mediator, OrderLabelPress press, ShopSettings settings) : IRequestHandler<GetOrderLabels, Outcome<byte[]>>
{
    public async Task<Outcome<byte[]>> Handle(GetOrderLabels query, CancellationToken cancellationToken)
    {
        if (LabelStock.Named(query.Stock) is not { } stock)
            return Refusal.OfField("label.stock", "sheet", $"There is no label stock '{query.Stock}'; it is one of {string.Join(", ", LabelStock.BuiltIn.Select(s => s.Name))}.");
        if (!(await mediator.Send(new GetOrderKit(query.OrderId), cancellationToken)).Succeeds(out var order, out var refusal)) return refusal;
        var bundles = (await mediator.Send(new ListBundles(query.OrderId), cancellationToken)).Value
            .Where(b => (query.Tier is null || b.Tier == query.Tier) && (query.Bundle is null || b.Code == query.Bundle)).ToList();
        if (bundles.Count == 0)
            return new Refusal(RefusalKind.NotFound, "label.none", $"Order {order.Number} has no such bundle; its tiers are 0 to {order.Kit.Tiers.Length - 1}.");
        List<Label> labels = [.. bundles.Select(b => LabelOf(b, order))];
        stock = stock with { Dpi = query.Dpi };
        return query.Format switch
        {
            LabelFormat.Pdf => press.Press.Pdf(labels, stock, query.StartAt),
            LabelFormat.Png => press.Press.Png(labels[0], query.Dpi, stock),
            LabelFormat.Raster => press.Press.Raster(labels, stock),
            LabelFormat.Svg => press.Press.Svg(labels[0], stock).Select(System.Text.Encoding.UTF8.GetBytes),
        };
    }

    Label LabelOf(BundleAnswer bundle, OrderedKit order) => bundle.Kind switch
    {
        BundleKind.Hubs => new HubBagLabel(PackOf(bundle, order, "Hubs")),
        BundleKind.Ties => TieBagOf(bundle, order),
        BundleKind.Struts => StrutsOf(bundle, order),
        BundleKind.Stakes => PackOf(bundle, order, "Stakes"),
        BundleKind.Cover => PackOf(bundle, order, "Cover"),
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
            PieceCode = type.Code, CutLength = type.CutLength.ToString(), Tag = new(type.Tag.Colour, type.Tag.Hex, type.Tag.Bands),
        };
    }

    TieBagLabel TieBagOf(BundleAnswer bundle, OrderedKit order)
    {
        var tier = order.Kit.Tiers[bundle.Tier];
        return new(PackOf(bundle, order, "Ties"), tier.Ties / (2 * tier.Struts.Sum(s => s.Count)), bundle.Contents.Sum(c => c.Count) - tier.Ties);
    }
}

/// <summary>The shop's label press, opened once. A template that is wrong or a font that is missing stops the program at its start.</summary>
public sealed class OrderLabelPress(ShopSettings settings)
{
    /// <summary>The press.</summary>
    public LabelPress Press { get; } = LabelPress.Open(new() { OwnTemplates = settings.LabelTemplates }).Value;
}
