using KitWorks.Shop.Shipping;

namespace KitWorks.Api.Contract;

/// <summary>The parcels of an order. Those that are not planned yet have no SSCC and may come out otherwise.</summary>
sealed record ParcelsView(Guid OrderId, int Number, bool Planned, int LowerBound, bool Proven, IEnumerable<ParcelView> Parcels)
{
    public static ParcelsView Of(OrderParcels p) => new(p.OrderId, p.Number, p.Planned, p.LowerBound, p.Proven, p.Parcels.Select(ParcelView.Of));
}

/// <summary>One parcel, with its bundles from the bottom up; the two shorter sides are those of a square.</summary>
sealed record ParcelView(int Number, string Kind, string? Sscc, int MassGrams, double LengthMm, double WidthMm, double HeightMm, double LengthAndGirthMm, IEnumerable<ParcelBundleView> Bundles)
{
    public static ParcelView Of(ParcelAnswer p) => new(
        p.Number, p.Kind, p.Sscc, p.MassGrams, p.Length.Millimetres, p.Side.Millimetres, p.Side.Millimetres, (p.Length.Tenths + 4 * p.Side.Tenths) / 10.0,
        p.Bundles.Select(b => new ParcelBundleView(b.Code, b.Number, b.KitNumber, b.Tier, b.MassGrams, b.Length.Millimetres)));
}

/// <summary>A bundle in a parcel.</summary>
sealed record ParcelBundleView(string Code, int Number, int KitNumber, int Tier, int MassGrams, double LengthMm);
