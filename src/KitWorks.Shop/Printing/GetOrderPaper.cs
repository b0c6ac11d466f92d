using System.Globalization;
using KitWorks.Drawings;
using KitWorks.Geometry;
using KitWorks.Labels;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Packing;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Shipping;
using MediatR;

namespace KitWorks.Shop.Printing;

/// <summary>A document that goes with an order.</summary>
public enum PaperKind
{
    /// <summary>What to take from stock, by bin path.</summary>
    Picklist,

    /// <summary>How to cut the pipe of all of the order's kits.</summary>
    CutSheet,

    /// <summary>What is in the box.</summary>
    PackingList,

    /// <summary>What the customer builds by.</summary>
    BuildGuide,
}

/// <summary>One of an order's papers, as PDF.</summary>
public sealed record GetOrderPaper(Guid OrderId, PaperKind Paper, PaperSize Size = PaperSize.A4, Units Units = Units.Metric) : IQuery<byte[]>;

sealed class GetOrderPaperHandler(IMediator mediator, OrderLabelPress press, ShopSettings settings) : IRequestHandler<GetOrderPaper, Outcome<byte[]>>
{
    public async Task<Outcome<byte[]>> Handle(GetOrderPaper query, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetOrderKit(query.OrderId), cancellationToken)).Succeeds(out var order, out var refusal)) return refusal;
        var paper = query.Paper switch
        {
            PaperKind.Picklist => await PicklistOf(order, cancellationToken),
            PaperKind.CutSheet => CutSheet.For(
                order.Kit.CutPlan, order.Kit.StrutTypes, NumberOf(order), BuiltBy(order), Measure.Part(order.Kit.Kerf.Millimetres, query.Units), query.Units, settings.ShopName, order.Quantity),
            PaperKind.PackingList => await PackingListOf(order, cancellationToken),
            PaperKind.BuildGuide => BuildGuide.Of(order.Kit, NumberOf(order), ShelterNames.Of(order.Kit.Frame), settings.ShopName, query.Units).Select(guide => (Paper)guide),
        };
        return paper.Then(p => press.Press.Pdf(p, query.Size));
    }

    async Task<Outcome<Paper>> PicklistOf(OrderedKit order, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetPicklist(order.OrderId), cancellationToken)).Succeeds(out var picklist, out var refusal)) return refusal;
        return new Labels.Picklist
        {
            Order = NumberOf(order),
            Shop = settings.ShopName,
            Shelter = BuiltBy(order),
            Customer = order.Customer,
            Warnings = [.. order.Kit.Warnings.Select(w => w.Detail)],
            Lines =
            [
                .. picklist.Lines.Select(l => new PickLine(
                    l.Bin, l.Sku, l.Description, l.Quantity, l.Code is null ? "" : "cut", l.Tier, l.Tag is { } tag ? new(tag.Colour, tag.Hex, tag.Bands) : TagMark.None)),
            ],
        };
    }

    async Task<Outcome<Paper>> PackingListOf(OrderedKit order, CancellationToken cancellationToken)
    {
        var bundles = (await mediator.Send(new ListBundles(order.OrderId), cancellationToken)).Value;
        var tags = order.Kit.StrutTypes.ToDictionary(t => t.Code, t => new TagMark(t.Tag.Colour, t.Tag.Hex, t.Tag.Bands));
        // Parcels that are not planned yet may come out otherwise; a paper says only what is so.
        (await mediator.Send(new GetParcels(order.OrderId), cancellationToken)).Succeeds(out var found, out _);
        var parcels = found is { Planned: true } ? found.Parcels : [];
        var parcelOf = parcels.SelectMany(p => p.Bundles, (p, b) => (b.Number, Parcel: p.Number)).ToDictionary(x => x.Number, x => x.Parcel);
        return new PackingList
        {
            Order = NumberOf(order),
            Shop = settings.ShopName,
            To = order.Customer,
            From = settings.ShopName,
            Shelter = BuiltBy(order),
            Mass = Words.Mass(bundles.Sum(b => b.MassGrams)),
            Bundles =
            [
                .. bundles.Select(b => new Labels.PackedBundle(
                    NumberInKit(b), b.Code, b.Tier, string.Join(", ", b.Contents.Select(c => Words.Amount(c.Count, c.Description))),
                    b.Contents[0].Code is { } code ? tags[code] : TagMark.None, Words.Mass(b.MassGrams), parcelOf.GetValueOrDefault(b.Number), b.Kits == 1 ? "" : NumberOf(b.KitNumber))),
            ],
            Parcels =
            [
                .. parcels.Select(p => new PackedParcel(
                    p.Number, p.Sscc ?? "", Words.Measures(p), Words.Mass(p.MassGrams), p.Kind,
                    string.Join(", ", p.Bundles.Select(b => $"{NumberInKit(b)} ({string.Join(", ", b.Contents.Select(c => Words.Amount(c.Count, c.Description)))})")))),
            ],
        };
    }

    /// <summary>What is being built, and how often.</summary>
    static string BuiltBy(OrderedKit order) => order.Quantity == 1 ? ShelterNames.Of(order.Kit.Frame) : $"{order.Quantity} kits, each a {ShelterNames.Of(order.Kit.Frame)}";

    static int NumberInKit(BundleAnswer bundle) => bundle.Number - (bundle.KitNumber - 1) * bundle.OutOf / bundle.Kits;

    static string NumberOf(OrderedKit order) => NumberOf(order.Number);

    static string NumberOf(int number) => number.ToString(CultureInfo.InvariantCulture);
}
