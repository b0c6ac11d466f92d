using System.Collections.Immutable;

namespace KitWorks.Kits.Catalog;

/// <summary>One colour that strut types are tagged with.</summary>
/// <param name="Name">Its name, as spoken over the telephone.</param>
/// <param name="Hex">Its value on screen and paper: #RRGGBB.</param>
public sealed record TagColour(string Name, string Hex);

/// <summary>The marker of a strut type: a colour, and bands that tell it from others in black and white too.</summary>
/// <param name="Colour">The colour's name.</param>
/// <param name="Hex">The colour's value: #RRGGBB.</param>
/// <param name="Bands">How many bands are put round the strut: 1 or more.</param>
public sealed record Tag(string Colour, string Hex, int Bands);

/// <summary>The colours a shop tags with, in the order in which strut types take them.</summary>
/// <param name="Colours">One colour or more.</param>
public sealed record Palette(ImmutableArray<TagColour> Colours)
{
    /// <summary>
    /// Eight colours that people with any colour vision tell apart: M. Okabe and K. Ito, Color Universal Design (2008),
    /// from memory; ordered so that neighbours differ most.
    /// </summary>
    public static Palette ColourBlindSafe { get; } = new(
    [
        new("orange", "#E69F00"),
        new("sky blue", "#56B4E9"),
        new("reddish purple", "#CC79A7"),
        new("bluish green", "#009E73"),
        new("vermillion", "#D55E00"),
        new("yellow", "#F0E442"),
        new("blue", "#0072B2"),
        new("black", "#000000"),
    ]);

    /// <summary>
    /// The tag of the strut type at a place, 0 the shortest. Colours go round; each round has one band more, so that no
    /// two types share a tag.
    /// </summary>
    public Tag TagFor(int place)
    {
        var colour = Colours[place % Colours.Length];
        return new(colour.Name, colour.Hex, 1 + place / Colours.Length);
    }
}
