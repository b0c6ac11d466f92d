using KitWorks.Geometry;

namespace KitWorks.Drawings;

/// <summary>What a shelter is called in a headline.</summary>
public static class ShelterName
{
    /// <summary>Its form, without its size.</summary>
    public static string Of(Shelter shelter) => shelter switch
    {
        Dome d => $"{Frequency(d.Lattice)} {Solid(d.Solid)}, {d.Cut}{Class(d.Lattice)}",
        Oblong o => $"Oblong, {o.Fold}-fold, {o.Frequency}V" + (o.Bays == 0 ? "" : $", {o.Bays} {(Math.Abs(o.Bays) == 1 ? "bay" : "bays")}"),
        _ => throw new ArgumentException($"A {shelter.GetType().Name} has no name here.", nameof(shelter)),
    };

    static string Frequency(Lattice lattice) => $"{lattice.Frequency}V";

    static string Class(Lattice lattice) => lattice.Class switch
    {
        1 => "",
        2 => ", class 2",
        _ => $", class 3 ({lattice.B}, {lattice.C})",
    };

    static string Solid(BaseSolid solid) => solid switch
    {
        BaseSolid.Icosahedron => "dome",
        BaseSolid.Octahedron => "octahedral dome",
        BaseSolid.Tetrahedron => "tetrahedral dome",
    };
}
