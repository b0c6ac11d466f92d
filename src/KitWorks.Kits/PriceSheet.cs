using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Parcels;

namespace KitWorks.Kits;

/// <summary>A price in the making, line by line.</summary>
sealed class PriceSheet(PriceBook book)
{
    readonly List<PriceLine> lines = [];
    readonly List<Warning> warnings = [];
    readonly List<string> withoutCost = [];

    public void AddMaterials(Kit kit, int quantity)
    {
        foreach (var part in kit.Parts)
        {
            if (!book.UnitCosts.TryGetValue(part.Sku, out var each)) withoutCost.Add(part.Sku);
            Add(PriceLineKind.Material, part.Description, checked(part.Quantity * quantity), each, WhyOf(part, kit, quantity));
            var spoilt = book.WastePercent.GetValueOrDefault(part.Sku);
            if (spoilt > 0)
                AddOnce(PriceLineKind.Waste, $"Waste of {part.Description}", lines[^1].Amount.Amount * spoilt / 100, $"{spoilt:0.##} % of {Paid(lines[^1].Amount.Amount)}");
        }
    }

    static string WhyOf(Part part, Kit kit, int quantity)
    {
        var perKit = quantity == 1 ? "At cost" : $"{part.Quantity} for each kit, at cost";
        return part.Kind == PartKind.StrutStock ? $"{perKit}; whole lengths, of which {kit.CutPlan.WasteRatio:0.0 %} is sawdust and short ends" : perKit;
    }

    public void AddWork(Kit kit, int quantity, ParcelPlan? parcels)
    {
        var struts = kit.StrutTypes.Sum(t => t.Count);
        AddPiecework(book.PerTag > 0 ? "Cutting struts" : "Cutting and tagging struts", struts, quantity, book.PerCut, "struts");
        if (book.PerTag > 0) AddPiecework("Tagging struts", struts, quantity, book.PerTag, "struts");
        if (book.PerSawSetting > 0)
            Add(PriceLineKind.Labour, "Setting the saw", kit.StrutTypes.Length, book.PerSawSetting, "Once for each strut length, however many kits");
        AddPiecework("Packing and labelling bundles", kit.Bundles.Length, quantity, book.PerBundle, "bundles");
        if (book.PerKit > 0) Add(PriceLineKind.Labour, "Papers and last look", quantity, book.PerKit, "Once for each kit");
        if (book.PerParcel > 0 && parcels is not null)
            Add(PriceLineKind.Labour, "Filling and labelling parcels", parcels.Parcels.Length, book.PerParcel, "Once for each parcel");
    }

    void AddPiecework(string description, int perKit, int quantity, decimal each, string what) =>
        Add(PriceLineKind.Labour, description, checked(perKit * quantity), each, quantity == 1 ? $"{perKit} {what}" : $"{perKit} {what} for each kit");

    public void AddOverheadAndMargin()
    {
        if (book.OverheadPercent > 0) AddPercent(PriceLineKind.Overhead, "Overhead", book.OverheadPercent, "material and work");
        AddPercent(PriceLineKind.Margin, "Margin", book.MarkupPercent, book.OverheadPercent > 0 ? "material, work and overhead" : "material and work");
    }

    public void TakeOffForMany(int quantity)
    {
        if (book.QuantityBreaks.Where(b => b.From <= quantity).MaxBy(b => b.From) is { PercentOff: > 0 } off)
            AddPercent(PriceLineKind.Discount, $"From {off.From} kits", -off.PercentOff, "all the above");
    }

    public void AddShipping(ParcelPlan? parcels)
    {
        if (book.Shipping.IsEmpty || parcels is null) return;
        foreach (var group in parcels.Parcels.GroupBy(p => (Rate: RateOf(p), p.Kind)).OrderBy(g => g.Min(p => p.Number)))
        {
            if (group.Key.Rate is not { } rate) withoutCost.AddRange(group.Select(p => $"shipping of a {p.Kind.Name} of {p.MassGrams / 1000m:0.0} kg"));
            else
                Add(PriceLineKind.Shipping, $"Shipping, {group.Key.Kind.Name} up to {rate.UpToGrams / 1000m:0.###} kg", group.Count(), rate.Price,
                    $"By the carrier's table: {string.Join(", ", group.Select(p => $"{p.MassGrams / 1000m:0.0} kg"))}");
        }
    }

    ShippingRate? RateOf(Parcel parcel)
    {
        var own = book.Shipping.Where(r => r.Kind == parcel.Kind.Code).ToList();
        return (own.Count > 0 ? own : book.Shipping.Where(r => r.Kind is null)).Where(r => r.UpToGrams >= parcel.MassGrams).MinBy(r => r.UpToGrams);
    }

    public Outcome<Price> Price()
    {
        if (book.UnitCosts.IsEmpty) warnings.Insert(0, new("price.no-book", "The shop has put no costs of its stock into its price book; this price has no materials in it."));
        else if (withoutCost.Count > 0)
        {
            var what = $"There is no cost in the price book for {string.Join(", ", withoutCost.Distinct())}";
            if (book.WhenCostMissing == WhenCostMissing.Refuse) return new Refusal(RefusalKind.Impossible, "price.no-cost", $"{what}. Put it with PUT /api/catalog/prices.");
            warnings.Add(new("price.no-cost", $"{what}; this price is without it."));
        }
        return new Price([.. lines], MoneyOf(lines.Sum(l => l.Amount.Amount))) { Warnings = [.. warnings] };
    }

    void Add(PriceLineKind kind, string description, int quantity, decimal each, string why) =>
        lines.Add(new(description, quantity, MoneyOf(each), MoneyOf(Currencies.Round(quantity * each, book.Currency))) { Kind = kind, Why = why });

    void AddPercent(PriceLineKind kind, string name, decimal percent, string of)
    {
        var sum = lines.Sum(l => l.Amount.Amount);
        AddOnce(kind, $"{name}, {percent:0.##} %", sum * percent / 100, $"{percent:0.##} % of {of}, {Paid(sum)}");
    }

    /// <summary>A share of a sum is an amount of its own: it is rounded at once, and stands once.</summary>
    void AddOnce(PriceLineKind kind, string description, decimal amount, string why) =>
        Add(kind, description, 1, Currencies.Round(amount, book.Currency), why);

    Money MoneyOf(decimal amount) => new(amount, book.Currency);

    string Paid(decimal amount) => $"{Currencies.Round(amount, book.Currency).ToString("N" + Currencies.Decimals(book.Currency))} {book.Currency}";
}
