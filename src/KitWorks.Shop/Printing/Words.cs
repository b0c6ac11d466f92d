using System.Globalization;
using KitWorks.Geometry;

namespace KitWorks.Shop.Printing;

/// <summary>How labels and papers say what the shop counts.</summary>
static class Words
{
    public static string Mass(int grams) => (grams / 1000m).ToString("0.0#", CultureInfo.InvariantCulture) + " kg";
}

/// <summary>What a shelter is called on papers.</summary>
public static class ShelterNames
{
    /// <summary>Its form, and its size as it was ordered.</summary>
    public static string Of(Frame frame) => frame.Shelter switch
    {
        Dome dome => $"{dome.Lattice.Frequency}V dome, {dome.Cut}, {SizeOf(dome.Size)}",
        Oblong oblong => $"{oblong.Fold}-fold oblong, {SizeOf(oblong.Size)}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

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
