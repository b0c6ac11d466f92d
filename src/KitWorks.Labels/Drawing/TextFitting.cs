using System.Collections.Immutable;
using KitWorks.Geometry;
using KitWorks.Labels.Fonts;
using KitWorks.Labels.Templates;

namespace KitWorks.Labels.Drawing;

/// <summary>One style's stretch of a line.</summary>
readonly record struct Stretch(ShapedText Text, TextStyle Style);

/// <summary>Lines of text and the share of their own size at which they fit.</summary>
sealed record FittedText(ImmutableArray<ImmutableArray<Stretch>> Lines, float Scale);

/// <summary>Makes text fit: it shrinks, then wraps, then is cut off where the template says so and otherwise refused.</summary>
sealed class TextFitting(TextShaper shaper)
{
    const float Step = 0.95f;
    const float Slack = 1.0005f;
    const float Rounding = 0.001f;
    const string More = "…";

    /// <summary>Fits a text's words.</summary>
    /// <param name="part">The text.</param>
    /// <param name="words">The words of each of its pieces.</param>
    /// <param name="mmPerUnit">What one of its units is on paper.</param>
    public Outcome<FittedText> Fit(TextPart part, IReadOnlyList<string> words, double mmPerUnit)
    {
        if (words.Count == 1 && part.Fit.Lines > 1) return FitBlock(part, words[0], mmPerUnit);
        if (words.Count == 1 && part.Fit.Clips) return FitBlock(part, words[0].Trim().ReplaceLineEndings(", "), mmPerUnit);
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
        return scale >= part.Fit.Least ? new FittedText([line.ToImmutable()], scale) : TooLong(part, string.Concat(words), mmPerUnit);
    }

    Outcome<FittedText> FitBlock(TextPart part, string words, double mmPerUnit)
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
            if (scale <= part.Fit.Least) return part.Fit.Clips ? Clip(part, paragraphs, scale) : TooLong(part, words, mmPerUnit);
        }
    }

    /// <summary>As many lines as there is room for, words broken where they must be, and three dots where there is more.</summary>
    Outcome<FittedText> Clip(TextPart part, IEnumerable<string[]> paragraphs, float scale)
    {
        var style = part.Pieces[0].Style;
        var (ems, most) = ((part.Fit.Width ?? float.MaxValue) / (style.Size * scale), Math.Max(1, (int)(part.Fit.Lines / scale + Rounding)));
        var lines = ImmutableArray.CreateBuilder<ImmutableArray<Stretch>>();
        var left = new Queue<string>(paragraphs.Select(p => string.Join(' ', p)));
        while (left.TryDequeue(out var paragraph))
            while (paragraph.Length > 0)
            {
                var isLast = lines.Count + 1 == most;
                var taken = Fitting(paragraph, style, ems, "");
                var isAll = taken == paragraph.Length;
                if (isLast && !(isAll && left.Count == 0)) taken = Fitting(paragraph, style, ems, More);
                else if (!isAll && paragraph.LastIndexOf(' ', taken) is > 0 and var space) taken = space;
                var words = paragraph[..taken].TrimEnd();
                if (!Shape(isLast && !(isAll && left.Count == 0) ? words + More : words, style).Succeeds(out var line, out var refusal)) return refusal;
                lines.Add([new(line, style)]);
                if (isLast) return new FittedText(lines.ToImmutable(), scale);
                paragraph = paragraph[taken..].TrimStart();
            }
        return new FittedText(lines.ToImmutable(), scale);
    }

    /// <summary>How much of a text fits with an end behind it, in whole characters as people count them; one at least.</summary>
    int Fitting(string text, TextStyle style, float ems, string end)
    {
        var starts = System.Globalization.StringInfo.ParseCombiningCharacters(text);
        var (fits, tooLong) = (1, starts.Length + 1);
        while (tooLong - fits > 1)
        {
            var half = (fits + tooLong) / 2;
            var width = Shape(text[..EndOf(half)].TrimEnd() + end, style).Succeeds(out var shaped, out _) ? shaped.Width : float.MaxValue;
            if (width <= ems * Slack) fits = half;
            else tooLong = half;
        }
        return EndOf(fits);

        int EndOf(int count) => count < starts.Length ? starts[count] : text.Length;
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

    static Refusal TooLong(TextPart part, string words, double mmPerUnit) => part.Place.Refuse(
        $"“{words}” does not fit into {part.Fit.Width * mmPerUnit:0.#} mm{(part.Fit.Lines > 1 ? $" on {part.Fit.Lines} lines" : "")}, even at {part.Fit.Least:P0} of its size.") with { Code = "label.text-too-long" };
}
