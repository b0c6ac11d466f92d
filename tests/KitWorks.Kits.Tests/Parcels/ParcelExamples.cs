using KitWorks.Geometry;
using KitWorks.Kits.Catalog;
using KitWorks.Kits.Packing;

namespace KitWorks.Kits.Tests;

/// <summary>Made-up tables of parcels, and bundles.</summary>
static class ParcelExamples
{
    static Length Mm(double millimetres) => Length.FromMillimetres(millimetres);

    /// <summary>1.75 m, 3 m with girth and 31.5 kg: limits such as carriers set.</summary>
    public static ParcelRules Rules { get; } = Table(new ParcelKind
    {
        Code = "standard", Name = "Standard parcel", MaxLength = Mm(1750), MaxLengthAndGirth = Mm(3000), MaxGrams = 31_500, TareGrams = 600,
    });

    public static ParcelRules Table(params ParcelKind[] kinds) => new() { Kinds = [.. kinds] };

    /// <summary>A kind that only mass limits.</summary>
    public static ParcelKind ByMass(int grams) => new() { Code = "mass", Name = "Crate", MaxLength = Mm(5000), MaxLengthAndGirth = Mm(90_000), MaxGrams = grams };

    public static Bundle Struts(int number, double lengthMm, int pieces, int grams, double widthMm = 33.4) =>
        new(number, 0, BundleKind.Struts, [new("pipe", "S1", "Strut", pieces)], grams, Mm(lengthMm)) { PieceWidth = Mm(widthMm) };

    public static Bundle Bag(int number, int grams) => new(number, 0, BundleKind.Hubs, [new("hub", null, "Hub", 1)], grams, Length.Zero);
}
