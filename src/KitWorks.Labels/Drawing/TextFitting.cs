using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Labels.Fonts;
using KitWorks.Labels.Templates;

namespace KitWorks.Labels.Drawing;

/// <summary>One style's stretch of a line.</summary>
readonly record struct Stretch(ShapedText Text, TextStyle Style);

/// <summary>Lines of text and the share of their own size at which they fit.</summary>
sealed record FittedText(ImmutableArray<ImmutableArray<Stretch>> Lines, float Scale);

/// <summary>Makes text fit: it shrinks, then wraps, then is refused.</summary>
sealed class TextFitting(TextShaper shaper)
{
    const float Step = 0.95f;
    const float Slack = 1.0005f;
    const float Rounding = 0.001f;

    public Outcome<FittedText> Fit(TextPart part, IReadOnlyList<string> words)
    {
        if (words.Count == 1 && part.Fit.Lines > 1) return FitBlock(part, words[0]);
        var line = ImmutableArray.CreateBuilder<Stretch>(words.Count);
        float width = 0;
        for (var i = 0; i < words.Count; i++)
        {
            var style = part.Pieces[i].Style;
            var text = (i == 0 ? words[i].TrimStart() : words[i]).ReplaceLineEndings(", ");
            if (!shaper.Shape(i == words.Count - 1 ? text.TrimEnd() : text, style.Family, style.Bold).Succeeds(out var shaped, out var refusal)) return refusal;
            line.Add(new(shaped, style));
            width += shaped.Width * style.Size;
        }
        if (part.Fit.Width is not { } room || width <= room * Slack) return new FittedText([line.ToImmutable()], 1);
        var scale = InSteps(room / width);
        return scale >= part.Fit.Least ? new FittedText([line.ToImmutable()], scale) : TooLong(part, string.Concat(words));
    }

    Outcome<FittedText> FitBlock(TextPart part, string words)
    {
        var style = part.Pieces[0].Style;
        var room = part.Fit.Width ?? float.MaxValue;
        var paragraphs = words.Split('\n').Select(p => p.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Where(p => p.Length > 0).ToList();
        if (!part.Fit.WrapFirst && paragraphs.Count == 1)
        {
            if (!Shape(string.Join(' ', paragraphs[0]), style).Succeeds(out var whole, out var refusal)) return refusal;
            var scale = InSteps(Math.Min(1, room * Slack / (whole.Width * style.Size)));
            if (scale >= part.Fit.Least) return new FittedText([[new(whole, style)]], scale);
        }
        for (var scale = 1f; ; scale *= Step)
        {
            scale = Math.Max(scale, part.Fit.Least);
            var lines = ImmutableArray.CreateBuilder<ImmutableArray<Stretch>>();
            foreach (var paragraph in paragraphs)
                if (Wrap(paragraph, style, room / (style.Size * scale), lines) is { } refusal) return refusal;
            if (lines.Count <= Math.Max(1, (int)(part.Fit.Lines / scale + Rounding)) && lines.All(l => l[0].Text.Width * style.Size * scale <= room * Slack)) return new FittedText(lines.ToImmutable(), scale);
            if (scale <= part.Fit.Least) return TooLong(part, words);
        }
    }

    Refusal? Wrap(string[] paragraph, TextStyle style, float ems, ImmutableArray<ImmutableArray<Stretch>>.Builder lines)
    {
        ShapedText? line = null;
        var start = 0;
        for (var end = 1; end <= paragraph.Length; end++)
        {
            if (!Shape(string.Join(' ', paragraph[start..end]), style).Succeeds(out var longer, out var refusal)) return refusal;
            if (line is not null && longer.Width > ems * Slack)
            {
                lines.Add([new(line, style)]);
                start = end - 1;
                if (!Shape(paragraph[start], style).Succeeds(out longer, out refusal)) return refusal;
            }
            line = longer;
        }
        if (line is not null) lines.Add([new(line, style)]);
        return null;
    }

    // A font object is kept for each size; steps of a sixty-fourth keep them few.
    static float InSteps(float scale) => MathF.Floor(scale * 64) / 64;

    Outcome<ShapedText> Shape(string text, TextStyle style) => shaper.Shape(text, style.Family, style.Bold);

    static Refusal TooLong(TextPart part, string words) => part.Place.Refuse(
        $"“{words}” does not fit into {part.Fit.Width:0.#} units{(part.Fit.Lines > 1 ? $" on {part.Fit.Lines} lines" : "")}, even at {part.Fit.Least:P0} of its size.") with { Code = "label.text-too-long" };
}
