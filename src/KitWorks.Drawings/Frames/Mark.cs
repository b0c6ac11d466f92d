using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;

namespace KitWorks.Drawings.Frames;

/// <summary>How the struts of one type are told apart on paper.</summary>
/// <param name="Code">The strut type's code.</param>
/// <param name="Tag">Its tag.</param>
/// <param name="Pattern">The pattern inside the line, for black and white; one for each colour.</param>
/// <param name="LengthMm">The length that the legend gives.</param>
sealed record Mark(string Code, Tag Tag, int Pattern, double LengthMm);

/// <summary>The marks of a frame's struts.</summary>
sealed class Marks
{
    readonly int[] ofFamily;

    Marks(Mark[] all, int[] ofFamily, bool areCutLengths) => (All, this.ofFamily, AreCutLengths) = (all, ofFamily, areCutLengths);

    /// <summary>From the shortest.</summary>
    public IReadOnlyList<Mark> All { get; }

    /// <summary>Whether the lengths are cut lengths; spacings otherwise.</summary>
    public bool AreCutLengths { get; }

    public int IndexOf(Strut strut) => ofFamily[strut.Family];

    public Mark Of(Strut strut) => All[ofFamily[strut.Family]];

    /// <summary>One mark a strut type, or, without types, one a family with the default palette.</summary>
    /// <exception cref="ArgumentException">A family of the frame belongs to no type or to several.</exception>
    public static Marks For(Frame frame, IReadOnlyList<StrutType>? types)
    {
        var colours = new List<string>();
        if (types is null)
        {
            var marks = frame.Families.Select((f, i) =>
            {
                var tag = Palette.ColourBlindSafe.TagFor(i);
                return new Mark($"S{i + 1}", tag, PatternOf(tag, colours), f.SpacingMm);
            });
            return new([.. marks], [.. Enumerable.Range(0, frame.Families.Length)], areCutLengths: false);
        }
        var ofFamily = new int[frame.Families.Length];
        Array.Fill(ofFamily, -1);
        for (var type = 0; type < types.Count; type++)
        {
            foreach (var family in types[type].Families)
            {
                if (family < 0 || family >= ofFamily.Length || ofFamily[family] >= 0)
                    throw new ArgumentException($"Family {family} of strut type {types[type].Code} is not one of the frame's, or is in two types.", nameof(types));
                ofFamily[family] = type;
            }
        }
        var missing = Array.IndexOf(ofFamily, -1);
        if (missing >= 0) throw new ArgumentException($"Family {missing} of the frame belongs to no strut type.", nameof(types));
        return new([.. types.Select(t => new Mark(t.Code, t.Tag, PatternOf(t.Tag, colours), t.CutLength.Millimetres))], ofFamily, areCutLengths: true);
    }

    static int PatternOf(Tag tag, List<string> colours)
    {
        if (!colours.Contains(tag.Hex)) colours.Add(tag.Hex);
        return colours.IndexOf(tag.Hex);
    }
}
