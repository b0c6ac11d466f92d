using System.Text.RegularExpressions;
using System.Xml.Linq;
using KitWorks.Geometry;
using KitWorks.Labels.Fonts;
using SkiaSharp;

namespace KitWorks.Labels.Templates;

/// <summary>Reads a text element and its spans: each span with a place of its own starts a new line.</summary>
sealed partial class TextReader(string file, bool isPicture, Stylesheet sheet, FontShelf fonts)
{
    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    public IEnumerable<TextPart> Read(XElement text, TextStyle style, SKMatrix transform, ref Refusal? wrong)
    {
        var lines = new List<(SKPoint At, XElement Element, List<(TextStyle Style, XText Text)> Pieces)> { (Place(text, default), text, []) };
        Collect(text, style, lines);
        var parts = new List<TextPart>();
        foreach (var (at, element, found) in lines.Where(l => l.Pieces.Any(p => !string.IsNullOrWhiteSpace(p.Text.Value))))
        {
            var words = string.Concat(found.Select(p => p.Text.Value));
            var place = Templates.Place.Of(file, found.First(p => !string.IsNullOrWhiteSpace(p.Text.Value)).Text, words);
            var fit = isPicture ? new Fit(null, 1, 1, false) : FitOf(Note.On(element, file) ?? Note.On(text, file), place, Placeholder.IsIn(words));
            var pieces = WithoutBlankEnds(found).Select(p => Piece(p.Style, p.Text)).ToList();
            wrong ??= fit.Refusal ?? pieces.Select(p => p.Refusal).FirstOrDefault(r => r is not null);
            if (wrong is not null) return [];
            if ((fit.Value.Lines > 1 || fit.Value.Clips) && pieces.Count > 1) wrong = place.Refuse("Text of several styles stays on one line, whole.");
            parts.Add(new(place, transform, at, [.. pieces.Select(p => p.Value)], fit.Value));
        }
        return parts;
    }

    void Collect(XElement element, TextStyle style, List<(SKPoint, XElement, List<(TextStyle, XText)> Pieces)> lines)
    {
        foreach (var node in element.Nodes())
        {
            if (node is XText words) lines[^1].Pieces.Add((style, words));
            else if (node is XElement span && span.Name == SvgNames.Of("tspan"))
            {
                if (span.Attribute("x") is not null || span.Attribute("y") is not null)
                    lines.Add((Place(span, lines[^1].Item1), span, []));
                Collect(span, style.Of(span, sheet, fonts.HasFamily, file), lines);
            }
        }
    }

    static List<(TextStyle Style, XText Text)> WithoutBlankEnds(List<(TextStyle Style, XText Text)> pieces)
    {
        var first = pieces.FindIndex(p => !string.IsNullOrWhiteSpace(p.Text.Value));
        var last = pieces.FindLastIndex(p => !string.IsNullOrWhiteSpace(p.Text.Value));
        return pieces.GetRange(first, last - first + 1);
    }

    static SKPoint Place(XElement element, SKPoint otherwise) => new(
        TextStyle.TryNumber((string?)element.Attribute("x") ?? "", out var x) ? x : otherwise.X,
        TextStyle.TryNumber((string?)element.Attribute("y") ?? "", out var y) ? y : otherwise.Y);

    Outcome<TextPiece> Piece(TextStyle style, XText text)
    {
        if (style.Fault is not null) return style.Fault;
        // Line ends in the file are layout of the file; line ends in a value are kept.
        var words = Spaces().Replace(text.Value, " ");
        if (isPicture || !Placeholder.IsIn(words)) return new TextPiece(style, words, null);
        return Placeholder.Parse(Templates.Place.Of(file, text, text.Value), words).Select(p => new TextPiece(style, "", p));
    }

    static Outcome<Fit> FitOf(Note? note, Place place, bool hasPlaceholder)
    {
        if (note is null) return hasPlaceholder
            ? place.Refuse("Text with a placeholder says how wide it may be in its description: “width 60”, and if need be “lines 2” or “least 0.5”.")
            : new Fit(null, 1, 1, false);
        if (note.Word != "width" || !TextStyle.TryNumber(note.Rest, out var width) || width <= 0) return note.Place.Refuse("A text's description is “width” and a number.");
        var (lines, least) = (note.Number("lines", 1), note.Number("least", 0.6f));
        return (lines.Refusal ?? least.Refusal) is { } refusal ? refusal : new Fit(width, lines.Value, Math.Min(1, least.Value), note.Settings.ContainsKey("wrap"), note.Settings.ContainsKey("clip"));
    }
}
