using KitWorks.Labels.Fonts;
using SkiaSharp;

namespace KitWorks.Labels.Drawing;

/// <summary>
/// The fonts of one document: first it notes which glyphs are used, then it gives one typeface a face, cut down to them.
/// </summary>
sealed class Ink : IDisposable
{
    readonly Dictionary<Face, HashSet<ushort>> used = [];
    readonly Dictionary<Face, (SKTypeface Typeface, SKData? File)> cut = [];
    readonly Dictionary<(Face, float), SKFont> fonts = [];

    public void Note(GlyphRun run)
    {
        if (!used.TryGetValue(run.Face, out var glyphs)) used[run.Face] = glyphs = [];
        foreach (var glyph in run.Glyphs) glyphs.Add(glyph);
    }

    /// <summary>Ends the noting: from here on typefaces are subsets.</summary>
    public void CutDown()
    {
        foreach (var (face, glyphs) in used)
        {
            var file = FontSubset.Cut(face, glyphs.Order());
            var typeface = file is null ? null : SKTypeface.FromData(file, 0);
            if (typeface is not null) cut[face] = (typeface, file);
        }
    }

    /// <summary>The subsets, as font files.</summary>
    public IEnumerable<(Face Face, SKData File)> Files => cut.Where(c => c.Value.File is not null).Select(c => (c.Key, c.Value.File!));

    public SKFont Font(Face face, float size)
    {
        if (fonts.TryGetValue((face, size), out var font)) return font;
        var typeface = cut.TryGetValue(face, out var subset) ? subset.Typeface : face.Typeface;
        return fonts[(face, size)] = new SKFont(typeface, size) { Subpixel = true, LinearMetrics = true, Hinting = SKFontHinting.None, Edging = SKFontEdging.Antialias };
    }

    public void Dispose()
    {
        foreach (var font in fonts.Values) font.Dispose();
        foreach (var (typeface, file) in cut.Values)
        {
            typeface.Dispose();
            file?.Dispose();
        }
    }
}
