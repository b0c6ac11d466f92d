using System.Diagnostics.CodeAnalysis;
using HarfBuzzSharp;
using SkiaSharp;

namespace KitWorks.Labels.Fonts;

/// <summary>One font file, loaded by path: what Skia draws with and HarfBuzz shapes with.</summary>
[SuppressMessage("Design", "CA1001", Justification = "A face lives as long as the press, and a press as long as the program.")]
sealed class Face
{
    static readonly Feature[] Features = [.. new[] { "-liga", "-clig", "tnum" }.Select(Feature.Parse)];

    readonly Font shaper;
    readonly Lock shaping = new();

    Face(string path, SKTypeface typeface, HarfBuzzSharp.Face source)
    {
        (Path, Typeface, Source) = (path, typeface, source);
        (Family, Bold) = (typeface.FamilyName, typeface.FontWeight >= 600);
        source.MakeImmutable();
        shaper = new Font(source);
        shaper.SetScale(source.UnitsPerEm, source.UnitsPerEm);
    }

    public string Path { get; }

    public SKTypeface Typeface { get; }

    public HarfBuzzSharp.Face Source { get; }

    public string Family { get; }

    public bool Bold { get; }

    /// <summary>The face in a file, or null where the file is missing or holds no upright face that can be read.</summary>
    public static Face? Load(string path)
    {
        // Skia answers null for a missing or broken file and never throws.
        var typeface = SKTypeface.FromFile(path, 0);
        if (typeface is null || typeface.GlyphCount == 0 || typeface.FontSlant != SKFontStyleSlant.Upright) return null;
        using var blob = Blob.FromFile(path);
        return new(path, typeface, new HarfBuzzSharp.Face(blob, 0));
    }

    public bool Has(int codePoint) => shaper.TryGetNominalGlyph(codePoint, out _);

    /// <summary>Turns text into glyphs, without ligatures so that it reads back letter by letter, with figures of one width.</summary>
    public GlyphRun Shape(string text, bool rightToLeft)
    {
        using var buffer = new HarfBuzzSharp.Buffer();
        buffer.AddUtf16(text);
        buffer.GuessSegmentProperties();
        buffer.Direction = rightToLeft ? Direction.RightToLeft : Direction.LeftToRight;
        lock (shaping) shaper.Shape(buffer, Features);
        var infos = buffer.GetGlyphInfoSpan();
        var positions = buffer.GetGlyphPositionSpan();
        var (glyphs, clusters, points) = (new ushort[infos.Length], new uint[infos.Length], new SKPoint[infos.Length]);
        float em = Source.UnitsPerEm, pen = 0;
        for (var i = 0; i < infos.Length; i++)
        {
            glyphs[i] = (ushort)infos[i].Codepoint;
            clusters[i] = infos[i].Cluster;
            points[i] = new(pen + positions[i].XOffset / em, -positions[i].YOffset / em);
            pen += positions[i].XAdvance / em;
        }
        return new(this, text, glyphs, clusters, points, pen);
    }
}

/// <summary>Glyphs of one face in a row; measures are in ems.</summary>
/// <param name="Face">The face.</param>
/// <param name="Text">What the glyphs say.</param>
/// <param name="Glyphs">The glyphs, left to right.</param>
/// <param name="Clusters">For each glyph, where in the text it comes from.</param>
/// <param name="Points">Where each sits, from the run's left end on the baseline.</param>
/// <param name="Width">The run's width.</param>
sealed record GlyphRun(Face Face, string Text, ushort[] Glyphs, uint[] Clusters, SKPoint[] Points, float Width);
