using System.Globalization;
using KitWorks.Drawings;
using KitWorks.Geometry;

namespace KitWorks.Shop.Printing;

/// <summary>How labels and papers say what the shop counts.</summary>
static class Words
{
    // Kits name cover with its unit before it.
    const string SquareMetres = "m² of ";

    /// <summary>So many of that: <c>5 × Strut S2</c>, <c>83 m² of film</c>.</summary>
    public static string Amount(int count, string description) => description.StartsWith(SquareMetres, StringComparison.Ordinal) ? $"{count} {description}" : $"{count} × {description}";

    /// <summary>A name without its unit.</summary>
    public static string Name(string description) => description.StartsWith(SquareMetres, StringComparison.Ordinal) ? description[SquareMetres.Length..] : description;

    /// <summary>Who gets it, on lines of their own.</summary>
    public static string Address(Orders.Customer customer) => string.IsNullOrWhiteSpace(customer.Address) ? customer.Name : $"{customer.Name}\n{customer.Address.Trim()}";

    /// <summary>A parcel's outer measures.</summary>
    public static string Measures(Shipping.ParcelAnswer parcel) => $"{parcel.Length.Millimetres:0} × {parcel.Side.Millimetres:0} × {parcel.Side.Millimetres:0} mm";

    public static string Mass(int grams) => (grams / 1000m).ToString("0.0#", CultureInfo.InvariantCulture) + " kg";
}

/// <summary>What a shelter is called on papers.</summary>
public static class ShelterNames
{
    /// <summary>Its form, and its size as it was ordered.</summary>
    public static string Of(Frame frame) => $"{ShelterName.Of(frame.Shelter)}, {SizeOf(frame.Shelter.Size)}";

    /// <summary>The size as it was ordered; measures are said beside it.</summary>
    static string SizeOf(Size size) => size switch
    {
        Size.FloorDiameter floor => $"{Metres(floor.Diameter)} floor",
        Size.Height height => $"{Metres(height.Of)} high",
        Size.Radius radius => $"{Metres(radius.Of)} radius",
        Size.LongestStrut strut => $"struts up to {strut.CutLength}",
        Size.LongSide side => $"{Metres(side.Of)} long",
        Size.ShortSide side => $"{Metres(side.Of)} wide",
        Size.Fits => "made to fit",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    static string Metres(Length length) => (length.Millimetres / 1000).ToString("0.0##", CultureInfo.InvariantCulture) + " m";
}
