namespace KitWorks.Tests;

/// <summary>Designs as a storefront sends them.</summary>
static class Designs
{
    /// <summary>3V 5/8 with a floor of 6 m: 61 hubs, 165 struts.</summary>
    public static object Greenhouse => Of(Dome(3, "5/8", "6 m"), cover: new { layers = 1 });

    /// <summary>2V 1/2 with a floor of 3.6 m, no cover: 26 hubs, 65 struts, 10 stakes.</summary>
    public static object SmallDome => Of(Dome(2, "1/2", "3600 mm"));

    public static object Dome(int frequency, string cut, string floorDiameter) =>
        new { kind = "dome", solid = "icosahedron", @class = 1, frequency, cut, flatBase = false, size = new { floorDiameter } };

    public static object Of(object shelter, object? cover = null, string hubSystem = "ring-100", string strutStock = "pvc-33") =>
        new { shelter, hubSystem, strutStock, cover, maxStrutTypes = (int?)null };
}
