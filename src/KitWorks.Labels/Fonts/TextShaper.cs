using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using KitWorks.Geometry;

namespace KitWorks.Labels.Fonts;

/// <summary>Text of one style as it will be drawn; measures are in ems.</summary>
sealed record ShapedText(ImmutableArray<GlyphRun> Runs, float Width);

/// <summary>Splits text by what the fonts cover and shapes the pieces. What was shaped is remembered.</summary>
sealed class TextShaper(FontShelf fonts)
{
    const int Remembered = 8192;

    // A white square, else a question mark.
    static readonly Rune[] Stand = [new('\u25a1'), new('?')];

    readonly ConcurrentDictionary<(string Text, string Family, bool Bold), ShapedText> shaped = new();

    public Outcome<ShapedText> Shape(string text, string family, bool bold)
    {
        if (shaped.TryGetValue((text, family, bold), out var known)) return known;
        var runs = ImmutableArray.CreateBuilder<GlyphRun>();
        foreach (var (stretch, rightToLeft) in Bidi.Order(text))
        {
            if (!SplitByFace(stretch, family, bold).Succeeds(out var pieces, out var refusal)) return refusal;
            if (rightToLeft) pieces.Reverse();
            runs.AddRange(pieces.Select(p => p.Face.Shape(p.Text.ToString(), rightToLeft)));
        }
        var result = new ShapedText(runs.ToImmutable(), runs.Sum(r => r.Width));
        if (shaped.Count >= Remembered) shaped.Clear();
        shaped[(text, family, bold)] = result;
        return result;
    }

    Outcome<List<(Face Face, StringBuilder Text)>> SplitByFace(string text, string family, bool bold)
    {
        var pieces = new List<(Face Face, StringBuilder Text)>();
        foreach (var rune in text.EnumerateRunes())
        {
            // Joiners and direction marks have no picture of their own and go with what stands before them.
            var isMark = Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.Format;
            var (drawn, face) = (rune, isMark && pieces.Count > 0 ? pieces[^1].Face : fonts.FaceFor(rune.Value, family, bold));
            // People's names are printed as well as can be: a box shows where a character is missing.
            if (face is null) (drawn, face) = Stand.Select(s => (s, fonts.FaceFor(s.Value, family, bold))).FirstOrDefault(s => s.Item2 is not null);
            if (face is null)
                return new Refusal(RefusalKind.Impossible, "label.glyph-missing",
                    $"No font has the character “{rune}” (U+{rune.Value:X4}) of “{text}”. Put a font that has it into the font folder.");
            if (pieces.Count == 0 || pieces[^1].Face != face) pieces.Add((face, new()));
            pieces[^1].Text.Append(drawn.ToString());
        }
        return pieces;
    }
}
