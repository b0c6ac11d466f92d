using KitWorks.Kits;
using KitWorks.Kits.Packing;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Orders;
using KitWorks.Shop.Packing;
using KitWorks.Shop.Quotes;

namespace KitWorks.Api.Contract;

/// <summary>A quote: what a number of kits costs, and when they can leave.</summary>
sealed record QuoteView(Guid Id, int Quantity, KitAnswer Kit, Price Price, Availability Availability, DateTimeOffset ExpiresAt)
{
    public static QuoteView Of(QuoteAnswer quote) => new(quote.Id, quote.Quantity, KitAnswer.Of(quote.Kit), quote.Price, quote.Availability, quote.ExpiresAt);
}

/// <summary>An order.</summary>
sealed record OrderView(
    Guid Id, int Number, OrderStatus Status, int Priority, int Quantity, Customer Customer, string? Reference, string DesignId, Price Price,
    IEnumerable<StockLine> Reservations, IEnumerable<Shortage> Shortages, IEnumerable<BundleView> Bundles, IEnumerable<OrderStep> History,
    int? Batch, string? Carrier, string? Tracking, DateTimeOffset PlacedAt, OrderLinks Links)
{
    public static OrderView Of(OrderAnswer o) => new(
        o.Id, o.Number, o.Status, o.Priority, o.Quantity, o.Customer, o.Reference, o.DesignId, o.Price, o.Reservations, o.Shortages,
        o.Bundles.Select(BundleView.Of), o.History, o.Batch, o.Carrier, o.Tracking, o.PlacedAt, OrderLinks.Of(o.Id));
}

/// <summary>Where an order's papers are.</summary>
sealed record OrderLinks(string Self, string Kit, string Picklist, string CutPlan, string Bundles, string Labels, string Parcels, string PackingList, string Guide)
{
    public static OrderLinks Of(Guid id)
    {
        var self = $"/api/orders/{id}";
        return new(self, self + "/kit", self + "/picklist", self + "/cut-plan", self + "/bundles", self + "/labels.pdf", self + "/parcels", self + "/packing-list.pdf", self + "/guide.pdf");
    }
}

/// <summary>A bundle, with its code.</summary>
sealed record BundleView(
    string Code, int Number, int OutOf, int KitNumber, int Tier, string TierName, BundleKind Kind, IEnumerable<BundleItem> Contents, int MassGrams,
    double LengthMm, BundleStatus Status)
{
    public static BundleView Of(BundleAnswer b) => new(
        b.Code, b.Number, b.OutOf, b.KitNumber, b.Tier, b.TierName, b.Kind, b.Contents, b.MassGrams, b.Length.Millimetres, b.Status);
}

/// <summary>The bundles of an order.</summary>
sealed record BundlesView(IEnumerable<BundleView> Bundles);
