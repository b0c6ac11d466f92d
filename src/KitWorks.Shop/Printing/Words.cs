using System.Globalization;
using KitWorks.Geometry;

namespace KitWorks.Shop.Printing;

/// <summary>How labels and papers say what the shop counts.</summary>
static class Words
{
    public static string Mass(int grams) => (grams / 1000m).ToString("0.0#", CultureInfo.InvariantCulture) + " kg";
}

/// <summary>What a shelter is called on papers.</summary>
static class ShelterNames
{
    public static string Of(Frame frame) => frame.Shelter switch
    {
        Dome dome => $"{dome.Lattice.Frequency}V dome, {dome.Cut}, {frame.Dimensions.WidthMm / 1000:0.0#} m wide",
        Oblong oblong => $"{oblong.Fold}-fold oblong, {frame.Dimensions.LengthMm / 1000:0.0#} × {frame.Dimensions.WidthMm / 1000:0.0#} m",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
